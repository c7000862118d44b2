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
