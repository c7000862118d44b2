import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { noisyJpeg } from '../support/pictures/marked-picture.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

/** Three different small pictures in the folder; answers their paths. */
export async function threePictures(folder: string): Promise<string[]> {
  const paths: string[] = [];
  for (const seed of [1, 2, 3]) {
    const path = join(folder, `face-${seed}.jpg`);
    writeFileSync(path, await noisyJpeg(seed, { width: 96, height: 64 }));
    paths.push(path);
  }
  return paths;
}

/** A small picture unlike that of any other number, in a folder of the running test's own. */
export async function picture(number: number, name = `face-${number}.jpg`): Promise<string> {
  const path = join(temporaryFolder(), name);
  writeFileSync(path, await noisyJpeg(number, { width: 48, height: 32 }));
  return path;
}
