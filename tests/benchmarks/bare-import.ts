/**
 * The least that an import could be: each file hashed, copied and synced, and the same two pictures made by the same
 * image library, with no other process and no row.
 */
import { createHash } from 'node:crypto';
import { copyFile, open, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';

import { derivativeKinds } from '../../electron/images/derivative-kinds.ts';
import { restrainImageLibrary } from '../../electron/images/decode-picture.ts';

/** `atOnce` pictures at a time, as the import does. */
export async function bareImport(paths: readonly string[], folder: string, atOnce: number): Promise<void> {
  restrainImageLibrary();
  const queue = paths.entries();
  const lane = async () => {
    for (const [place, path] of queue) {
      const to = join(folder, `picture-${String(place)}`);
      createHash('sha256')
        .update(await readFile(path))
        .digest('hex');
      await copyFile(path, to);
      await sync(to);
      await twoCopies(path, to);
    }
  };
  await Promise.all(Array.from({ length: atOnce }, lane));
}

async function sync(path: string): Promise<void> {
  const file = await open(path, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
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
