/** One sense of turning, seen from the two ends of the axis. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { knowsAxisEnds, mirrored, senseFrom } from '#analysis/rotation/turning.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { turningSenses, type SeenTurning } from '#shared-types/rotation.ts';

import { turbocharger as pack } from '../knowledge/turbocharger-file.ts';

const alongTheAxis = pack.sides.filter((side) => side.axisEnd !== undefined).map((side) => side.id);
const notAlong = pack.sides.filter((side) => side.axisEnd === undefined).map((side) => side.id);

const anyTurning = fc.record({
  sense: fc.constantFrom(...turningSenses),
  seenFrom: fc.constantFrom(...alongTheAxis),
});
const anySide = fc.constantFrom(...alongTheAxis);

describe('a sense of turning, seen from elsewhere', () => {
  // Common practice, no source: the standard unit turns clockwise seen from the air inlet, and its turbine
  // anticlockwise seen from the exhaust outlet; a reverse unit the other way round.
  test('a standard unit turns anticlockwise seen from the exhaust outlet', () => {
    const standard: SeenTurning = { sense: 'clockwise', seenFrom: 'from-inlet' };
    expect(senseFrom(pack, standard, 'from-outlet')).toBe('anticlockwise');
    expect(senseFrom(pack, standard, 'from-turbine-side')).toBe('anticlockwise');
    expect(senseFrom(pack, standard, 'from-compressor-side')).toBe('clockwise');
    const reverse: SeenTurning = { sense: 'anticlockwise', seenFrom: 'from-inlet' };
    expect(senseFrom(pack, reverse, 'from-outlet')).toBe('clockwise');
  });

  test('seen from there and back again it is what it was', () => {
    fc.assert(
      fc.property(anyTurning, anySide, (turning, side) => {
        const sense = senseFrom(pack, turning, side);
        if (sense === null) throw new Error(`${side} does not look along the axis`);
        expect(senseFrom(pack, { sense, seenFrom: side }, turning.seenFrom)).toBe(turning.sense);
      }),
    );
  });

  test('mirrored it is the other sense, mirrored twice the same', () => {
    for (const sense of turningSenses) {
      expect(mirrored(sense)).not.toBe(sense);
      expect(mirrored(mirrored(sense))).toBe(sense);
    }
  });

  test('cannot be told from or for a side that does not look along the axis, or is not known', () => {
    expect(notAlong.length).toBeGreaterThan(0);
    for (const side of [...notAlong, 'from-nowhere']) {
      expect(senseFrom(pack, { sense: 'clockwise', seenFrom: side }, 'from-inlet')).toBeNull();
      expect(senseFrom(pack, { sense: 'clockwise', seenFrom: 'from-inlet' }, side)).toBeNull();
      expect(senseFrom(pack, { sense: 'clockwise', seenFrom: side }, side)).toBeNull();
    }
  });

  test('a pack that says nothing of axis ends is known as one', () => {
    const silent: KnowledgePack = { ...pack, sides: pack.sides.map(({ id, label }) => ({ id, label })) };
    expect(knowsAxisEnds(pack)).toBe(true);
    expect(knowsAxisEnds(silent)).toBe(false);
  });
});
