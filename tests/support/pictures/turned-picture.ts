/**
 * Pictures stored turned or mirrored, as cameras store them. CIPA DC-008 (EXIF), tag Orientation 0x0112: where the
 * stored picture's first row and first column lie in the picture as a person sees it.
 */
import sharp from 'sharp';

import type { Colour, StoredSize } from './marked-picture.ts';

export const orientations = [1, 2, 3, 4, 5, 6, 7, 8] as const;
export type Orientation = (typeof orientations)[number];

type Place = readonly [x: number, y: number];

/** Upright place of the pixel stored at row and column, in a picture that is seen `width` x `height` large. */
const uprightPlaces: Readonly<Record<Orientation, (row: number, column: number, seen: StoredSize) => Place>> =
  {
    // first row at the top, first column at the left
    1: (row, column) => [column, row],
    // top, right
    2: (row, column, { width }) => [width - 1 - column, row],
    // bottom, right
    3: (row, column, { width, height }) => [width - 1 - column, height - 1 - row],
    // bottom, left
    4: (row, column, { height }) => [column, height - 1 - row],
    // left, top
    5: (row, column) => [row, column],
    // right, top
    6: (row, column, { width }) => [width - 1 - row, column],
    // right, bottom
    7: (row, column, { width, height }) => [width - 1 - row, height - 1 - column],
    // left, bottom
    8: (row, column, { height }) => [row, height - 1 - column],
  };

/** A JPEG that is seen as `colourAt` says, stored by the orientation and tagged with it. */
export async function turnedJpeg(
  orientation: Orientation,
  seen: StoredSize,
  colourAt: (x: number, y: number) => Colour,
): Promise<Buffer> {
  const onItsSide = orientation >= 5;
  const stored = onItsSide ? { width: seen.height, height: seen.width } : seen;
  const pixels = Buffer.alloc(stored.width * stored.height * 3);
  for (let row = 0; row < stored.height; row += 1) {
    for (let column = 0; column < stored.width; column += 1) {
      const [x, y] = uprightPlaces[orientation](row, column, seen);
      pixels.set(colourAt(x, y), (row * stored.width + column) * 3);
    }
  }
  return sharp(pixels, { raw: { ...stored, channels: 3 } })
    .jpeg({ quality: 95, chromaSubsampling: '4:4:4' })
    .withMetadata({ orientation })
    .toBuffer();
}
