/** Pictures as a telephone or a camera makes them: a few megabytes, every second one held upright. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';

import { chanceFrom } from '../support/world-chance.ts';

const sizes = {
  'twelve megapixels': { width: 4_000, height: 3_000 },
  'twenty-four megapixels': { width: 6_000, height: 4_000 },
} as const;
export type PictureSize = keyof typeof sizes;
/** Detail of this many pixels across: as much as a lens and its sensor leave. */
const grain = 3;

/** Writes `count` pictures into the folder; the same every time. @returns their paths */
export async function writePictures(folder: string, count: number, size: PictureSize): Promise<string[]> {
  const paths: string[] = [];
  for (let place = 0; place < count; place += 1) {
    const path = join(folder, `IMG_${String(1_000 + place)}.jpg`);
    await writeFile(path, await picture(place, sizes[size]));
    paths.push(path);
  }
  return paths;
}

async function picture(
  seed: number,
  full: { readonly width: number; readonly height: number },
): Promise<Buffer> {
  const { width, height } = full;
  const size = { width: Math.ceil(width / grain), height: Math.ceil(height / grain) };
  const pixels = Buffer.alloc(size.width * size.height * 3);
  const chance = chanceFrom(seed);
  const [across, down] = [1 + chance.integer(9), 1 + chance.integer(9)];
  for (let row = 0; row < size.height; row += 1) {
    for (let column = 0; column < size.width; column += 1) {
      const slope = Math.sin((column * across) / size.width) * Math.cos((row * down) / size.height);
      const rough = chance.integer(48);
      const at = (row * size.width + column) * 3;
      pixels[at] = 90 + 60 * slope + rough;
      pixels[at + 1] = 100 + 50 * slope + rough;
      pixels[at + 2] = 110 + 40 * slope + rough;
    }
  }
  // EXIF 0x0112: 6 is a camera turned a quarter, as for an upright picture.
  const orientation = seed % 2 === 0 ? 1 : 6;
  return sharp(pixels, { raw: { ...size, channels: 3 } })
    .resize({ width, height, fit: 'fill', kernel: 'cubic' })
    .jpeg({ quality: 92 })
    .withMetadata({ orientation })
    .toBuffer();
}
