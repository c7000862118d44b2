/**
 * Whether what a measurement says of itself holds: true places of the sample photos, every click off by chance, and the
 * stated interval (k = 2) asked whether it holds the true value. By a normal distribution it does in 95.4 % of trials.
 */
import { describe, expect, test } from 'vitest';

import { imagePoint } from '#analysis/marks/planes.ts';
import { angleAt } from '#analysis/measure/angle-at.ts';
import { diameterThrough } from '#analysis/measure/diameter-through.ts';
import { lengthBetween } from '#analysis/measure/length-between.ts';
import type { Basis } from '#analysis/measure/measure-quantity.ts';
import type { Measured, NotMeasured } from '#analysis/measure/measured.ts';
import { areaWithin } from '#analysis/measure/outline-area.ts';
import type { KnownLength, LengthScale, RectangleScale } from '#analysis/measure/photo-scale.ts';
import type { ImagePoint } from '#shared-types/points.ts';

import { cameraOver, truthOf, type Place } from './sample-truth.ts';
import { seededChance, seededNormal } from './seeded-chance.ts';

/** Pixels, of every coordinate. */
const clickUncertainty = 1.5;
/** Height of the plate's upper face, of the rule's, in mm over the bench. */
const plateHeight = 3;
const ruleHeight = 0.9;

function trials(seed: number) {
  const chance = seededChance(seed);
  const normal = seededNormal(chance);
  return {
    chance,
    clicked: ({ x, y }: ImagePoint): ImagePoint =>
      imagePoint(x + clickUncertainty * normal(), y + clickUncertainty * normal()),
    /** A length as an instrument gives it. */
    read: (mm: number, expandedMm: number): KnownLength => ({
      mm: mm + (expandedMm / 2) * normal(),
      expandedMm,
    }),
  };
}
type Trials = ReturnType<typeof trials>;

/** The share of trials whose interval holds the true value, and the middle one of U over the value. */
function tally() {
  const relative: number[] = [];
  let held = 0;
  return {
    add(result: Measured | NotMeasured, truth: number) {
      if (result.kind === 'refused') throw new Error(`${result.of}: ${result.because}`);
      relative.push(result.expanded / result.value);
      if (Math.abs(result.value - truth) <= result.expanded) held += 1;
    },
    count: () => relative.length,
    result: () => ({
      share: held / relative.length,
      median: relative.sort((one, other) => one - other)[relative.length >> 1]!,
    }),
  };
}

const cornerNames = ['upper-left', 'upper-right', 'lower-right', 'lower-left'] as const;
type Target = ReturnType<typeof truthOf>;

/** The plate, 100 by 60 mm, its corners clicked and its sides read to 0.05 mm. */
function byPlate(target: Target, { clicked, read }: Trials, offsetMm = 0): Basis {
  const [a, b, c, d] = cornerNames.map((name) => clicked(target.pixelOf(name)));
  const scale: RectangleScale = {
    kind: 'rectangle',
    corners: [a!, b!, c!, d!],
    sides: [read(100, 0.05), read(60, 0.05)],
    clickUncertainty,
    offsetMm,
    camera: offsetMm === 0 ? null : cameraOver(target, plateHeight),
  };
  return { clickUncertainty, scale };
}

/** From its upper left corner, in mm along its sides. */
function onPlate(target: Target, along: number, across: number): Place {
  const [corner, right, , down] = cornerNames.map((name) => target.placeOf(name));
  const at = (axis: 0 | 1) =>
    corner![axis] +
    ((right![axis] - corner![axis]) * along) / 100 +
    ((down![axis] - corner![axis]) * across) / 60;
  return [at(0), at(1), plateHeight];
}

const targets = ['BRN_2103', 'BRN_2104'] as const;

describe.each(targets)('by the rectangle of %s, tilted 30 or 45 degrees', (photo) => {
  const target = truthOf(photo);

  test('a length holds the true one in 93 % at least, to 1.5 % or better for most', () => {
    const work = trials(photo === 'BRN_2103' ? 2103 : 2104);
    const lengths = tally();
    while (lengths.count() < 1250) {
      const [x1, y1] = [100 * work.chance(), 60 * work.chance()];
      const [x2, y2] = [100 * work.chance(), 60 * work.chance()];
      const truth = Math.hypot(x2 - x1, y2 - y1);
      if (truth < 5) continue;
      const [from, to] = [onPlate(target, x1, y1), onPlate(target, x2, y2)];
      const basis = byPlate(target, work);
      lengths.add(
        lengthBetween(work.clicked(target.seen(from)), work.clicked(target.seen(to)), basis),
        truth,
      );
    }
    const { share, median } = lengths.result();
    expect(share).toBeGreaterThanOrEqual(0.93);
    // Nor is it held by claiming too little.
    expect(share).toBeLessThanOrEqual(0.98);
    expect(median).toBeLessThanOrEqual(0.015);
  });

  test.each(target.lengths)('$from to $to, $mm mm, holds', ({ from, to, mm }) => {
    const work = trials(mm * 1000);
    const offset = Math.abs(target.placeOf(from)[2] - plateHeight);
    const length = tally();
    for (let trial = 0; trial < 150; trial += 1) {
      const basis = byPlate(target, work, offset);
      const [first, last] = [target.pixelOf(from), target.pixelOf(to)];
      length.add(lengthBetween(work.clicked(first), work.clicked(last), basis), mm);
    }
    expect(length.result().share).toBeGreaterThanOrEqual(0.9);
  });

  test('an angle, a diameter and an area hold the true ones', () => {
    const work = trials(7);
    const [angles, diameters, areas] = [tally(), tally(), tally()];
    for (let trial = 0; trial < 250; trial += 1) {
      const basis = byPlate(target, work);
      const click = (x: number, y: number) => work.clicked(target.seen(onPlate(target, x, y)));
      const [radius, turn] = [8 + 18 * work.chance(), 2 * Math.PI * work.chance()];
      const [x, y] = [30 + 40 * work.chance(), 30];
      const round = (at: number) => click(x + radius * Math.cos(turn + at), y + radius * Math.sin(turn + at));
      const opening = 0.3 + 2.5 * work.chance();
      angles.add(angleAt(round(0), click(x, y), round(opening), basis), (opening * 180) / Math.PI);
      const eight = [0, 0.8, 1.5, 2.4, 3.1, 4, 4.7, 5.5];
      diameters.add(diameterThrough(eight.map(round), basis), 2 * radius);
      const fan = eight.map((at, place) => (eight[place + 1] ?? 2 * Math.PI) - at);
      const area = fan.reduce((sum, one) => sum + (radius ** 2 * Math.sin(one)) / 2, 0);
      areas.add(areaWithin(eight.map(round), basis), area);
    }
    for (const one of [angles, diameters, areas]) {
      expect(one.result().share).toBeGreaterThanOrEqual(0.92);
      expect(one.result().share).toBeLessThanOrEqual(0.99);
    }
  });
});

/** The photo, and two graduations of its rule. */
type RulePhoto = readonly [photo: string, first: string, last: string];

describe('by two clicks on the rule', () => {
  /** On which two graduations are seen, and the rule leans by no more than can be entered. */
  const photos = [
    ['BRN_2041', 'rule-30-mm', 'rule-90-mm'],
    ['BRN_2052', 'rule-30-mm', 'rule-110-mm'],
    ['BRN_2074', 'rule-30-mm', 'rule-70-mm'],
    ['BRN_2091', 'rule-20-mm', 'rule-120-mm'],
    ['BRN_2103', 'rule-30-mm', 'rule-120-mm'],
    ['BRN_2104', 'rule-30-mm', 'rule-120-mm'],
  ] as const satisfies readonly RulePhoto[];

  /** Lengths on the bench at the rule's height, within its reach in the picture; or along the rule alone. */
  function lengthsOn([photo, first, last]: RulePhoto, where: 'along' | 'around', knowsCamera: boolean) {
    const target = truthOf(photo);
    const work = trials(Number(photo.slice(4)));
    const [from, to] = [target.placeOf(first), target.placeOf(last)];
    const camera = cameraOver(target, ruleHeight);
    const scaleMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const somewhere = (): Place => {
      const along = work.chance();
      const aside = where === 'along' ? 0 : work.chance() - 0.5;
      const at = (axis: 0 | 1) => from[axis] + along * (to[axis] - from[axis]);
      return [at(0) - aside * (to[1] - from[1]), at(1) + aside * (to[0] - from[0]), ruleHeight];
    };
    const isInPicture = ({ x, y }: ImagePoint) =>
      x >= 0 && y >= 0 && x <= target.picture.width && y <= target.picture.height;
    const lengths = tally();
    while (lengths.count() < 200) {
      const [one, other] = [somewhere(), somewhere()];
      const truth = Math.hypot(one[0] - other[0], one[1] - other[1]);
      const [start, end] = [target.seen(one), target.seen(other)];
      if (truth < 5 || !isInPicture(start) || !isInPicture(end)) continue;
      const scale: LengthScale = {
        kind: 'length',
        ends: [work.clicked(target.pixelOf(first)), work.clicked(target.pixelOf(last))],
        length: work.read(scaleMm, 0.1),
        greatestTilt: Math.min(45, Math.ceil(camera.tilt)),
        clickUncertainty,
        offsetMm: 0,
        camera: knowsCamera ? camera : null,
      };
      const basis = { clickUncertainty, scale };
      lengths.add(lengthBetween(work.clicked(start), work.clicked(end), basis), truth);
    }
    return lengths.result();
  }

  test.each(photos)('a length along it holds on %s', (...photo) => {
    expect(lengthsOn(photo, 'along', false).share).toBeGreaterThanOrEqual(0.93);
  });

  test.each(photos)('a length anywhere beside it holds on %s, where the camera is known', (...photo) => {
    const { share, median } = lengthsOn(photo, 'around', true);
    expect(share).toBeGreaterThanOrEqual(0.93);
    // At 30 degrees and more two clicks are worth little, and say so.
    expect(median).toBeGreaterThan(0.1);
  });
});

/** A plane that leans by 10 degrees, as is entered where nothing else is known, 300 mm from a camera of 3600 pixels. */
describe('by two clicks at 10 degrees', () => {
  const [tilt, distanceMm, focalLength] = [Math.PI / 18, 300, 3600];
  const middle = imagePoint(1200, 900);
  const seen = (up: number, across: number) => {
    const depth = distanceMm / Math.cos(tilt) + up * Math.sin(tilt);
    const [x, y] = [(focalLength * across) / depth, (focalLength * up * Math.cos(tilt)) / depth];
    return imagePoint(middle.x + x, middle.y - y);
  };

  function share(knowsCamera: boolean): number {
    const work = trials(10);
    const lengths = tally();
    while (lengths.count() < 400) {
      const [up, across] = [90 * (work.chance() - 0.2), 90 * (work.chance() - 0.5)];
      const turn = 2 * Math.PI * work.chance();
      const scale: LengthScale = {
        kind: 'length',
        ends: [work.clicked(seen(-30, -40)), work.clicked(seen(-30, 40))],
        length: work.read(80, 0.1),
        greatestTilt: 10,
        clickUncertainty,
        offsetMm: 0,
        camera: knowsCamera ? { distanceMm, middle } : null,
      };
      const [from, to] = [seen(up, across), seen(up + 30 * Math.sin(turn), across + 30 * Math.cos(turn))];
      lengths.add(lengthBetween(work.clicked(from), work.clicked(to), { clickUncertainty, scale }), 30);
    }
    return lengths.result().share;
  }

  test('a length holds where the camera is known', () => {
    expect(share(true)).toBeGreaterThanOrEqual(0.93);
  });

  // What lies further up the slope is seen smaller, which is then not counted, and said not to be (measured.ts).
  test('it does not hold so often where the camera is not known', () => {
    expect(share(false)).toBeLessThan(0.8);
  });
});
