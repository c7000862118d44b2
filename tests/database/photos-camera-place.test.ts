/** Where a camera says it stood: exiftool writes the tags and reads the place; the register has to say the same. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { describe, expect, test } from 'vitest';

import { cameraPlaceOf } from '../../electron/images/camera-place.ts';
import { engineForTest } from '../support/engine-for-test.ts';
import { readTagsOfEach, writeTags } from '../support/pictures/exiftool.ts';
import { noisyJpeg } from '../support/pictures/marked-picture.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { makeWorld } from '../support/world.ts';

type Tags = Readonly<Record<string, string>>;

const written: readonly Tags[] = [
  { GPSLatitude: '57.70887', GPSLatitudeRef: 'N', GPSLongitude: '11.97456', GPSLongitudeRef: 'E' },
  {
    GPSLatitude: '33.9248685',
    GPSLatitudeRef: 'S',
    GPSLongitude: '70.6692655',
    GPSLongitudeRef: 'W',
    GPSAltitude: '523.25',
    GPSAltitudeRef: '0',
  },
  {
    GPSLatitude: '31.5',
    GPSLatitudeRef: 'N',
    GPSLongitude: '35.475',
    GPSLongitudeRef: 'E',
    GPSAltitude: '430.5',
    GPSAltitudeRef: '1',
  },
];
const withoutPlace: readonly Tags[] = [{ GPSLatitude: '57.7', GPSLatitudeRef: 'N' }, { Make: 'Orrery' }];

describe('the register', () => {
  test('has the place of the camera as exiftool reads it, and none where it is incomplete', async () => {
    const folder = temporaryFolder();
    const paths: string[] = [];
    const taggings = [];
    for (const [at, tags] of [...written, ...withoutPlace].entries()) {
      const path = join(folder, `place-${String(at)}.jpg`);
      writeFileSync(path, await noisyJpeg(60 + at, { width: 32, height: 24 }));
      paths.push(path);
      taggings.push({ path, tags });
    }
    writeTags(...taggings);
    // exiftool's own reading, signed: the composite tags of `exiftool -n`.
    const names = ['Composite:GPSLatitude', 'Composite:GPSLongitude', 'Composite:GPSAltitude'];
    const read = readTagsOfEach(paths.slice(0, written.length), ...names);

    const engine = await engineForTest();
    const plan = makeWorld(52, { cases: 1, findings: [0, 0], photos: [0, 0], marks: [0, 0] });
    await engine.ask('analysts.add', plan.analyst);
    const { caseId } = await engine.ask('cases.open', plan.cases[0]!.draft);
    const tokens = [];
    for (const path of paths) tokens.push(await engine.takeIn(path));
    await engine.ended(await engine.ask('photos.import', { caseId, tokens }));
    const register = await engine.ask('photos.register', { caseId });
    const placeOf = (path: string) =>
      register.find(({ photo }) => path.endsWith(`/${photo.sourceName}`))?.cameraPlace;

    for (const [at, path] of paths.slice(0, written.length).entries()) {
      const tags = read[at]!;
      const place = placeOf(path)!;
      expect(place.latitude).toBeCloseTo(Number(tags.GPSLatitude), 9);
      expect(place.longitude).toBeCloseTo(Number(tags.GPSLongitude), 9);
      if (tags.GPSAltitude === undefined) expect(place.altitude).toBeNull();
      else expect(place.altitude).toBeCloseTo(Number(tags.GPSAltitude), 9);
      // That exiftool read at all what it wrote: no check of nothing against nothing.
      expect(Math.abs(Number(tags.GPSLatitude))).toBeCloseTo(Number(written[at]!.GPSLatitude), 5);
    }
    for (const path of paths.slice(written.length)) expect(placeOf(path)).toBeNull();
    // The list of photos, which screens and reports are made from, knows no place.
    expect(JSON.stringify(await engine.ask('photos.list', { caseId }))).not.toMatch(/gps|latitude|57\.7/i);
  });
});

describe('a place', () => {
  const place = {
    GPSLatitudeRef: 'N',
    GPSLatitude: [57, 42, 31.9],
    GPSLongitudeRef: 'E',
    GPSLongitude: [11, 58, 28.4],
  };
  const of = (change: Readonly<Record<string, unknown>>) =>
    cameraPlaceOf(JSON.stringify({ ...place, ...change }));

  test('is degrees, minutes and seconds added up', () => {
    // 57 + 42/60 + 31.9/3600 and 11 + 58/60 + 28.4/3600, worked out by hand.
    expect(of({})).toEqual({
      latitude: expect.closeTo(57.708861, 6) as number,
      longitude: expect.closeTo(11.974556, 6) as number,
      altitude: null,
    });
  });

  test.each([
    ['no reference', { GPSLatitudeRef: null }],
    ['a reference that is none', { GPSLongitudeRef: 'X' }],
    ['no latitude', { GPSLatitude: null }],
    ['two fractions', { GPSLatitude: [57, 42] }],
    ['a fraction over nought, which is kept as null', { GPSLatitude: [57, 42, null] }],
    ['more than 90 degrees of latitude', { GPSLatitude: [90, 0, 0.1] }],
    ['more than 180 degrees of longitude', { GPSLongitude: [180, 0, 0.1] }],
    ['61 minutes', { GPSLatitude: [57, 61, 0] }],
    ['negative degrees', { GPSLatitude: [-57, 0, 0] }],
  ])('with %s is none', (_name, change) => {
    expect(of(change)).toBeNull();
  });

  test.each([
    ['above the sea where no reference is written', { GPSAltitude: 12 }, 12],
    ['above', { GPSAltitude: 12, GPSAltitudeRef: [0] }, 12],
    ['below', { GPSAltitude: 12, GPSAltitudeRef: [1] }, -12],
    ['below, as a bare number', { GPSAltitude: 12, GPSAltitudeRef: 1 }, -12],
    ['not known over the ellipsoid', { GPSAltitude: 12, GPSAltitudeRef: [2] }, null],
    ['not known where it is no number', { GPSAltitude: null, GPSAltitudeRef: [0] }, null],
  ])('has its altitude %s', (_name, change, altitude) => {
    expect(of(change)?.altitude).toBe(altitude);
  });

  test('is none without tags', () => {
    expect(cameraPlaceOf(null)).toBeNull();
    expect(cameraPlaceOf('{}')).toBeNull();
  });
});
