/** What is still open before a report is signed. */
import { describe, expect, test } from 'vitest';

import { openPoints, type WhatIsIn } from '#analysis/report/open-points.ts';
import type { CaseFields } from '#shared-types/case.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { WallTime } from '#shared-types/times.ts';
import { openPointTexts as texts } from '#shared-types/texts/open-points.ts';

import { openedCase } from '../../support/case-fields.ts';
import { turbocharger as pack } from '../knowledge/turbocharger-file.ts';
import { findingFields, findingId } from '../marks/bench-gestures.ts';

const filled: CaseFields = {
  ...openedCase(),
  unit: { ...openedCase().unit, serial: '30771' },
  interest: { standing: 'none', words: '' },
  outcome: 'claim-not-supported',
  conclusion: 'The oil feed was closed before the nut came loose.',
};

/** Like a case of which nothing is open, but for what a test says. */
const content = (more: Partial<WhatIsIn> = {}): WhatIsIn => ({
  teardownCase: filled,
  custody: [],
  photos: [{ parts: [{ component: 'compressor-wheel', position: null }], declaredSynthetic: null }],
  marks: [arrowOf(findingId(1))],
  findings: [finding(1)],
  chain: { nodes: [], links: [] },
  pack,
  ...more,
});

const wheelDent = {
  component: 'compressor-wheel',
  zone: 'leading-edges',
  kind: 'dent',
  class: 'secondary',
} as const;

const arrowOf = (id: FindingId | null) => ({ findingId: id, geometry: { kind: 'arrow' } }) as const;

function finding(number: number, more: Partial<WhatIsIn['findings'][number]> = {}) {
  return { ...findingFields(wheelDent), ...more, id: findingId(number), number };
}

const sentences = (more: Partial<WhatIsIn>) => openPoints(content(more)).map(({ sentence }) => sentence);
const ofClaim = (more: Partial<CaseFields>) => sentences({ teardownCase: { ...filled, ...more } });

describe('a point is open', () => {
  test('where no chain is drawn, and it is the only one of this case', () => {
    expect(openPoints(content())).toEqual([{ at: 'chain', sentence: texts.noChain, findingId: null }]);
  });

  test('where the claim, its unit, the interest or the answer is not entered', () => {
    expect(ofClaim({ claim: ' ' })).toContain(texts.claim.noClaim);
    expect(ofClaim({ unit: { ...filled.unit, model: '' } })).toContain(texts.claim.noModel);
    expect(ofClaim({ unit: { ...filled.unit, serial: '' } })).toContain(texts.claim.noSerial);
    expect(ofClaim({ interest: { standing: 'not-stated', words: '' } })).toContain(texts.claim.noInterest);
    expect(ofClaim({ outcome: 'not-answered' })).toContain(texts.claim.notAnswered);
    expect(ofClaim({ conclusion: '' })).toContain(texts.claim.noConclusion);
  });

  test('where the dates stand in the wrong order, or the time told does not fit them', () => {
    const day = (date: string): WallTime => ({
      local: `${date}T00:00:00`,
      offsetMinutes: null,
      precision: 'day',
    });
    const service = (fitted: string, failed: string) => ({
      ...filled.service,
      fittedOn: day(fitted),
      failedOn: day(failed),
    });
    expect(ofClaim({ service: service('2026-02-01', '2026-01-01') })).toContain(texts.claim.backwards);
    const told = { value: 3, unit: 'years' } as const;
    const brief = { ...service('2026-01-01', '2026-02-01'), timeInService: told };
    expect(ofClaim({ service: brief })).toContain(texts.claim.otherTime);
    expect(ofClaim({ service: service('2026-01-01', '2026-02-01') })).toEqual([texts.noChain]);
  });

  test('where photos show no part and marks no finding, counted', () => {
    const bare = { parts: [], declaredSynthetic: null };
    expect(sentences({ photos: [bare, bare] })).toContain(texts.photosWithoutPart(2));
    const made = { ...bare, declaredSynthetic: 'algorithmicMedia' };
    expect(sentences({ photos: [bare, made] })).toContain(texts.photosSynthetic(1));
    expect(sentences({ photos: [bare] })).not.toContain(texts.photosSynthetic(1));
    const note = { findingId: null, geometry: { kind: 'text' } } as const;
    expect(sentences({ marks: [...content().marks, arrowOf(null), note] })).toContain(
      texts.marksWithoutFinding(1),
    );
  });

  test('where findings are undecided or shown by no mark, by their numbers; a single one is led to', () => {
    const findings = [finding(3, { class: 'undecided' }), finding(2, { class: 'undecided' }), finding(1)];
    const marks = findings.map(({ id }) => arrowOf(id));
    expect(sentences({ findings, marks })).toContain(texts.findings.undecided([2, 3]));
    const only = openPoints(
      content({ findings: [finding(1), finding(4, { component: 'turbine-wheel', zone: null })] }),
    );
    expect(only).toContainEqual({
      at: 'findings',
      sentence: texts.findings.withoutMark([4]),
      findingId: findingId(4),
    });
  });

  test('not of what is not there, nor of a mark on a part that was missing', () => {
    const absent = finding(2, { class: 'undecided', presence: 'looked-for-absent', kind: 'coked-deposit' });
    const gone = finding(3, { kind: 'not-present', component: 'shaft-nut', zone: null });
    expect(sentences({ findings: [finding(1), absent, gone] })).toEqual([texts.noChain]);
  });

  test('where findings say the same twice', () => {
    const findings = [finding(1), finding(2)];
    const marks = findings.map(({ id }) => arrowOf(id));
    expect(sentences({ findings, marks })).toContain(texts.findings.toSettle(1));
  });

  test('in the chain by what its flags say', () => {
    const node = { id: 'n1' as never, kind: 'event', words: 'The shaft stopped.', place: null, revision: 1 };
    const chain = { nodes: [node as never], links: [] };
    const told = openPoints(content({ chain })).filter(({ at }) => at === 'chain');
    expect(told.length).toBeGreaterThan(0);
    expect(told.map(({ sentence }) => sentence)).not.toContain(texts.noChain);
  });

  test('of an empty case first what the claim lacks, in the order of the work', () => {
    const empty = openPoints(content({ teardownCase: openedCase(), findings: [], marks: [], photos: [] }));
    const order = ['claim', 'photos', 'marks', 'findings', 'chain'];
    const places = empty.map(({ at }) => order.indexOf(at));
    expect(places).toEqual([...places].sort((one, other) => one - other));
    expect(empty.at(-1)?.sentence).toBe(texts.findings.none);
  });
});
