/** Which blade a click lies on. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { imagePoint } from '#analysis/marks/planes.ts';
import type { RectangleScale } from '#analysis/measure/photo-scale.ts';
import { bladeOfClick, clicksPerBlade, type NumberedWheel } from '#analysis/wheel/blade-of-click.ts';
import { turningSenses } from '#shared-types/rotation.ts';

import { truthOf } from '../measure/sample-truth.ts';

const centre = imagePoint(1000, 800);

/** Eleven blades, the third pointing straight up in the picture, numbered clockwise as seen. */
const wheel: NumberedWheel = {
  centre,
  blades: 11,
  reference: { blade: 3, angle: -Math.PI / 2 },
  numbered: 'clockwise',
};

/** Pitches clockwise from straight up, at so many pixels from the centre. */
const at = (pitches: number, radius = 400) => {
  const angle = -Math.PI / 2 + (pitches * 2 * Math.PI) / 11;
  return imagePoint(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
};

describe('a click', () => {
  test('lies on the blade that is nearest by its angle, the way they are numbered', () => {
    expect(bladeOfClick(at(0), wheel, null)?.blade).toBe(3);
    expect(bladeOfClick(at(1), wheel, null)?.blade).toBe(4);
    expect(bladeOfClick(at(-1), wheel, null)?.blade).toBe(2);
    expect(bladeOfClick(at(9), wheel, null)?.blade).toBe(1);
    // Clockwise as seen, from straight up to the right, where y runs down.
    expect(bladeOfClick(imagePoint(1200, 550), wheel, null)?.blade).toBe(4);
    const turned: NumberedWheel = { ...wheel, numbered: 'anticlockwise' };
    expect(bladeOfClick(at(1), turned, null)?.blade).toBe(2);
    expect(bladeOfClick(at(-3), turned, null)?.blade).toBe(6);
  });

  test('between two blades is doubtful', () => {
    expect(bladeOfClick(at(2.2), wheel, null)).toMatchObject({ blade: 5, isDoubtful: false });
    expect(bladeOfClick(at(2.3), wheel, null)).toMatchObject({ blade: 5, isDoubtful: true });
    expect(bladeOfClick(at(2.7), wheel, null)).toMatchObject({ blade: 6, isDoubtful: true });
    expect(bladeOfClick(at(2.2), wheel, null)?.offBy).toBeCloseTo(0.2, 10);
    expect(bladeOfClick(at(2.7), wheel, null)?.offBy).toBeCloseTo(-0.3, 10);
  });

  test('on the centre lies on none', () => {
    expect(bladeOfClick(centre, wheel, null)).toBeNull();
  });

  test('lies on its blade whatever the wheel', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 30 }),
        fc.nat(29),
        fc.nat(29),
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.constantFrom(...turningSenses),
        fc.double({ min: -0.49, max: 0.49, noNaN: true }),
        (blades, first, wanted, angle, numbered, off) => {
          const reference = { blade: (first % blades) + 1, angle };
          const blade = (wanted % blades) + 1;
          const steps = (blade - reference.blade + off) * (numbered === 'clockwise' ? 1 : -1);
          const turned = angle + (steps * 2 * Math.PI) / blades;
          const click = imagePoint(centre.x + 300 * Math.cos(turned), centre.y + 300 * Math.sin(turned));
          const found = bladeOfClick(click, { centre, blades, reference, numbered }, null);
          expect(found?.blade).toBe(blade);
          expect(found?.offBy).toBeCloseTo(off, 8);
        },
      ),
    );
  });

  test('is counted on its blade', () => {
    const clicks = [at(0), at(0.1, 250), at(4), at(-2), at(8.9), centre];
    expect(clicksPerBlade(clicks, wheel, null)).toEqual([2, 0, 2, 0, 0, 0, 1, 0, 0, 0, 0]);
  });

  test('is asked of a wheel that can be', () => {
    const of = (changes: Partial<NumberedWheel>) => () => bladeOfClick(at(0), { ...wheel, ...changes }, null);
    expect(of({ blades: 0 })).toThrow(RangeError);
    expect(of({ blades: 2 })).toThrow(/blade 3 is none of 2/);
    expect(of({ blades: 10.5 })).toThrow(RangeError);
    expect(of({ reference: { blade: 0, angle: 0 } })).toThrow(RangeError);
  });
});

describe('on the sample photos', () => {
  // Their truth names the six full blades' edges; seen from the inlet the numbers rise anticlockwise.
  test.each(['BRN_2052', 'BRN_2055'])('%s, seen at a slant, every edge lies on its blade', (photo) => {
    const { pixelOf, seen, placeOf } = truthOf(photo);
    const edge = (blade: number) => pixelOf(`blade-${blade}-leading-edge`);
    const middle = seen([0, 0, placeOf('blade-1-leading-edge')[2]]);
    const first = edge(1);
    const angle = Math.atan2(first.y - middle.y, first.x - middle.x);
    const six: NumberedWheel = {
      centre: middle,
      blades: 6,
      reference: { blade: 1, angle },
      numbered: 'anticlockwise',
    };
    expect(clicksPerBlade([1, 2, 3, 4, 5, 6].map(edge), six, null)).toEqual([1, 1, 1, 1, 1, 1]);
    for (const blade of [1, 2, 3, 4, 5, 6]) {
      expect(bladeOfClick(edge(blade), six, null)?.blade).toBe(blade);
    }
  });
});

describe('with a scale rectangle round the wheel', () => {
  /** 80 mm square about the hub's axis at the edges' height, or clicked the other way round. */
  function square(photo: string, turned: boolean): RectangleScale {
    const { seen, placeOf } = truthOf(photo);
    const z = placeOf('blade-1-leading-edge')[2];
    const [a, b, c, d] = [seen([-40, 40, z]), seen([40, 40, z]), seen([40, -40, z]), seen([-40, -40, z])];
    const side = { mm: 80, expandedMm: 0.1 };
    return {
      kind: 'rectangle',
      corners: turned ? [d, c, b, a] : [a, b, c, d],
      sides: [side, side],
      clickUncertainty: 1.5,
      offsetMm: 0,
      camera: null,
    };
  }

  test.each([false, true])(
    'the tilt is taken out of the angles (clicked the other way round: %s)',
    (turned) => {
      const { pixelOf, seen, placeOf } = truthOf('BRN_2052');
      const edge = (blade: number) => pixelOf(`blade-${blade}-leading-edge`);
      const middle = seen([0, 0, placeOf('blade-1-leading-edge')[2]]);
      const angle = Math.atan2(edge(1).y - middle.y, edge(1).x - middle.x);
      const six: NumberedWheel = {
        centre: middle,
        blades: 6,
        reference: { blade: 1, angle },
        numbered: 'anticlockwise',
      };
      const offBy = (scale: RectangleScale | null) =>
        Math.max(
          ...[1, 2, 3, 4, 5, 6].map((blade) => Math.abs(bladeOfClick(edge(blade), six, scale)!.offBy)),
        );
      expect(offBy(square('BRN_2052', turned))).toBeLessThan(0.001);
      expect(offBy(null)).toBeGreaterThan(0.05);
      for (const blade of [1, 2, 3, 4, 5, 6]) {
        expect(bladeOfClick(edge(blade), six, square('BRN_2052', turned))?.blade).toBe(blade);
      }
    },
  );
});
