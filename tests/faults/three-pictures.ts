import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { noisyJpeg } from '../support/pictures/marked-picture.ts';

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
