/** What stands on the marks of a photo, on the sample photo of a plate seen at 45 degrees, whose truth is known. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { imagePoint } from '#analysis/marks/planes.ts';
import {
  measurementOf,
  photoReadings,
  readingWords,
  type MeasuringMark,
} from '#analysis/measure/photo-readings.ts';
import type { MarkId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import { measureTexts } from '#shared-types/texts/measure.ts';

type Truth = {
  readonly points: Readonly<Record<string, { readonly px: readonly [number, number] }>>;
  readonly lengths: readonly { readonly from: string; readonly to: string; readonly mm: number }[];
};
const truth = JSON.parse(
  readFileSync(join('sample-cases', 'ferry-auxiliary', 'truth', 'BRN_2104.json'), 'utf8'),
) as Truth;

const picture = { width: 2400, height: 1800 };
const at = (name: string) => imagePoint(...(truth.points[name]?.px ?? [Number.NaN, Number.NaN]));
const id = (name: string) => name as MarkId;
const mark = (name: string, geometry: MarkGeometry): MeasuringMark => ({ id: id(name), geometry });
const dimension = (name: string, from: string, to: string) =>
  mark(name, { kind: 'dimension', v: 1, from: at(from), to: at(to) });

const rectangle = (sides: [number, number] | null) =>
  mark('rectangle', {
    kind: 'rectangle',
    v: 1,
    corners: ['upper-left', 'upper-right', 'lower-right', 'lower-left'].map(at),
    sides: sides === null ? null : [known(sides[0]), known(sides[1])],
  });
const rule = (mm: number | null) =>
  mark('rule', {
    kind: 'scale',
    v: 1,
    from: at('rule-30-mm'),
    to: at('rule-120-mm'),
    known: mm === null ? null : known(mm),
    greatestTilt: 45,
  });
const known = (mm: number) => ({ mm, expandedMm: 0.1 });

/** The plate's diagonal, and the shim that lies half a millimetre above it. */
const lengths = [
  dimension('diagonal', 'upper-left', 'lower-right'),
  dimension('shim', 'shim-left', 'shim-right'),
];

function valueOf(readings: ReturnType<typeof photoReadings>, name: string) {
  const measured = readings.measurements.get(id(name));
  if (measured?.kind !== 'measured') throw new Error(`${name} is not measured`);
  return measured;
}

describe('lengths on a tilted photo', () => {
  it('are right by a rectangle in their plane, within what they claim', () => {
    const readings = photoReadings([rectangle([100, 60]), ...lengths], picture);
    expect(readings.scale).toMatchObject({ id: 'rectangle', words: '100 × 60\u00a0mm' });
    const diagonal = valueOf(readings, 'diagonal');
    // By Pythagoras of the sides: 116.619.
    expect(Math.abs(diagonal.value - Math.hypot(100, 60))).toBeLessThan(diagonal.expanded);
    expect(diagonal.expanded / diagonal.value).toBeLessThan(0.015);
    expect(diagonal.warnings).not.toContain('tilt-not-corrected');
    expect(readings.words.get(id('diagonal'))).toMatch(/^11[67]\.\d\d? ± 0\.\d\d?\u00a0mm$/);
  });

  it('make areas of outlines, which have none without a scale', () => {
    const plate = mark('plate', {
      kind: 'outline',
      v: 1,
      corners: ['lower-left', 'upper-left', 'upper-right', 'lower-right'].map(at),
    });
    const { scale } = photoReadings([rectangle([100, 60]), plate], picture);
    const area = measurementOf(plate.geometry, scale);
    if (area?.kind !== 'measured') throw new Error('the plate has no area');
    expect(Math.abs(area.value - 100 * 60)).toBeLessThan(area.expanded);
    expect([area.unit, readingWords(area)]).toEqual([
      'mm2',
      expect.stringMatching(/^(60|59)\d\d ± \d+\u00a0mm²$/),
    ]);
    expect(measurementOf(plate.geometry, null)).toBeNull();
  });

  it('are off by two points of known length, and say that tilt is not corrected', () => {
    const readings = photoReadings([rule(90), ...lengths], picture);
    const diagonal = valueOf(readings, 'diagonal');
    expect(Math.abs(diagonal.value - Math.hypot(100, 60))).toBeGreaterThan(2);
    expect(diagonal.warnings).toContain('tilt-not-corrected');
    expect(diagonal.parts.tilt).toBeGreaterThan(0.9);
  });

  it('are measured by the rectangle where there are both, whichever lies above', () => {
    for (const marks of [
      [rule(90), rectangle([100, 60])],
      [rectangle([100, 60]), rule(90)],
    ]) {
      expect(photoReadings([...marks, ...lengths], picture).scale?.id).toBe('rectangle');
    }
  });
});

describe('a photo whose scale is not entered', () => {
  it('is measured in pixels', () => {
    for (const marks of [[], [rule(null)], [rectangle(null)]]) {
      const readings = photoReadings([...marks, ...lengths], picture);
      expect(readings.scale).toBeNull();
      expect(readings.words.get(id('shim'))).toBe(measureTexts.pixels('385'));
    }
  });

  it('or whose corners were taken crosswise, with the reason', () => {
    const crossed = rectangle([100, 60]);
    if (crossed.geometry.kind !== 'rectangle') throw new Error('no rectangle');
    const [a, b, c, d] = crossed.geometry.corners;
    const corners = [a, c, b, d].filter((corner) => corner !== undefined);
    const readings = photoReadings(
      [{ ...crossed, geometry: { ...crossed.geometry, corners } }, ...lengths],
      picture,
    );
    expect(readings.scale).toBeNull();
    expect(readings.faults.get(id('rectangle'))).toBe('crossing-order');
  });
});
