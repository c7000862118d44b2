/** What the image library needs for the same two copies with nothing round it: no other process, hash, sync or row. */
import { join } from 'node:path';
import sharp from 'sharp';

import { derivativeKinds } from '../../electron/images/derivative-kinds.ts';
import { restrainImageLibrary } from '../../electron/images/decode-picture.ts';

/**
 * Makes the display copy and the thumbnail of each picture, `atOnce` pictures at a time, as the import does.
 * @returns seconds for all
 */
export async function sharpAlone(paths: readonly string[], folder: string, atOnce: number): Promise<number> {
  restrainImageLibrary();
  const queue = paths.entries();
  const lane = async () => {
    for (const [place, path] of queue) await twoCopies(path, join(folder, `alone-${String(place)}`));
  };
  const begun = performance.now();
  await Promise.all(Array.from({ length: atOnce }, lane));
  return (performance.now() - begun) / 1_000;
}

async function twoCopies(path: string, to: string): Promise<void> {
  const { display, thumbnail } = derivativeKinds;
  const inside = (side: number) => ({ width: side, height: side, fit: 'inside' as const });
  const { data, info } = await sharp(path, { sequentialRead: true })
    .autoOrient()
    .resize(inside(display.longSide))
    .raw()
    .toBuffer({ resolveWithObject: true });
  const scaled = () => sharp(data, { raw: { width: info.width, height: info.height, channels: 3 } });
  await scaled().jpeg({ quality: display.quality }).toFile(`${to}.display`);
  await scaled()
    .resize(inside(thumbnail.longSide))
    .jpeg({ quality: thumbnail.quality })
    .toFile(`${to}.thumbnail`);
}
