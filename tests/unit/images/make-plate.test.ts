import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import sharp from 'sharp';
import { describe, expect, it } from 'vitest';

import { createDurableFiles } from '../../../electron/files/durable-files.ts';
import type { PlateOrder } from '../../../electron/images/decoder-messages.ts';
import { makePlate } from '../../../electron/images/make-plate.ts';
import { failingFiles } from '../../support/files/failing-files.ts';
import { scratchFolder } from '../../support/files/scratch-folder.ts';
import { decoderPool, orderFor } from '../../support/pictures/decoding.ts';
import { readTags, writeTags } from '../../support/pictures/exiftool.ts';
import { markedJpeg, nearestQuarter, noisyJpeg, pixelAt } from '../../support/pictures/marked-picture.ts';

const files = createDurableFiles();

function plateOrder(name: string, content: string | Buffer, width: number, height: number): PlateOrder {
  const { sha256, sourceName, path } = orderFor(scratchFolder(), name, content);
  return { sha256, sourceName, path, plate: `${path}.plate`, width, height };
}

describe('a plate’s picture', () => {
  it('is brought to its size, upright', async () => {
    const order = plateOrder('turned.jpg', await markedJpeg({ width: 400, height: 300 }), 75, 100);
    // CIPA DC-008 (EXIF), Orientation 0x0112: with 6 the 0th row is the right side of the upright picture.
    writeTags({ path: order.path, tags: { Orientation: '6' } });
    expect(await makePlate(order, files)).toEqual({ width: 75, height: 100 });
    expect(await sharp(order.plate).metadata()).toMatchObject({ format: 'jpeg', width: 75, height: 100 });
    const rightTop = await pixelAt(order.plate, 0.8, 0.2);
    expect(nearestQuarter(rightTop)).toBe('firstRowFirstColumn');
  });

  it('is never larger than the original', async () => {
    const order = plateOrder('small.jpg', await markedJpeg({ width: 96, height: 64 }), 2017, 1345);
    expect(await makePlate(order, files)).toEqual({ width: 96, height: 64 });
  });

  it('holds nothing of what the camera wrote', async () => {
    const picture = await sharp(await markedJpeg({ width: 400, height: 300 }))
      .withIccProfile('p3')
      .toBuffer();
    const order = plateOrder('camera.jpg', picture, 200, 150);
    writeTags({
      path: order.path,
      tags: { Make: 'Maker', SerialNumber: '77', GPSLatitude: '57.7', GPSLatitudeRef: 'N', Comment: 'words' },
    });
    expect(Object.keys(readTags(order.path, 'GPS:all', 'ICC_Profile:all')).length).toBeGreaterThan(3);
    await makePlate(order, files);
    expect(readTags(order.plate, 'EXIF:all', 'GPS:all', 'ICC_Profile:all', 'XMP:all', 'Comment')).toEqual({
      SourceFile: order.plate,
    });
  });

  it('is refused by name where the original is no picture or ends early', async () => {
    const text = plateOrder('notes.jpg', 'no picture', 10, 10);
    await expect(makePlate(text, files)).rejects.toMatchObject({
      code: 'file-not-a-picture',
      details: { name: 'notes.jpg' },
    });
    const whole = await noisyJpeg(3);
    const torn = plateOrder('torn.jpg', whole.subarray(0, whole.length / 2), 100, 75);
    await expect(makePlate(torn, files)).rejects.toMatchObject({
      code: 'picture-broken',
      details: { name: 'torn.jpg' },
    });
    expect(existsSync(torn.plate)).toBe(false);
  });

  it('names the picture where the disk is full', async () => {
    const order = plateOrder('full.jpg', await noisyJpeg(4), 100, 75);
    await expect(
      makePlate(order, failingFiles(files, { step: 'write', nth: 1, mode: 'full' })),
    ).rejects.toMatchObject({
      code: 'disk-full',
      details: { what: 'full.jpg' },
    });
  });
});

describe('decoders that make plates', () => {
  it('do so beside the copies of photos that come in, in no more processes than they may be', async () => {
    const { pool, started } = decoderPool({ size: 2 });
    const folder = scratchFolder();
    const copies = [1, 2, 3].map(async (number) =>
      orderFor(folder, `in-${number}.jpg`, await noisyJpeg(number)),
    );
    const decoded = copies.map(async (order) => (await pool.decode(await order)).width);
    const plates = [4, 5, 6].map(async (number) => {
      const order = plateOrder(`plate-${number}.jpg`, await noisyJpeg(number), 160, 120);
      return (await pool.makePlate(order)).width;
    });
    expect(await Promise.all([...decoded, ...plates])).toEqual([320, 320, 320, 160, 160, 160]);
    expect(started).toHaveLength(2);
  });

  it('lose one plate to a picture that kills them, and no other', async () => {
    const orders = await Promise.all(
      [1, 2, 3].map(async (number) => plateOrder(`plate-${number}.jpg`, await noisyJpeg(number), 160, 120)),
    );
    const environment = {
      TEARDOWN_DOCKET_FAULT: `decoder.decode:kill@${orders[1]?.sha256.slice(0, 12) ?? ''}`,
    };
    const { pool } = decoderPool({ environment });
    const ended = await Promise.allSettled(orders.map((order) => pool.makePlate(order)));
    expect(ended.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    expect(ended[1]).toMatchObject({
      reason: { code: 'picture-killed-decoder', details: { name: 'plate-2.jpg' } },
    });
  });
});

it('a plate’s file is what it was told to be, and no other', async () => {
  const folder = scratchFolder();
  const path = join(folder, 'photo.jpg');
  writeFileSync(path, await noisyJpeg(9));
  const before = readFileSync(path);
  const plate = join(folder, 'out.part');
  await makePlate(
    { sha256: '0'.repeat(64), sourceName: 'photo.jpg', path, plate, width: 32, height: 24 },
    files,
  );
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(existsSync(plate)).toBe(true);
});
