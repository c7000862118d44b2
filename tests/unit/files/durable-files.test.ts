import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createDurableFiles } from '../../../electron/files/durable-files.ts';
import { asDiskError } from '../../../electron/files/disk-error.ts';
import { AppError } from '#shared-types/errors.ts';
import { scratchFolder } from '../../support/files/scratch-folder.ts';

const files = createDurableFiles();

function systemError(code: string): Error {
  return Object.assign(new Error(code), { code });
}

describe('copyHashing', () => {
  // FIPS 180-4, the examples published with it: "abc" and the empty message.
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ])('answers the SHA-256 of %j and copies it', async (message, sha256) => {
    const folder = scratchFolder();
    writeFileSync(join(folder, 'from'), message);
    const copy = await files.copyHashing(join(folder, 'from'), join(folder, 'to'));
    expect(copy).toEqual({ sha256, bytes: message.length });
    expect(await files.hash(join(folder, 'to'))).toEqual(copy);
    expect(readFileSync(join(folder, 'to'), 'latin1')).toBe(message);
  });

  it('hashes a file of many pieces: one million times "a"', async () => {
    // FIPS 180-4 (FIPS 180-2, B.3): one million repetitions of "a".
    const sha256 = 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0';
    const folder = scratchFolder();
    writeFileSync(join(folder, 'from'), 'a'.repeat(1_000_000));
    expect(await files.copyHashing(join(folder, 'from'), join(folder, 'to'))).toEqual({
      sha256,
      bytes: 1_000_000,
    });
    // Longer than one piece, against the same content hashed by the other route.
    writeFileSync(join(folder, 'long'), Buffer.alloc(3_500_001, 7));
    const long = await files.copyHashing(join(folder, 'long'), join(folder, 'long-copy'));
    expect(long.bytes).toBe(3_500_001);
    expect(readFileSync(join(folder, 'long-copy')).equals(readFileSync(join(folder, 'long')))).toBe(true);
    expect((await files.hash(join(folder, 'long-copy'))).sha256).toBe(long.sha256);
  });

  it('never writes over a file that is there', async () => {
    const folder = scratchFolder();
    writeFileSync(join(folder, 'from'), 'new');
    writeFileSync(join(folder, 'to'), 'old');
    await expect(files.copyHashing(join(folder, 'from'), join(folder, 'to'))).rejects.toMatchObject({
      code: 'EEXIST',
    });
    expect(readFileSync(join(folder, 'to'), 'utf8')).toBe('old');
  });

  it('names a source that is gone, and a folder that was dropped instead of a file', async () => {
    const folder = scratchFolder();
    await expect(files.copyHashing(join(folder, 'gone.jpg'), join(folder, 'to'))).rejects.toMatchObject({
      code: 'file-unreadable',
      details: { name: 'gone.jpg', reason: 'it is not there any more' },
    });
    await files.ensureFolder(join(folder, 'photos'));
    await expect(files.copyHashing(join(folder, 'photos'), join(folder, 'to'))).rejects.toMatchObject({
      code: 'file-unreadable',
      details: { name: 'photos', reason: 'it is a folder' },
    });
  });
});

describe('the other steps', () => {
  it('tell a folder that is there from one that had to be made, and from a file', async () => {
    const folder = scratchFolder();
    expect(await files.ensureFolder(join(folder, 'a'))).toBe(true);
    expect(await files.ensureFolder(join(folder, 'a'))).toBe(false);
    await files.write(join(folder, 'b'), 'x');
    await expect(files.ensureFolder(join(folder, 'b'))).rejects.toMatchObject({ code: 'EEXIST' });
  });

  it('write, seal, rename, list, stat, read and unlink', async () => {
    const folder = scratchFolder();
    const path = join(folder, 'one');
    await files.write(path, 'content');
    await files.syncFile(path);
    await files.seal(path);
    expect(statSync(path).mode & 0o777).toBe(0o444);
    await files.rename(path, join(folder, 'two'));
    await files.syncFolder(folder);
    await files.ensureFolder(join(folder, 'a-folder'));
    expect(await files.list(folder)).toEqual(['a-folder', 'two']);
    expect(await files.list(join(folder, 'nowhere'))).toEqual([]);
    expect(await files.stat(join(folder, 'two'))).toEqual({ bytes: 7, folder: false });
    expect((await files.stat(join(folder, 'a-folder')))?.folder).toBe(true);
    expect(await files.stat(path)).toBeNull();
    expect(Buffer.from(await files.read(join(folder, 'two'))).toString()).toBe('content');
    await files.unlink(join(folder, 'two'));
    expect(await files.stat(join(folder, 'two'))).toBeNull();
  });
});

describe('asDiskError', () => {
  it.each([
    ['ENOSPC', 'disk-full'],
    ['EDQUOT', 'disk-full'],
    ['EACCES', 'disk-refused'],
    ['EROFS', 'disk-refused'],
    ['EPERM', 'disk-refused'],
  ])('makes %s %s', (code, expected) => {
    const error = asDiskError(systemError(code), 'the library');
    expect(error).toBeInstanceOf(AppError);
    expect(error).toMatchObject({ code: expected, details: { what: 'the library' } });
    expect((error as AppError).message).not.toMatch(/[{}]/);
  });

  it('leaves every other error as it is', () => {
    const error = systemError('EMFILE');
    expect(asDiskError(error, 'x')).toBe(error);
  });
});
