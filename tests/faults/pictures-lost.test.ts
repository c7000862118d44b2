/** The disk loses what the library names: pictures made from an original are made again, an original is missed by name. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';

import { temporaryFolder } from '../support/temporary-folder.ts';
import { codeOf, openProgram } from './program-under-test.ts';
import { smallPictures } from './small-pictures.ts';
import { expectWholeLibrary, sweepOf } from './whole-library.ts';

async function libraryOfThree() {
  const folder = temporaryFolder();
  const pictures = await smallPictures(folder, 3);
  const program = openProgram(folder);
  const caseId = await program.openCase();
  await program.importAll(caseId, pictures);
  return { folder, pictures, program, caseId };
}

describe('the pictures made from originals', () => {
  test('are made again when asked for, the same pixels, lost while the program did not run', async () => {
    const { folder, program, caseId } = await libraryOfThree();
    const photos = await expectWholeLibrary(program, caseId);
    const pixels = async (one: typeof program) =>
      sharp((await one.picture(photos[0]?.derivatives.display ?? '')).file)
        .raw()
        .toBuffer();
    const before = await pixels(program);
    await program.close();
    rmSync(join(program.library, 'derived'), { recursive: true });
    const again = openProgram(folder);
    expect((await pixels(again)).equals(before)).toBe(true);
    expect(await expectWholeLibrary(again, caseId)).toEqual(photos);
  });

  test('are made again when they are lost, folders and all, while the program runs', async () => {
    const { program, caseId } = await libraryOfThree();
    rmSync(join(program.library, 'derived'), { recursive: true });
    expect(await expectWholeLibrary(program, caseId)).toHaveLength(3);
  });
});

describe('an original that is gone', () => {
  test('is named by the sweep, and missed by name once the pictures made from it are gone too', async () => {
    const { folder, pictures, program, caseId } = await libraryOfThree();
    const [lost] = await program.call('photos.list', { caseId });
    if (!lost) throw new Error('no photo came in');
    const ask = (one: typeof program) => one.ask({ ask: 'picture', address: lost.derivatives.display });
    await program.close();
    rmSync(join(program.library, 'originals', lost.sha256.slice(0, 2), lost.sha256));

    const again = openProgram(folder);
    const { sha256, sourceName } = lost;
    expect(await sweepOf(again)).toMatchObject({
      strays: [],
      missing: [{ sha256, sourceName }],
      missingCount: 1,
    });
    expect(codeOf(await ask(again))).toBeNull();
    rmSync(join(program.library, 'derived'), { recursive: true });
    const refused = await ask(again);
    expect(codeOf(refused)).toBe('original-missing');
    expect(JSON.stringify(refused)).toContain(sourceName);

    // The same file dropped again brings it back, for the photo that is there.
    const job = await again.importAll(caseId, pictures);
    expect(job.items.map(({ outcome }) => outcome)).toEqual(pictures.map(() => 'already-here'));
    expect(await expectWholeLibrary(again, caseId)).toHaveLength(3);
  });
});
