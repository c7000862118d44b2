/** The pictures of a report as the engine makes them: from the originals, in the size of print, and nothing else in them. */
import { execFileSync } from 'node:child_process';
import { copyFileSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { pageGeometry } from '#analysis/report/page-geometry.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import { readTagsOfEach, writeTags } from '../support/pictures/exiftool.ts';
import { noisyJpeg } from '../support/pictures/marked-picture.ts';
import { startEngineHere, type EngineHere } from '../support/world-engine.ts';
import { qpdfCheck, textOf } from './pdf-tools.ts';
import { withoutSpaces } from './printed-report.ts';

const camera = {
  Make: 'Cameraworks',
  Model: 'CW-9',
  SerialNumber: 'SN99887',
  OwnerName: 'Somebody',
  DateTimeOriginal: '2026:03:04 09:15:00',
  GPSLatitude: '57.7089',
  GPSLatitudeRef: 'N',
  GPSLongitude: '11.9746',
  GPSLongitudeRef: 'E',
  'XMP-dc:Creator': 'Somebody',
};

let folder: string;
let engine: EngineHere;
let caseId: CaseId;

beforeAll(async () => {
  folder = makeTemporaryFolder();
  engine = await startEngineHere(join(folder, 'library'));
  await engine.ask('analysts.add', { name: 'A. Analyst', qualification: '' });
  ({ caseId } = await engine.ask('cases.open', {
    number: '26-0147',
    unit: { maker: '', model: 'R45', serial: '', partNumber: '' },
    customer: '',
    claim: 'It whistled.',
    machineKind: 'turbocharger',
  }));
  // One larger than its plate is printed, one smaller, one that stands upright.
  const sizes = [
    { width: 2400, height: 1800 },
    { width: 320, height: 240 },
    { width: 900, height: 1600 },
  ];
  const paths = await Promise.all(
    sizes.map(async (size, index) => {
      const path = join(folder, `IMG_000${index + 1}.jpg`);
      writeFileSync(path, await noisyJpeg(index + 1, size));
      return path;
    }),
  );
  writeTags(...paths.map((path) => ({ path, tags: camera })));
  const tokens = [];
  for (const path of paths) tokens.push(await engine.takeIn(path));
  const job = await engine.ended(await engine.ask('photos.import', { caseId, tokens }));
  expect(job.state).toBe('done');
});

afterAll(async () => {
  await engine.close();
  removeFolder(folder);
});

async function made(name: string): Promise<string> {
  const job = await engine.ended(await engine.ask('reports.make', { caseId, paper: 'A4' }));
  expect(job.error).toBeNull();
  const file = join(folder, `${name}.pdf`);
  copyFileSync(join(engine.folder, 'deliveries', job.document?.token ?? ''), file);
  return file;
}

const platesKept = () =>
  readdirSync(join(engine.folder, 'plates'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.jpg'))
    .map((name) => join(engine.folder, 'plates', name));

describe('a report on photos that hold camera and place', () => {
  it('prints none of it in its pictures or anywhere else, as pdfimages and exiftool find', async () => {
    const file = await made('report');
    await qpdfCheck(file);
    const out = join(folder, 'pictures');
    execFileSync('pdfimages', ['-all', file, out]);
    const pictures = readdirSync(folder)
      .filter((name) => name.startsWith('pictures-'))
      .map((name) => join(folder, name));
    // Three plates and three on the contact sheet.
    expect(pictures).toHaveLength(6);
    for (const tags of readTagsOfEach(
      pictures,
      'EXIF:all',
      'GPS:all',
      'XMP:all',
      'ICC_Profile:all',
      'IPTC:all',
    )) {
      expect(Object.keys(tags)).toEqual(['SourceFile']);
    }
    // The document itself: as it lies, and with everything in it unpacked.
    const unpacked = join(folder, 'unpacked.pdf');
    execFileSync('qpdf', ['--qdf', '--object-streams=disable', '--decode-level=all', file, unpacked]);
    const bytes = readFileSync(file).toString('latin1') + readFileSync(unpacked).toString('latin1');
    for (const secret of ['SN99887', 'Somebody', '57.7089', '11.9746']) expect(bytes).not.toContain(secret);
    const words = withoutSpaces(await textOf(file));
    expect(words).not.toContain('57.7');
    // The camera's make is in the register, where it belongs.
    expect(words).toContain('CameraworksCW-9');
  });

  it('prints the place only when the plan says so', async () => {
    const { revision } = await engine.ask('report-plan.read', { caseId });
    await engine.ask('report-plan.change', { caseId, revision, fields: { printCameraPlaces: true } });
    expect(withoutSpaces(await textOf(await made('with-places')))).toContain('57.70890°N,11.97460°E');
    await engine.ask('report-plan.change', {
      caseId,
      revision: revision + 1,
      fields: { printCameraPlaces: false },
    });
  });
});

describe('its plates', () => {
  it('have 300 pixels to the inch, or all that the original has', async () => {
    const file = await made('resolution');
    const list = execFileSync('pdfimages', ['-list', file], { encoding: 'utf8' });
    const rows = list.split('\n').slice(2).filter(Boolean);
    const sizes = rows
      .map((row) => row.trim().split(/\s+/))
      .map((cells) => ({
        width: Number(cells[3]),
        height: Number(cells[4]),
        perInch: Number(cells[12]),
      }));
    const acrossTheMeasure = (pageGeometry('A4').measure / 72) * 300;
    expect(Math.abs((sizes[0]?.width ?? 0) - acrossTheMeasure)).toBeLessThan(2);
    expect(sizes[0]?.perInch).toBe(300);
    expect(sizes[1]).toMatchObject({ width: 320, height: 240 });
    expect(sizes[1]?.perInch).toBeLessThan(60);
    expect(sizes[2]?.height).toBeGreaterThan((sizes[2]?.width ?? 0) * 1.7);
  });

  it('are kept, used again, and made again when they are lost', async () => {
    await made('first');
    const before = platesKept().map((path) => [path, statSync(path).ino]);
    expect(before).toHaveLength(3);
    await made('again');
    expect(platesKept().map((path) => [path, statSync(path).ino])).toEqual(before);
    const bytes = platesKept().map((path) => readFileSync(path));
    rmSync(join(engine.folder, 'plates'), { recursive: true });
    await made('lost');
    expect(platesKept().map((path, index) => bytes[index]?.equals(readFileSync(path)))).toEqual([
      true,
      true,
      true,
    ]);
    expect(readdirSync(join(engine.folder, 'incoming'))).toEqual([]);
  });

  it('are counted while they are drawn, and the job keeps no line of each', async () => {
    const begun = engine.events.length;
    rmSync(join(engine.folder, 'plates'), { recursive: true });
    const job = await engine.ended(await engine.ask('reports.make', { caseId, paper: 'Letter' }));
    const told = engine.events
      .slice(begun)
      .flatMap((event): Job[] => (event.name === 'job-changed' ? [event.payload.job] : []))
      .filter(({ id, total }) => id === job.id && total === 3);
    expect(told.length).toBeGreaterThan(0);
    expect(told.every(({ done }) => done <= 3)).toBe(true);
    expect(job).toMatchObject({ state: 'done', done: job.total, items: [] });
  });

  it('whose original is gone are told by the photo’s name', async () => {
    const [photo] = await engine.ask('photos.list', { caseId });
    const original = join(engine.folder, 'originals', photo?.sha256.slice(0, 2) ?? '', photo?.sha256 ?? '');
    const kept = readFileSync(original);
    rmSync(original);
    rmSync(join(engine.folder, 'plates'), { recursive: true });
    const job = await engine.ended(await engine.ask('reports.make', { caseId, paper: 'A4' }));
    expect(job).toMatchObject({ state: 'failed', error: { code: 'original-missing' } });
    expect(job.error?.message).toContain('IMG_0001.jpg');
    writeFileSync(original, kept);
    await made('restored');
  });
});
