import { mkdirSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sniffPicture } from '../../../electron/images/sniff.ts';
import { AppError, sentence, type ErrorCode } from '#shared-types/errors.ts';
import { scratchFolder } from '../../support/files/scratch-folder.ts';
import { markedJpeg, markedPicture } from '../../support/pictures/marked-picture.ts';
import { jpegHeader, jpegSegment, pngHeader } from '../../support/pictures/picture-headers.ts';

function sniff(content: string | Buffer, name = 'front.jpg') {
  const path = join(scratchFolder(), name);
  writeFileSync(path, content);
  return sniffPicture(path, name);
}

async function refusal(attempt: Promise<unknown>): Promise<AppError> {
  const outcome = await attempt.catch((error: unknown) => error);
  if (!(outcome instanceof AppError)) throw new Error('it was not refused');
  // Every sentence is complete: no detail it names is missing.
  expect(outcome.message).not.toMatch(/[{}]/);
  expect(outcome.message).toBe(sentence(outcome.code, outcome.details));
  return outcome;
}

describe('what a file is', () => {
  const size = { width: 90, height: 60 };

  it('is told by its content, not by its name', async () => {
    const jpeg = await markedJpeg(size);
    expect(await sniff(jpeg, 'front.png')).toEqual({
      mediaType: 'image/jpeg',
      bytes: jpeg.length,
      storedWidth: 90,
      storedHeight: 60,
      wholeInMemory: false,
    });
    const png = await markedPicture(size).png().toBuffer();
    expect(await sniff(png, 'front.jpg')).toEqual({
      mediaType: 'image/png',
      bytes: png.length,
      storedWidth: 90,
      storedHeight: 60,
      wholeInMemory: false,
    });
  });

  it('includes whether it can be decoded row by row', async () => {
    const progressive = await markedPicture(size).jpeg({ progressive: true }).toBuffer();
    const interlaced = await markedPicture(size).png({ progressive: true }).toBuffer();
    expect((await sniff(progressive)).wholeInMemory).toBe(true);
    expect((await sniff(interlaced)).wholeInMemory).toBe(true);
  });

  it('is found behind long segments, fill bytes and markers without length', async () => {
    const before = [
      ...Array.from({ length: 40 }, () => jpegSegment(0xe2, 65_533)),
      Buffer.from([0xff, 0xff, 0xff]),
      jpegSegment(0xe1, 100),
      Buffer.from([0xff, 0x01]),
    ];
    expect(await sniff(jpegHeader(4000, 3000, { before }))).toMatchObject({
      storedWidth: 4000,
      storedHeight: 3000,
    });
  });
});

describe('refusals', () => {
  it.each<[string, string | Buffer, ErrorCode]>([
    ['an empty file', '', 'file-empty'],
    ['text named .jpg', 'Compressor wheel, seen from the inlet', 'file-not-a-picture'],
    ['a PDF named .jpg', '%PDF-1.7\n%\xe2\xe3\xcf\xd3\n', 'file-not-a-picture'],
    ['a drawing', '<svg xmlns="http://www.w3.org/2000/svg"/>', 'file-not-a-picture'],
    ['a TIFF', Buffer.from([0x49, 0x49, 0x2a, 0, 8, 0, 0, 0]), 'file-not-a-picture'],
    ['the first two bytes of a JPEG', Buffer.from([0xff, 0xd8]), 'file-not-a-picture'],
    ['a JPEG cut off before its size', jpegHeader(100, 100).subarray(0, 22), 'picture-broken'],
    [
      'a JPEG whose scan comes before its size',
      Buffer.from([0xff, 0xd8, 0xff, 0xda, 0, 2, 0, 0]),
      'picture-broken',
    ],
    [
      'a JPEG with noise between its segments',
      Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 2, 7, 7, 7, 7]),
      'picture-broken',
    ],
    ['a JPEG of no height', jpegHeader(100, 0), 'picture-broken'],
    ['a PNG cut off in its header', pngHeader(10, 10).subarray(0, 20), 'picture-broken'],
    ['a PNG of no width', pngHeader(0, 10), 'picture-broken'],
  ])('%s', async (_what, content, code) => {
    const error = await refusal(sniff(content));
    expect(error.code).toBe(code);
    expect(error.details.name).toBe('front.jpg');
  });

  it.each([
    ['PNG of 60 000 x 60 000', pngHeader(60_000, 60_000), 3600, 250],
    ['PNG just above the limit', pngHeader(25_001, 10_000), 251, 250],
    ['JPEG of 65 535 x 65 535', jpegHeader(65_535, 65_535), 4295, 250],
    ['interlaced PNG of 64 megapixels', pngHeader(8_000, 8_000, true), 64, 60],
    ['progressive JPEG of 121 megapixels', jpegHeader(11_000, 11_000, { progressive: true }), 121, 100],
  ])('%s, before anything is decoded', async (_what, content, megapixels, limit) => {
    const error = await refusal(sniff(content));
    expect(error.code).toBe('picture-too-large');
    expect(error.details).toEqual({ name: 'front.jpg', megapixels, limit });
  });

  it.each([
    ['PNG of 250 megapixels', pngHeader(25_000, 10_000)],
    ['PNG of 64 megapixels', pngHeader(8_000, 8_000)],
    ['interlaced PNG of 60 megapixels', pngHeader(10_000, 6_000, true)],
    ['progressive JPEG of 100 megapixels', jpegHeader(10_000, 10_000, { progressive: true })],
  ])('but not a %s', async (_what, content) => {
    await expect(sniff(content)).resolves.toMatchObject({ bytes: content.length });
  });

  it('a file of more than 200 MB', async () => {
    const path = join(scratchFolder(), 'scan.jpg');
    writeFileSync(path, jpegHeader(1000, 1000));
    truncateSync(path, 200_000_000);
    await expect(sniffPicture(path, 'scan.jpg')).resolves.toMatchObject({ bytes: 200_000_000 });
    truncateSync(path, 200_000_001);
    const error = await refusal(sniffPicture(path, 'scan.jpg'));
    expect(error.code).toBe('file-too-large');
    expect(error.details).toEqual({ name: 'scan.jpg', megabytes: 201, limit: 200 });
  });

  it('a folder, and a file that is gone', async () => {
    const folder = scratchFolder();
    mkdirSync(join(folder, 'photos'));
    const dropped = await refusal(sniffPicture(join(folder, 'photos'), 'photos'));
    expect(dropped).toMatchObject({ code: 'file-unreadable', details: { reason: 'it is a folder' } });
    const gone = await refusal(sniffPicture(join(folder, 'gone.jpg'), 'gone.jpg'));
    expect(gone).toMatchObject({ code: 'file-unreadable', details: { name: 'gone.jpg' } });
  });
});
