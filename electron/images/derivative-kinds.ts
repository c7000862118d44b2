/**
 * The pictures derived from an original. They are cache: made anew whenever they are not there.
 * A change of size, quality or format takes a new version, so that no older copy is mistaken for it.
 */
export const derivativeKinds = {
  /** For lists and contact sheets. `longSide` in pixels at most, `quality` as JPEG encoders count it. */
  thumbnail: { version: 1, extension: 'jpg', mediaType: 'image/jpeg', longSide: 400, quality: 80 },
  /** What the bench and the printed plates show. */
  display: { version: 1, extension: 'jpg', mediaType: 'image/jpeg', longSide: 2560, quality: 88 },
} as const;
export type DerivativeKind = keyof typeof derivativeKinds;

/**
 * Pictures of plates as they are printed: cache too, but in a size of their own each, and more than can be kept for
 * ever. At 300 dots to the inch nobody sees what this quality leaves out, and 300 of them make a file that can be sent;
 * table 3 of libjpeg's successors spends the bytes where eyes look.
 */
export const plateKind = { version: 1, extension: 'jpg', quality: 75, quantisationTable: 3 } as const;
