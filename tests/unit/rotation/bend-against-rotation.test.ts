/** Which way blades are bent, beside the rotation. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { bendAgainstRotation } from '#analysis/rotation/bend-against-rotation.ts';
import { mirrored } from '#analysis/rotation/turning.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { turningSenses, type SeenTurning } from '#shared-types/rotation.ts';

import { turbocharger as pack } from '../knowledge/turbocharger-file.ts';

const seen = (sense: SeenTurning['sense'], seenFrom: string): SeenTurning => ({ sense, seenFrom });
const standard = seen('clockwise', 'from-inlet');
const alongTheAxis = pack.sides.filter((side) => side.axisEnd !== undefined).map((side) => side.id);

const anyTurning = fc.record({
  sense: fc.constantFrom(...turningSenses),
  seenFrom: fc.constantFrom(...alongTheAxis),
});

describe('a bend beside the rotation', () => {
  // Common practice, no source: a blade that rubs while turning bends opposite to the rotation.
  test('is against it when it goes the other way round, seen from the same end', () => {
    expect(bendAgainstRotation(pack, standard, seen('anticlockwise', 'from-inlet'))).toEqual({
      reads: 'against',
    });
    expect(bendAgainstRotation(pack, standard, seen('clockwise', 'from-inlet'))).toEqual({ reads: 'with' });
  });

  // Common practice, no source: seen from the exhaust outlet the standard unit turns anticlockwise.
  test('is turned round when it was seen from the other end', () => {
    expect(bendAgainstRotation(pack, standard, seen('clockwise', 'from-outlet'))).toEqual({
      reads: 'against',
    });
    expect(bendAgainstRotation(pack, standard, seen('anticlockwise', 'from-turbine-side'))).toEqual({
      reads: 'with',
    });
  });

  test('reads the other way for the other bend, and for the other rotation', () => {
    const other = { against: 'with', with: 'against', 'not-decided': 'not-decided' } as const;
    fc.assert(
      fc.property(anyTurning, anyTurning, (rotation, bend) => {
        const { reads } = bendAgainstRotation(pack, rotation, bend);
        expect(reads).not.toBe('not-decided');
        const turned = (turning: SeenTurning) => ({ ...turning, sense: mirrored(turning.sense) });
        expect(bendAgainstRotation(pack, rotation, turned(bend)).reads).toBe(other[reads]);
        expect(bendAgainstRotation(pack, turned(rotation), bend).reads).toBe(other[reads]);
      }),
    );
  });

  test('is not decided, and says why', () => {
    const bend = seen('clockwise', 'from-inlet');
    const because = (rotation: SeenTurning | null, of: SeenTurning, known: KnowledgePack = pack) => {
      const reading = bendAgainstRotation(known, rotation, of);
      return reading.reads === 'not-decided' ? reading.because : reading.reads;
    };
    expect(because(null, bend)).toBe('no-rotation');
    expect(because(standard, seen('clockwise', 'across-axis'))).toBe('bend-side');
    expect(because(null, seen('clockwise', 'across-axis'))).toBe('bend-side');
    expect(because(seen('clockwise', 'slanting'), bend)).toBe('rotation-side');
    const silent: KnowledgePack = { ...pack, sides: pack.sides.map(({ id, label }) => ({ id, label })) };
    expect(because(standard, bend, silent)).toBe('pack-silent');
  });
});
