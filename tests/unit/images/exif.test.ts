import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readExif, wallTime } from '../../../electron/images/exif.ts';
import { decodedPictureSchema } from '../../../electron/images/decoder-messages.ts';
import { scratchFolder } from '../../support/files/scratch-folder.ts';
import { readTags, writeTags } from '../../support/pictures/exiftool.ts';
import { markedJpeg, markedPicture } from '../../support/pictures/marked-picture.ts';

async function pictureWith(tags: Readonly<Record<string, string>>, format: 'jpeg' | 'png' = 'jpeg') {
  const path = join(scratchFolder(), `tagged.${format}`);
  const size = { width: 32, height: 24 };
  writeFileSync(
    path,
    format === 'jpeg' ? await markedJpeg(size) : await markedPicture(size).png().toBuffer(),
  );
  writeTags({ path, tags });
  return path;
}

async function exifOf(path: string) {
  return readExif((await sharp(path).metadata()).exif);
}

/** exiftool's "YYYY:MM:DD HH:MM:SS" as ISO 8601. */
function isoOf(time: unknown): string {
  return String(time).replace(/^(\d+):(\d+):(\d+) /, '$1-$2-$3T');
}

describe('the time a photo was taken', () => {
  it.each(['jpeg', 'png'] as const)(
    'is wall time with its offset where the camera says so (%s)',
    async (format) => {
      const path = await pictureWith(
        { DateTimeOriginal: '2025:11:03 23:58:07', OffsetTimeOriginal: '+05:45' },
        format,
      );
      const read = readTags(path, 'DateTimeOriginal', 'OffsetTimeOriginal');
      expect(read.OffsetTimeOriginal).toBe('+05:45');
      expect((await exifOf(path)).takenAt).toEqual({
        local: isoOf(read.DateTimeOriginal),
        offsetMinutes: 5 * 60 + 45,
        precision: 'second',
      });
    },
  );

  it('has no offset where the camera does not say', async () => {
    const path = await pictureWith({ DateTimeOriginal: '2025:06:30 00:00:00' });
    const read = readTags(path, 'DateTimeOriginal', 'OffsetTimeOriginal');
    expect(read.OffsetTimeOriginal).toBeUndefined();
    expect((await exifOf(path)).takenAt).toEqual({
      local: isoOf(read.DateTimeOriginal),
      offsetMinutes: null,
      precision: 'second',
    });
  });

  it('is not taken from the time of the last change of the file', async () => {
    const path = await pictureWith({ ModifyDate: '2025:06:30 10:00:00' });
    expect(isoOf(readTags(path, 'ModifyDate').ModifyDate)).toBe('2025-06-30T10:00:00');
    expect((await exifOf(path)).takenAt).toBeNull();
  });

  it.each([
    ['blanks, as EXIF writes an unknown time', '    :  :     :  :  '],
    ['a clock that was never set', '0000:00:00 00:00:00'],
    ['a day that is none', '2025:02:29 10:00:00'],
    ['a month that is none', '2025:13:01 10:00:00'],
    ['text', 'yesterday'],
    ['a number', 20250630],
    ['nothing', undefined],
  ])('is not known for %s', (_what, time) => {
    expect(wallTime(time, '+01:00')).toBeNull();
  });

  it.each([
    ['-03:30', -210],
    ['+00:00', 0],
    ['-00:00', 0],
    ['+14:00', 840],
    ['+01:00\0', 60],
    ['   :  ', null],
    ['+15:00', null],
    ['+01:75', null],
    ['CET', null],
    [undefined, null],
  ])('with the offset %j is %j minutes east of UTC', (offset, minutes) => {
    expect(wallTime('2024:02:29 23:59:59', offset)).toEqual({
      local: '2024-02-29T23:59:59',
      offsetMinutes: minutes,
      precision: 'second',
    });
  });
});

describe('the camera', () => {
  const cases: readonly (readonly [tags: Readonly<Record<string, string>>, camera: string])[] = [
    [{ Make: 'Orrery', Model: 'Bench 5' }, 'Orrery Bench 5'],
    [{ Make: 'Orrery', Model: 'ORRERY Bench 5' }, 'ORRERY Bench 5'],
    [{ Model: 'Bench\n5\u202e  of  2' }, 'Bench 5 of 2'],
    [{ Make: 'Orrery   ' }, 'Orrery'],
    [{ Artist: 'somebody' }, ''],
  ];

  it('is maker and model in one line, the maker said once', async () => {
    const folder = scratchFolder();
    const jpeg = await markedJpeg({ width: 32, height: 24 });
    const taggings = cases.map(([tags], index) => ({ path: join(folder, `${index}.jpg`), tags }));
    for (const { path } of taggings) writeFileSync(path, jpeg);
    writeTags(...taggings);
    const read = await Promise.all(taggings.map(({ path }) => exifOf(path)));
    expect(read.map(({ camera }) => camera)).toEqual(cases.map(([, camera]) => camera));
  });
});

describe('GPS tags', () => {
  it('are kept as they stand, as JSON', async () => {
    const path = await pictureWith({
      GPSLatitude: '51.5',
      GPSLatitudeRef: 'N',
      GPSLongitude: '0.12',
      GPSLongitudeRef: 'W',
    });
    const read = readTags(path, 'GPSLatitude', 'GPSLatitudeRef', 'GPSLongitudeRef');
    expect(read).toMatchObject({ GPSLatitude: 51.5, GPSLatitudeRef: 'N', GPSLongitudeRef: 'W' });
    const { gps } = await exifOf(path);
    expect(gps).toMatchObject({ GPSLatitude: [51, 30, 0], GPSLatitudeRef: 'N', GPSLongitudeRef: 'W' });
    expect(gps).not.toHaveProperty('latitude');
    expect(JSON.parse(JSON.stringify(gps))).toEqual(gps);
  });

  it('are null where there are none', async () => {
    expect((await exifOf(await pictureWith({ Make: 'Orrery' }))).gps).toBeNull();
  });
});

describe('a broken EXIF block', () => {
  it('counts as none', async () => {
    const none = { takenAt: null, camera: '', description: '', gps: null };
    expect(await readExif(undefined)).toEqual(none);
    for (const block of ['', 'Exif\0\0', 'Exif\0\0II*\0', 'II*\0\xff\xff\xff\xff', 'not EXIF at all']) {
      expect(await readExif(Buffer.from(block, 'latin1'))).toEqual(none);
    }
  });

  it('loses the tag that claims gigabytes, and keeps the others', async () => {
    const path = await pictureWith({
      DateTimeOriginal: '2025:06:30 10:00:00',
      Make: 'Orrery',
      GPSLatitude: '51.5',
      GPSLatitudeRef: 'N',
    });
    const block = Buffer.from((await sharp(path).metadata()).exif ?? []);
    // GPSLatitude: tag 0x0002, type 5 (RATIONAL), count 3, in either byte order.
    const little = block.indexOf(Buffer.from([2, 0, 5, 0, 3, 0, 0, 0]));
    const big = block.indexOf(Buffer.from([0, 2, 0, 5, 0, 0, 0, 3]));
    const at = Math.max(little, big);
    expect(Math.min(little, big)).toBe(-1);
    expect(at).toBeGreaterThan(0);
    block.fill(0x20, at + 4, at + 8);
    const read = await readExif(block);
    expect(read.takenAt?.local).toBe('2025-06-30T10:00:00');
    expect(read.camera).toBe('Orrery');
    expect(read.gps).toMatchObject({ GPSLatitude: [], GPSLatitudeRef: 'N' });
  });

  it('never throws and never yields what the message cannot carry, whatever is wrong in it', async () => {
    const path = await pictureWith({
      DateTimeOriginal: '2025:06:30 10:00:00',
      OffsetTimeOriginal: '+02:00',
      Make: 'Orrery',
      Model: 'Bench 5',
      GPSLatitude: '51.5',
      GPSLatitudeRef: 'N',
    });
    const { exif } = await sharp(path).metadata();
    if (exif === undefined) throw new Error('the test picture has no EXIF');
    const { shape } = decodedPictureSchema;
    const parts = decodedPictureSchema
      .pick({ takenAt: true, camera: true, gps: true })
      .extend({ description: shape.camera.max(4_096) });
    const change = fc.record({ at: fc.nat(exif.length - 1), value: fc.nat(255) });
    await fc.assert(
      fc.asyncProperty(
        fc.array(change, { minLength: 1, maxLength: 8 }),
        fc.nat(exif.length),
        fc.boolean(),
        async (changes, length, cut) => {
          const block = Buffer.from(exif);
          for (const { at, value } of changes) block[at] = value;
          const read = await readExif(cut ? block.subarray(0, length) : block);
          expect(parts.parse(JSON.parse(JSON.stringify(read)))).toEqual(read);
        },
      ),
      { numRuns: 2_000, seed: 4 },
    );
  });
});
