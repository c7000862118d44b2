import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { noisyJpeg } from '../support/pictures/marked-picture.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

/** Small pictures in the folder, each unlike the others; answers their paths. */
export async function smallPictures(folder: string, count: number): Promise<string[]> {
  const paths: string[] = [];
  for (let number = 1; number <= count; number += 1) {
    const path = join(folder, `face-${number}.jpg`);
    writeFileSync(path, await noisyJpeg(number, { width: 96, height: 64 }));
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
