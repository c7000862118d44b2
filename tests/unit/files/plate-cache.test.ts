import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';

import { describe, expect, it } from 'vitest';

import { createDurableFiles } from '../../../electron/files/durable-files.ts';
import { createPhotoStore } from '../../../electron/files/photo-store.ts';
import { scratchFolder } from '../../support/files/scratch-folder.ts';

const sha = (digit: string) => digit.repeat(64);
const cut = { width: 2017, height: 1513 };

async function storeWithFolders() {
  const root = join(scratchFolder(), 'store');
  const store = createPhotoStore(root, createDurableFiles());
  await store.makeFolders();
  const put = async (digit: string, content: string, size = cut) => {
    const part = store.plateTempPath();
    writeFileSync(part, content);
    await store.commitPlate(part, sha(digit), size);
    return store.platePath(sha(digit), size);
  };
  return { root, store, put };
}

describe('the plates of the store', () => {
  it('are kept by the picture’s hash and the size in which it is printed', async () => {
    const { root, store, put } = await storeWithFolders();
    const path = await put('a', 'one');
    expect(path.slice(root.length + 1)).toBe(
      join('plates', 'aa', `${sha('a')}.plate-1.whole.plain.2017x1513.jpg`),
    );
    expect(readFileSync(path, 'utf8')).toBe('one');
    expect(await store.usePlate(sha('a'), cut)).toBe(true);
    expect(await store.usePlate(sha('a'), { width: 992, height: 744 })).toBe(false);
    expect(await store.usePlate(sha('b'), cut)).toBe(false);
    expect(readdirSync(join(root, 'incoming'))).toEqual([]);
  });

  it('can be put again after the whole folder has gone', async () => {
    const { root, put } = await storeWithFolders();
    await put('a', 'one');
    rmSync(join(root, 'plates'), { recursive: true });
    expect(readFileSync(await put('a', 'again'), 'utf8')).toBe('again');
  });

  it('leave nothing behind that the next start would not clear', async () => {
    const { root, store } = await storeWithFolders();
    writeFileSync(store.plateTempPath(), 'torn');
    const next = createPhotoStore(root, createDurableFiles());
    expect(await next.clearIncoming()).toHaveLength(1);
  });

  it('are trimmed from the one that was not used for longest, and nothing else goes', async () => {
    const { root, store, put } = await storeWithFolders();
    const paths = [await put('a', '12345'), await put('b', '12345'), await put('c', '12345')];
    paths.forEach((path, index) => utimesSync(path, 1_000 + index, 1_000 + index));
    const stranger = join(root, 'plates', 'aa', 'notes.txt');
    writeFileSync(stranger, 'x'.repeat(100));
    mkdirSync(join(root, 'originals', 'aa'), { recursive: true });
    writeFileSync(join(root, 'originals', 'aa', sha('a')), 'original');
    // The oldest is used again: now the second is the one that was not used for longest.
    expect(await store.usePlate(sha('a'), cut)).toBe(true);
    expect(await store.trimPlates(10)).toBe(1);
    expect(paths.map((path) => existsSync(path))).toEqual([true, false, true]);
    expect(await store.trimPlates(10)).toBe(0);
    expect(await store.trimPlates(0)).toBe(2);
    expect(existsSync(stranger)).toBe(true);
    expect(existsSync(join(root, 'originals', 'aa', sha('a')))).toBe(true);
    expect(statSync(dirname(stranger)).isDirectory()).toBe(true);
  });

  it('of a store that has none are trimmed to none', async () => {
    const { store } = await storeWithFolders();
    expect(await store.trimPlates(0)).toBe(0);
  });
});
