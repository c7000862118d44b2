/** Where a picture was taken is kept with its original and told by the register alone: no other answer, no picture, no report. */
import Database from 'better-sqlite3';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';

import type { ResponseOf } from '#shared-types/api-contract.ts';

import { goThrough, type Walkthrough } from '../support/exchanges.ts';
import { enterLoopbackHost, type LoopbackClient } from '../support/loopback-client.ts';
import { readTags, writeTags } from '../support/pictures/exiftool.ts';
import { markedJpeg } from '../support/pictures/marked-picture.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import { openHost, type HostUnderTest } from './host-under-test.ts';

let folder: string;
let under: HostUnderTest;
let client: LoopbackClient;
let walkthrough: Walkthrough;

/** Numbers that stand nowhere else: degrees, minutes and seconds are told apart in EXIF (2.32, 4.6.6). */
const latitude = { decimal: '59.12345', minutes: 7, seconds: '24.42' };

beforeAll(async () => {
  folder = makeTemporaryFolder();
  const path = join(folder, 'front-face.jpg');
  writeFileSync(path, await markedJpeg());
  writeTags({
    path,
    tags: { GPSLatitude: latitude.decimal, GPSLatitudeRef: 'N', GPSLongitude: '18.5', GPSLongitudeRef: 'E' },
  });
  under = await openHost(folder);
  client = await enterLoopbackHost(under.host.address);
  walkthrough = await goThrough(client, path);
});
afterAll(async () => {
  await under.close();
  removeFolder(folder);
});

function answerTo<Value>(channel: string): Value {
  const answer = walkthrough.exchanges.find((exchange) => exchange.channel === channel)?.answer;
  if (!answer?.ok) throw new Error(`${channel} was not answered`);
  return answer.value as Value;
}

test('it is in the library, as the camera wrote it', () => {
  const db = new Database(join(folder, 'own', 'library.sqlite'), { readonly: true });
  const gps = db.prepare<[], string>('SELECT gps FROM blob').pluck().get() ?? '';
  db.close();
  expect(gps).toContain(latitude.seconds);
});

test('the register tells it', () => {
  const [entry] = answerTo<ResponseOf<'photos.register'>>('photos.register');
  expect(entry?.cameraPlace?.latitude).toBeCloseTo(Number(latitude.decimal), 5);
});

test('no answer of any other channel tells it', () => {
  const others = walkthrough.exchanges.filter(({ channel }) => channel !== 'photos.register');
  const told = JSON.stringify({ others, ended: walkthrough.ended });
  expect(told).toContain('front-face.jpg');
  expect(told).not.toMatch(/gps|latitude|longitude/i);
  expect(told).not.toContain(latitude.seconds);
  expect(told).not.toContain(latitude.decimal);
});

test('no picture that the page is given tells it', async () => {
  const [photo] = answerTo<ResponseOf<'photos.list'>>('photos.list');
  for (const address of Object.values(photo?.derivatives ?? {})) {
    const { headers } = client;
    const bytes = Buffer.from(
      await (await fetch(`${client.origin}/picture/${address}`, { headers })).arrayBuffer(),
    );
    expect((await sharp(bytes).metadata()).exif).toBeUndefined();
    const path = join(folder, 'served.jpg');
    writeFileSync(path, bytes);
    expect(Object.keys(readTags(path, 'GPS*', 'Make', 'Orientation'))).toEqual(['SourceFile']);
  }
});

test('the printed report does not tell it', async () => {
  const token = walkthrough.ended.find(({ kind }) => kind === 'report')?.document?.token;
  const { headers } = client;
  const response = await fetch(`${client.origin}/document/${String(token)}`, { headers });
  const pdf = Buffer.from(await response.arrayBuffer());
  expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-');
  // JPEG pictures stand in a PDF as they are (ISO 32000-1, 7.4.8): what they carried would be seen.
  expect(pdf.includes('DCTDecode')).toBe(true);
  expect(pdf.includes('Exif\0\0')).toBe(false);
});
