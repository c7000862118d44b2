/** What there is to look for, and what the findings make of it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { everyPart, expectationsOf, partsAtHand } from '#analysis/findings/expectations.ts';
import { kindsFor } from '#analysis/knowledge/pack-terms.ts';
import { readMark, type FindingEvidence } from '#analysis/knowledge/mark-predicate.ts';
import { presences } from '#shared-types/finding.ts';

import { finding, findingId } from '../knowledge/case-evidence.ts';
import { turbocharger } from '../knowledge/turbocharger-file.ts';
import { pegs } from './peg-pack.ts';

const left = { component: 'peg', position: 'left' };

/** "head: - rub, -- rub all round" of the left peg, each with its state. */
function list(
  findings: readonly FindingEvidence[],
  part: { component: string; position: string | null } = left,
) {
  return expectationsOf(pegs, part, findings).zones.flatMap(({ zone, kinds }) =>
    kinds.map(({ kind, depth, state }) => `${zone ?? 'whole'} ${'-'.repeat(depth)}${kind.id} ${state}`),
  );
}

describe('what can occur at a part', () => {
  test('is listed for the whole of it and zone by zone, a narrower kind under its wider one', () => {
    expect(list([])).toEqual([
      'whole lost unknown',
      'head worn unknown',
      'head rub unknown',
      'head -ring-rub unknown',
      'head --deep-ring-rub unknown',
      'foot worn unknown',
      'foot rub unknown',
    ]);
  });

  test('a narrower kind stands under the nearest wider one that can occur there', () => {
    expect(list([], { component: 'board', position: null })).toEqual([
      'face worn unknown',
      'face rub unknown',
      'face -deep-ring-rub unknown',
    ]);
  });

  test('is every kind of the pack’s own lists, each once, for every part', () => {
    for (const part of everyPart(turbocharger)) {
      const component = turbocharger.components.find((each) => each.id === part.component)!;
      const { zones } = expectationsOf(turbocharger, part, []);
      for (const zone of component.zones) {
        const listed = zones.find((each) => each.zone === zone.id)!.kinds.map(({ kind }) => kind.id);
        expect([...listed].sort()).toEqual([...zone.kinds].sort());
      }
      const whole = zones.find((each) => each.zone === null)?.kinds.map(({ kind }) => kind.id) ?? [];
      expect([...whole].sort()).toEqual([...component.kinds].sort());
      const keys = zones.flatMap(({ kinds }) => kinds.map(({ key }) => key));
      expect(new Set(keys).size).toBe(keys.length);
    }
  });
});

describe('the state of each', () => {
  const at = { component: 'peg', position: 'left', zone: 'head' } as const;

  test('“no rub” answers for the rub all round too; a rub all round is a rub', () => {
    expect(list([finding(1, { ...at, kind: 'rub', presence: 'looked-for-absent' })])).toEqual(
      expect.arrayContaining([
        'head rub looked-for-absent',
        'head -ring-rub looked-for-absent',
        'head --deep-ring-rub looked-for-absent',
        'foot rub unknown',
      ]),
    );
    expect(list([finding(1, { ...at, kind: 'ring-rub' })])).toEqual(
      expect.arrayContaining(['head rub present', 'head -ring-rub present', 'head --deep-ring-rub unknown']),
    );
  });

  test('is of its own position', () => {
    const right = finding(1, { ...at, position: 'right', kind: 'worn' });
    expect(list([right])).toContain('head worn unknown');
    expect(list([right], { component: 'peg', position: 'right' })).toContain('head worn present');
  });

  test('a finding that does not say where is no answer for one place; one that denies everywhere is', () => {
    expect(list([finding(1, { ...at, zone: null, kind: 'worn' })])).toContain('head worn unknown');
    const nowhere = finding(1, { ...at, zone: null, kind: 'worn', presence: 'looked-for-absent' });
    expect(list([nowhere])).toEqual(
      expect.arrayContaining(['head worn looked-for-absent', 'foot worn looked-for-absent']),
    );
  });

  test('names the findings of exactly that place apart from those that bear on it', () => {
    const findings = [
      finding(1, { ...at, kind: 'rub', presence: 'looked-for-absent' }),
      finding(2, { ...at, kind: 'ring-rub' }),
    ];
    const kinds = expectationsOf(pegs, left, findings).zones.flatMap((zone) => zone.kinds);
    const ring = kinds.find(({ zone, kind }) => zone === 'head' && kind.id === 'ring-rub')!;
    expect(ring).toMatchObject({ state: 'conflict', own: [findingId(2)] });
    expect(ring.heard).toEqual([findingId(1), findingId(2)]);
  });

  test('is what a mark asking for that place would be', () => {
    const anyFindings = fc.array(
      fc.record({
        position: fc.constantFrom('left', 'right', null),
        zone: fc.constantFrom('head', 'foot', null),
        kind: fc.constantFrom('rub', 'ring-rub', 'deep-ring-rub', 'worn', 'lost'),
        presence: fc.constantFrom(...presences),
      }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(anyFindings, (said) => {
        const findings = said.map((each, number) => finding(number + 1, { component: 'peg', ...each }));
        for (const { zone, kinds } of expectationsOf(pegs, left, findings).zones) {
          for (const { kind, state } of kinds) {
            const reading = readMark(
              pegs,
              {
                test: 'finding',
                component: 'peg',
                position: 'left',
                zones: zone === null ? [] : [zone],
                kinds: [kind.id],
                leastShare: null,
              },
              { findings, measurements: [] },
            );
            expect(`${kind.id} ${state}`).toBe(`${kind.id} ${reading.state}`);
          }
        }
      }),
    );
  });
});

describe('the parts at hand', () => {
  test('are those that are shown or named, in the order of assembly, each position where it was not said', () => {
    const board = { component: 'board', position: null };
    const right = { component: 'peg', position: 'right' };
    expect(partsAtHand(pegs, [board, right, right])).toEqual([right, board]);
    expect(partsAtHand(pegs, [{ component: 'peg', position: null }])).toEqual([left, right]);
    expect(partsAtHand(pegs, [{ component: 'nail', position: null }])).toEqual([]);
    expect(everyPart(pegs)).toEqual([left, right, board]);
  });
});

test('what is asked for at the part as a whole can be said of it', () => {
  for (const part of everyPart(turbocharger)) {
    const whole = expectationsOf(turbocharger, part, []).zones.find(({ zone }) => zone === null);
    const sayable = kindsFor(turbocharger, part.component, null).map(({ id }) => id);
    for (const { kind } of whole?.kinds ?? []) expect(sayable).toContain(kind.id);
  }
});
