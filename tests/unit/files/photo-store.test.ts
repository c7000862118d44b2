import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { createDurableFiles, type FileStep } from '../../../electron/files/durable-files.ts';
import { createPhotoStore } from '../../../electron/files/photo-store.ts';
import { AppError, type ErrorShape } from '#shared-types/errors.ts';
import { failingFiles } from '../../support/files/failing-files.ts';
import { scratchFolder } from '../../support/files/scratch-folder.ts';

// FIPS 180-4: SHA-256 of "abc".
const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const real = createDurableFiles();

function storeWith(content = 'abc') {
  const folder = scratchFolder();
  const source = join(folder, 'source.jpg');
  writeFileSync(source, content);
  const root = join(folder, 'store');
  return { folder, source, root, store: createPhotoStore(root, real) };
}

describe('addOriginal', () => {
  it('keeps the file under its hash, read-only, without extension', async () => {
    const { source, root, store } = storeWith();
    expect(await store.addOriginal(source, 'front.jpg')).toEqual({ sha256: abc, bytes: 3, existed: false });
    const path = join(root, 'originals', 'ba', abc);
    expect(store.originalPath(abc)).toBe(path);
    expect(readFileSync(path, 'latin1')).toBe('abc');
    expect(statSync(path).mode & 0o777).toBe(0o444);
    expect(await store.hasOriginal(abc)).toBe(true);
    expect(readdirSync(join(root, 'incoming'))).toEqual([]);
    expect(existsSync(source)).toBe(true);
  });

  it('keeps one file for the same picture added again, also at the same time', async () => {
    const { source, root, store } = storeWith();
    const together = await Promise.all([1, 2, 3].map(() => store.addOriginal(source, 'front.jpg')));
    expect(together.map((added) => added.existed).sort()).toEqual([false, true, true]);
    const before = statSync(store.originalPath(abc));
    expect((await store.addOriginal(source, 'again.jpg')).existed).toBe(true);
    const after = statSync(store.originalPath(abc));
    expect([after.ino, after.mtimeMs]).toEqual([before.ino, before.mtimeMs]);
    expect(readdirSync(join(root, 'incoming'))).toEqual([]);
  });

  it.each([
    ['shorter', 'ab', 'the file there has 2 bytes instead of 3'],
    ['as long but different', 'xyz', 'the file there has the right length and a different content'],
  ])('reports a stored file that is %s, and leaves it', async (_case, content, reason) => {
    const { source, root, store } = storeWith();
    await store.addOriginal(source, 'front.jpg');
    chmodSync(store.originalPath(abc), 0o644);
    writeFileSync(store.originalPath(abc), content);
    await expect(store.addOriginal(source, 'front.jpg')).rejects.toMatchObject({
      code: 'original-altered',
      details: { name: 'front.jpg', sha256: abc, reason },
    });
    expect(readFileSync(store.originalPath(abc), 'latin1')).toBe(content);
    expect(readdirSync(join(root, 'incoming'))).toEqual([]);
  });

  it('refuses an empty file and one that is gone, by the name the user knows', async () => {
    const { folder, source, root, store } = storeWith('');
    await expect(store.addOriginal(source, 'front.jpg')).rejects.toMatchObject({
      code: 'file-empty',
      details: { name: 'front.jpg' },
    });
    await expect(store.addOriginal(join(folder, 'a1b2.upload'), 'rear.jpg')).rejects.toMatchObject({
      code: 'file-unreadable',
      details: { name: 'rear.jpg' },
    });
    expect(readdirSync(join(root, 'incoming'))).toEqual([]);
  });

  it('does not take a path for a hash', () => {
    const { store } = storeWith();
    expect(() => store.originalPath('../../outside')).toThrow('not a SHA-256');
  });
});

describe('a staged original', () => {
  it('can be looked at, and dropped without a trace', async () => {
    const { source, root, store } = storeWith();
    const staged = await store.stageOriginal(source, 'front.jpg');
    expect(staged).toMatchObject({ sha256: abc, bytes: 3, sourceName: 'front.jpg' });
    expect(readFileSync(staged.path, 'latin1')).toBe('abc');
    expect(await store.hasOriginal(abc)).toBe(false);
    // One that is being looked at is none of those an interrupted import left.
    expect(await store.clearIncoming()).toEqual([]);
    await store.dropStaged(staged);
    await store.dropStaged(staged);
    expect(readdirSync(join(root, 'incoming'))).toEqual([]);
    expect(await store.hasOriginal(abc)).toBe(false);
  });

  it('is kept once, and dropping it then does nothing to the original', async () => {
    const { source, root, store } = storeWith();
    const staged = await store.stageOriginal(source, 'front.jpg');
    const twin = await store.stageOriginal(source, 'copy.jpg');
    expect((await store.keepOriginal(staged)).existed).toBe(false);
    expect((await store.keepOriginal(twin)).existed).toBe(true);
    await store.dropStaged(staged);
    await store.dropStaged(twin);
    expect(readFileSync(store.originalPath(abc), 'latin1')).toBe('abc');
    expect(readdirSync(join(root, 'incoming'))).toEqual([]);
  });
});

describe('a disk that fills up', () => {
  const writingSteps: [FileStep, number][] = [
    ['ensureFolder', 1],
    ['ensureFolder', 2],
    ['ensureFolder', 3],
    ['ensureFolder', 4],
    ['copyHashing', 1],
    ['syncFile', 1],
    ['seal', 1],
    ['rename', 1],
    ['syncFolder', 1],
    ['syncFolder', 2],
    ['syncFolder', 3],
    ['syncFolder', 4],
    ['syncFolder', 5],
  ];

  it.each(writingSteps)(
    'at %s, call %i, fails by name and leaves nothing half under a hash',
    async (step, nth) => {
      const { source, root } = storeWith();
      const files = failingFiles(real, { step, nth, mode: 'full' });
      const store = createPhotoStore(root, files);
      await expect(store.addOriginal(source, 'front.jpg')).rejects.toMatchObject({
        code: 'disk-full',
        details: { what: 'front.jpg' },
      });
      expect(files.failed()).toBe(true);
      const path = store.originalPath(abc);
      // After the rename the file has its name, whole; before it, there is none.
      const named = existsSync(path);
      expect(named ? readFileSync(path, 'latin1') : null).toBe(
        step === 'syncFolder' && nth === 5 ? 'abc' : null,
      );
      expect(existsSync(join(root, 'incoming')) ? readdirSync(join(root, 'incoming')) : []).toEqual([]);
      // With room again, the same import goes through.
      const added = await createPhotoStore(root, real).addOriginal(source, 'front.jpg');
      expect(added).toEqual({ sha256: abc, bytes: 3, existed: named });
      expect(readFileSync(path, 'latin1')).toBe('abc');
    },
  );

  it('has no writing step beyond those', async () => {
    const { source, root } = storeWith();
    const reading: FileStep[] = ['stat', 'hash', 'read', 'list'];
    const counted = new Map<FileStep, number>();
    const counting = Object.fromEntries(
      Object.entries(real).map(([step, work]) => [
        step,
        (...input: never[]) => {
          counted.set(step as FileStep, (counted.get(step as FileStep) ?? 0) + 1);
          return (work as (...input: never[]) => unknown)(...input);
        },
      ]),
    ) as typeof real;
    await createPhotoStore(root, counting).addOriginal(source, 'front.jpg');
    const listed = new Map<FileStep, number>();
    for (const [step, nth] of writingSteps) listed.set(step, nth);
    const seen = new Map([...counted].filter(([step]) => !reading.includes(step)));
    expect(seen).toEqual(listed);
  });
});

describe('a folder that refuses', () => {
  it('is said to, with the picture and the reason, to a user without permission', () => {
    const { folder, source, root } = storeWith();
    mkdirSync(root);
    chmodSync(folder, 0o755);
    chmodSync(root, 0o555);
    const script = fileURLToPath(new URL('../../support/files/refused-folder.ts', import.meta.url));
    // Root is refused nothing: the store is tried by "nobody" (65534) then, and by this user otherwise.
    const asNobody = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
    const child = spawnSync(process.execPath, [script, root, source], {
      ...asNobody,
      encoding: 'utf8',
      cwd: '/',
    });
    expect(child.stderr.split('\n').filter((line) => line.includes('Error'))).toEqual([]);
    const shape = JSON.parse(child.stdout) as ErrorShape;
    expect(shape).toEqual(
      new AppError('disk-refused', { what: 'front.jpg', reason: 'permission denied' }).toShape(),
    );
    expect(readdirSync(root)).toEqual([]);
  });
});

describe('derived pictures', () => {
  it('have kind and version in their names, and a newer one replaces the older', async () => {
    const { root, store } = storeWith();
    await store.makeFolders();
    const path = join(root, 'derived', 'ba', `${abc}.display-1.jpg`);
    expect(store.derivativePath(abc, 'display')).toBe(path);
    expect(await store.hasDerivative(abc, 'display')).toBe(false);
    for (const content of ['first', 'second']) {
      const temp = store.derivativeTempPath(abc, 'display');
      writeFileSync(temp, content);
      await store.commitDerivative(temp, abc, 'display');
      expect(readFileSync(path, 'utf8')).toBe(content);
    }
    expect(await store.hasDerivative(abc, 'display')).toBe(true);
    expect(await store.hasDerivative(abc, 'thumbnail')).toBe(false);
    expect(readdirSync(join(root, 'incoming'))).toEqual([]);
  });

  it('that are not wanted after all leave nothing behind', async () => {
    const { root, store } = storeWith();
    await store.makeFolders();
    const temp = store.derivativeTempPath(abc, 'thumbnail');
    await store.discardTemp(temp);
    writeFileSync(temp, 'x');
    await store.discardTemp(temp);
    expect(readdirSync(join(root, 'incoming'))).toEqual([]);
  });
});

describe('sweep and clearIncoming', () => {
  const other = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855';

  it('miss an original of whose shelf there is no folder', async () => {
    const { store } = storeWith();
    const { missing } = await store.sweep((shelf) => (shelf === 'e3' ? [other] : []));
    expect(missing).toEqual([other]);
  });

  it('report strays and missing originals and remove neither', async () => {
    const { source, root, store } = storeWith();
    await store.addOriginal(source, 'front.jpg');
    mkdirSync(join(root, 'originals', 'e3'));
    writeFileSync(join(root, 'originals', 'e3', abc), 'in the wrong place');
    writeFileSync(join(root, 'originals', 'e3', 'notes.txt'), 'x');
    writeFileSync(join(root, 'originals', 'list.txt'), 'x');
    writeFileSync(join(root, 'incoming', 'somebody.jpg'), 'x');
    const strays = [
      `originals/e3/${abc}`,
      'originals/e3/notes.txt',
      'originals/list.txt',
      'incoming/somebody.jpg',
    ];
    // A store opened later: nothing in it was added while it was open.
    const later = createPhotoStore(root, real);
    const knownOn = (shelf: string) => [abc, other].filter((sha256) => sha256.startsWith(shelf));
    expect(await later.sweep(knownOn)).toEqual({
      strays,
      missing: [other],
    });
    expect(await later.sweep(() => [])).toEqual({ strays: [`originals/ba/${abc}`, ...strays], missing: [] });
    expect(readFileSync(store.originalPath(abc), 'latin1')).toBe('abc');
    expect(existsSync(join(root, 'originals', 'e3', 'notes.txt'))).toBe(true);
    // The list handed to the store that added it may be older than the original.
    expect((await store.sweep(() => [])).strays).toEqual(strays);
  });

  it('removes of incoming/ only its own left-over names, and none in use', async () => {
    const { root, store } = storeWith();
    await store.makeFolders();
    const left = 'original-00000000-0000-4000-8000-000000000000.part';
    writeFileSync(join(root, 'incoming', left), 'half');
    writeFileSync(join(root, 'incoming', 'original-of-mine.part'), 'x');
    writeFileSync(store.derivativeTempPath(abc, 'display'), 'being written');
    expect(await store.clearIncoming()).toEqual([left]);
    expect(readdirSync(join(root, 'incoming'))).toHaveLength(2);
    const next = createPhotoStore(root, real);
    expect(await next.clearIncoming()).toHaveLength(1);
    expect(readdirSync(join(root, 'incoming'))).toEqual(['original-of-mine.part']);
  });
});
