import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDurableFiles } from '../../../electron/files/durable-files.ts';
import { decodePicture, restrainImageLibrary } from '../../../electron/images/decode-picture.ts';
import type { DecodedPicture, DecodeOrder } from '../../../electron/images/decoder-messages.ts';
import type { ErrorCode } from '#shared-types/errors.ts';
import { failingFiles } from '../../support/files/failing-files.ts';
import { newScratchFolder, removeFolder, scratchFolder } from '../../support/files/scratch-folder.ts';
import { orderFor } from '../../support/pictures/decoding.ts';
import { readTagsOfEach, writeTags } from '../../support/pictures/exiftool.ts';
import {
  markedJpeg,
  markedPicture,
  nearestQuarter,
  noisyJpeg,
  pixelAt,
  type Quarter,
} from '../../support/pictures/marked-picture.ts';
import { jpegHeader, pngHeader } from '../../support/pictures/picture-headers.ts';

const files = createDurableFiles();

function written(name: string, content: string | Buffer): DecodeOrder {
  return orderFor(scratchFolder(), name, content);
}

const solid = (colour: string, size = { width: 60, height: 40 }) =>
  sharp({ create: { ...size, channels: 3, background: colour } });

type Side = 'top' | 'bottom' | 'left' | 'right';
type Place = { readonly x: number; readonly y: number };

/** A point well inside the quarter of the upright picture where the two sides meet. */
function cornerAt(one: Side, other: Side): Place {
  const sides = new Set([one, other]);
  return { x: sides.has('left') ? 0.2 : 0.8, y: sides.has('top') ? 0.2 : 0.8 };
}
const opposite = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' } as const;

// CIPA DC-008 (EXIF), Orientation 0x0112: the visual side of the 0th row and of the 0th column.
const exifTable: readonly (readonly [orientation: number, row0: Side, column0: Side])[] = [
  [1, 'top', 'left'],
  [2, 'top', 'right'],
  [3, 'bottom', 'right'],
  [4, 'bottom', 'left'],
  [5, 'left', 'top'],
  [6, 'right', 'top'],
  [7, 'right', 'bottom'],
  [8, 'left', 'bottom'],
];

const noOrientations = [0, 9, 65535];

describe.each(['jpg', 'png'] as const)('EXIF orientation of a .%s', (extension) => {
  const stored = { width: 96, height: 64 };
  const folder = newScratchFolder();
  afterAll(() => {
    removeFolder(folder);
  });
  const orders = new Map<number, DecodeOrder>();
  const decoded = new Map<number, DecodedPicture>();
  /** What the independent reader finds in the originals, and in the derived pictures. */
  const written = new Map<number, unknown>();
  let derivedOrientations: readonly unknown[] = [];

  beforeAll(async () => {
    const content =
      extension === 'jpg' ? await markedJpeg(stored) : await markedPicture(stored).png().toBuffer();
    const orientations = [...exifTable.map(([orientation]) => orientation), ...noOrientations];
    for (const orientation of orientations) {
      orders.set(orientation, orderFor(folder, `${orientation}.${extension}`, content));
    }
    writeTags(...[...orders].map(([value, { path }]) => ({ path, tags: { Orientation: String(value) } })));
    const originals = [...orders.values()].map(({ path }) => path);
    readTagsOfEach(originals, 'Orientation').forEach((tags, index) => {
      written.set(orientations[index] ?? -1, tags.Orientation);
    });
    for (const [orientation, order] of orders) {
      decoded.set(orientation, await decodePicture(order, files));
    }
    const derived = [...orders.values()].flatMap(({ display, thumbnail }) => [display, thumbnail]);
    derivedOrientations = readTagsOfEach(derived, 'Orientation').map((tags) => tags.Orientation);
  });

  it.each(exifTable)('%i: row 0 is at the %s, column 0 at the %s', async (orientation, row0, column0) => {
    expect(written.get(orientation)).toBe(orientation);
    const upright = orientation >= 5 ? { width: 64, height: 96 } : stored;
    expect(decoded.get(orientation)).toMatchObject({ ...upright, orientation });
    const expected: Readonly<Record<Quarter, Place>> = {
      firstRowFirstColumn: cornerAt(row0, column0),
      firstRowLastColumn: cornerAt(row0, opposite[column0]),
      lastRowFirstColumn: cornerAt(opposite[row0], column0),
      lastRowLastColumn: cornerAt(opposite[row0], opposite[column0]),
    };
    const order = orders.get(orientation);
    for (const path of [order?.display ?? '', order?.thumbnail ?? '']) {
      const { width, height } = await sharp(path).metadata();
      expect({ width, height }).toEqual(upright);
      for (const [quarter, { x, y }] of Object.entries(expected)) {
        expect(nearestQuarter(await pixelAt(path, x, y))).toBe(quarter);
      }
    }
  });

  it('is not left in the derived pictures, where it would turn them a second time', () => {
    expect(derivedOrientations).toEqual(Array(22).fill(undefined));
  });

  it.each(noOrientations)('%i is none and counts as 1', async (orientation) => {
    expect(written.get(orientation)).toBe(orientation);
    expect(decoded.get(orientation)).toMatchObject({ ...stored, orientation: 1 });
    const display = orders.get(orientation)?.display ?? '';
    expect(nearestQuarter(await pixelAt(display, 0.2, 0.2))).toBe('firstRowFirstColumn');
  });
});

describe('the derived pictures', () => {
  it('are scaled to their long sides, never enlarged, and carry no metadata', async () => {
    const order = written(
      'large.jpg',
      await solid('#507090', { width: 3000, height: 5120 }).jpeg().toBuffer(),
    );
    writeTags({
      path: order.path,
      tags: { Make: 'Orrery', Model: 'Bench 5', GPSLatitude: '51.5', GPSLatitudeRef: 'N' },
    });
    expect(await decodePicture(order, files)).toEqual({
      width: 3000,
      height: 5120,
      displayWidth: 1500,
      displayHeight: 2560,
      thumbnailWidth: 234,
      thumbnailHeight: 400,
      mediaType: 'image/jpeg',
      orientation: 1,
      takenAt: null,
      camera: 'Orrery Bench 5',
      declaredSynthetic: null,
      gps: expect.objectContaining({ GPSLatitude: [51, 30, 0] }) as unknown,
    });
    const derivedPaths = [order.display, order.thumbnail];
    const found = readTagsOfEach(derivedPaths, 'Make', 'GPSLatitude', 'GPSPosition');
    expect(found).toEqual(derivedPaths.map((SourceFile) => ({ SourceFile })));
    for (const path of derivedPaths) {
      const derived = await sharp(path).metadata();
      expect([derived.format, derived.space, derived.exif, derived.icc]).toEqual([
        'jpeg',
        'srgb',
        undefined,
        undefined,
      ]);
    }
    const small = written('small.png', await solid('#507090').png().toBuffer());
    expect(await decodePicture(small, files)).toMatchObject({
      displayWidth: 60,
      displayHeight: 40,
      thumbnailWidth: 60,
      mediaType: 'image/png',
    });
  });

  const closeTo = (colour: readonly number[], expected: readonly number[], most: number) =>
    Math.max(...expected.map((value, index) => Math.abs(value - (colour[index] ?? NaN)))) <= most;

  it('show a picture in another colour space in sRGB', async () => {
    // CSS Color 4: sRGB red, color(display-p3 0.9175 0.2003 0.1386), is 234 51 35 in Display P3 (from memory).
    const order = written('p3.jpg', await solid('#ea3323').jpeg({ quality: 100 }).toBuffer());
    const { icc } = await sharp(await solid('#ffffff').withIccProfile('p3').jpeg().toBuffer()).metadata();
    if (icc === undefined) throw new Error('no profile to try with');
    writeFileSync(`${order.path}.icc`, icc);
    writeTags({ path: order.path, tags: { 'ICC_Profile<': `${order.path}.icc` } });
    expect((await sharp(order.path).metadata()).hasProfile).toBe(true);
    await decodePicture(order, files);
    expect(closeTo(await pixelAt(order.display, 0.5, 0.5), [255, 0, 0], 4)).toBe(true);
  });

  it('show CMYK, 16-bit, grey and transparent pictures', async () => {
    const cmyk = written('cmyk.jpg', await solid('#c03020').toColourspace('cmyk').jpeg().toBuffer());
    expect((await sharp(cmyk.path).metadata()).channels).toBe(4);
    await decodePicture(cmyk, files);
    const [red, green, blue] = await pixelAt(cmyk.display, 0.5, 0.5);
    expect(red).toBeGreaterThan(green + 60);
    expect(red).toBeGreaterThan(blue + 60);

    const samples = new Uint16Array(60 * 40 * 3).fill(0x8000);
    const deep = written(
      'deep.png',
      await sharp(samples, { raw: { width: 60, height: 40, channels: 3 } })
        .toColourspace('rgb16')
        .png()
        .toBuffer(),
    );
    expect((await sharp(deep.path).metadata()).depth).toBe('ushort');
    await decodePicture(deep, files);
    expect(closeTo(await pixelAt(deep.display, 0.5, 0.5), [128, 128, 128], 1)).toBe(true);

    const grey = written('grey.png', await solid('#646464').toColourspace('b-w').png().toBuffer());
    expect((await sharp(grey.path).metadata()).channels).toBe(1);
    await decodePicture(grey, files);
    expect(closeTo(await pixelAt(grey.display, 0.5, 0.5), [100, 100, 100], 1)).toBe(true);

    const clear = { width: 60, height: 40, channels: 4 as const, background: { r: 9, g: 9, b: 9, alpha: 0 } };
    const glass = written('glass.png', await sharp({ create: clear }).png().toBuffer());
    await decodePicture(glass, files);
    expect(closeTo(await pixelAt(glass.display, 0.5, 0.5), [255, 255, 255], 1)).toBe(true);
  });
});

describe('a picture that cannot be used', () => {
  async function refused(
    order: DecodeOrder,
    code: ErrorCode,
    details: Readonly<Record<string, unknown>> = {},
  ) {
    await expect(decodePicture(order, files)).rejects.toMatchObject({
      code,
      details: { name: order.sourceName, ...details },
    });
    expect([existsSync(order.display), existsSync(order.thumbnail)]).toEqual([false, false]);
  }
  const cutShort = { reason: 'the file ends before the picture does' };

  it('is refused when it ends early, however little is missing', async () => {
    const jpeg = await noisyJpeg(1);
    for (const share of [0.1, 0.5, 0.9, 0.99]) {
      const cut = jpeg.subarray(0, Math.floor(jpeg.length * share));
      await refused(written('cut.jpg', cut), 'picture-broken', cutShort);
    }
    const progressive = await sharp(jpeg).jpeg({ progressive: true }).toBuffer();
    await refused(
      written('cut-progressive.jpg', progressive.subarray(0, Math.floor(progressive.length * 0.6))),
      'picture-broken',
      cutShort,
    );
    const png = await sharp(jpeg).png().toBuffer();
    await refused(written('cut.png', png.subarray(0, Math.floor(png.length * 0.6))), 'picture-broken');
  });

  it('is refused when it is no picture, or one too large', async () => {
    await refused(written('empty.jpg', ''), 'file-empty');
    await refused(written('notes.jpg', 'Compressor wheel, seen from the inlet'), 'file-not-a-picture');
    await refused(written('bomb.png', pngHeader(60_000, 60_000)), 'picture-too-large', { megapixels: 3600 });
    await refused(written('head.jpg', jpegHeader(400, 300)), 'picture-broken');
    await refused(written('head.png', pngHeader(400, 300)), 'picture-broken');
  });

  it('is not one whose EXIF is broken', async () => {
    const order = written('noisy-exif.jpg', await markedJpeg());
    writeTags({ path: order.path, tags: { Make: 'Orrery', DateTimeOriginal: '2025:06:30 10:00:00' } });
    const content = readFileSync(order.path);
    const tiff = content.indexOf('Exif\0\0', 0, 'latin1') + 6;
    expect(tiff).toBeGreaterThan(6);
    content.fill(0xff, tiff, tiff + 60);
    writeFileSync(order.path, content);
    expect(await decodePicture(order, files)).toMatchObject({
      width: 96,
      height: 64,
      orientation: 1,
      takenAt: null,
      camera: '',
      declaredSynthetic: null,
      gps: null,
    });
  });
});

describe('a full or refusing disk', () => {
  it.each([
    [1, 'full', 'disk-full'],
    [2, 'full', 'disk-full'],
    [1, 'refused', 'disk-refused'],
  ] as const)('at derived picture %i (%s) names the photo', async (nth, mode, code) => {
    const order = written('front.jpg', await markedJpeg());
    const failing = failingFiles(files, { step: 'write', nth, mode });
    await expect(decodePicture(order, failing)).rejects.toMatchObject({
      code,
      details: { what: 'front.jpg' },
    });
    expect(failing.failed()).toBe(true);
  });
});

describe('the image library in a decoder', () => {
  beforeAll(restrainImageLibrary);

  it('opens no other format, and still JPEG and PNG files', async () => {
    const tiff = written('scan.tiff', Buffer.from([0x49, 0x49, 0x2a, 0, 8, 0, 0, 0]));
    await sharp({ create: { width: 4, height: 4, channels: 3, background: '#fff' } })
      .tiff()
      .toFile(tiff.path);
    await expect(sharp(tiff.path).metadata()).rejects.toThrow('unsupported image format');
    const svg = written('drawing.jpg', '<svg xmlns="http://www.w3.org/2000/svg" width="4" height="4"/>');
    await expect(sharp(svg.path).metadata()).rejects.toThrow('unsupported image format');
    await expect(decodePicture(written('ok.jpg', await markedJpeg()), files)).resolves.toMatchObject({
      width: 96,
    });
    const png = await markedPicture({ width: 9, height: 9 }).png().toBuffer();
    await expect(decodePicture(written('ok.png', png), files)).resolves.toMatchObject({ width: 9 });
  });
});
