import { describe, expect, test } from 'vitest';

import {
  readMark,
  type FindingEvidence,
  type MeasurementEvidence,
} from '#analysis/knowledge/mark-predicate.ts';
import type { MarkState } from '#analysis/knowledge/mark-state.ts';
import { AppError } from '#shared-types/errors.ts';
import type { MarkPredicate } from '#shared-types/knowledge-pack.ts';

import { finding, findingId, measurement } from './case-evidence.ts';
import { loadWindlass } from './small-pack.ts';

const pack = loadWindlass();

type FindingPattern = Extract<MarkPredicate, { test: 'finding' }>;
type MeasurementPattern = Extract<MarkPredicate, { test: 'measurement' }>;

const pattern = (said: Partial<FindingPattern>): FindingPattern => ({
  test: 'finding',
  component: 'drum',
  position: null,
  zones: [],
  kinds: ['rub'],
  leastShare: null,
  ...said,
});
const rimRub = pattern({ zones: ['rim'] });
const bothBoresScored: MarkPredicate = {
  test: 'all',
  of: ['left', 'right'].map((position) =>
    pattern({ component: 'plain-bearing', position, zones: ['bore'], kinds: ['scoring'] }),
  ),
};

const drum = (number: number, said: Partial<FindingEvidence>) =>
  finding(number, { component: 'drum', kind: 'rub', zone: 'rim', ...said });
const bore = (number: number, said: Partial<FindingEvidence>) =>
  finding(number, { component: 'plain-bearing', kind: 'scoring', zone: 'bore', ...said });

const absent = { presence: 'looked-for-absent' } as const;
const notExamined = { presence: 'not-examined' } as const;

function read(
  predicate: MarkPredicate,
  findings: readonly FindingEvidence[],
  measurements: readonly MeasurementEvidence[] = [],
) {
  return readMark(pack, predicate, { findings, measurements });
}

describe('a mark of one kind at one zone', () => {
  const cases: readonly [string, readonly FindingEvidence[], MarkState][] = [
    ['nothing recorded', [], 'unknown'],
    ['found', [drum(1, {})], 'present'],
    ['looked for and not there', [drum(1, absent)], 'looked-for-absent'],
    ['not examined', [drum(1, notExamined)], 'not-examined'],
    ['found twice', [drum(1, {}), drum(2, {})], 'present'],
    ['found, and looked for and not there', [drum(1, {}), drum(2, absent)], 'conflict'],
    ['first not examined, then found', [drum(1, notExamined), drum(2, {})], 'present'],
    ['first not examined, then not there', [drum(1, notExamined), drum(2, absent)], 'looked-for-absent'],
    ['another zone', [drum(1, { zone: 'teeth' })], 'unknown'],
    ['another kind', [drum(1, { kind: 'scoring', ...absent })], 'unknown'],
    ['another part', [bore(1, { kind: 'rub' })], 'unknown'],
    [
      'unrelated terms left from another pack',
      [drum(1, { zone: 'spoke' }), drum(2, { kind: 'melted' })],
      'unknown',
    ],
  ];
  test.each(cases)('%s', (_name, findings, state) => {
    expect(read(rimRub, findings).state).toBe(state);
  });
});

describe('wider and narrower kinds', () => {
  test('a case found is the wider kind found', () => {
    expect(read(rimRub, [drum(1, { kind: 'rub-all-round' })]).state).toBe('present');
  });

  test('the wider kind denied denies its cases', () => {
    const allRound = pattern({ zones: ['rim'], kinds: ['rub-all-round'] });
    expect(read(allRound, [drum(1, absent)]).state).toBe('looked-for-absent');
    expect(read(allRound, [drum(1, absent), drum(2, { kind: 'rub-all-round' })]).state).toBe('conflict');
  });

  test('the wider kind found leaves its cases open, and a case denied leaves the wider kind open', () => {
    const allRound = pattern({ zones: ['rim'], kinds: ['rub-all-round'] });
    expect(read(allRound, [drum(1, {})]).state).toBe('unknown');
    expect(read(rimRub, [drum(1, { kind: 'rub-all-round', ...absent })]).state).toBe('unknown');
  });

  test('a rub that is not all round is a rub still: no conflict', () => {
    const findings = [drum(1, {}), drum(2, { kind: 'rub-all-round', ...absent })];
    expect(read(rimRub, findings)).toMatchObject({ state: 'present', disputed: [] });
  });
});

describe('a mark of several kinds or zones', () => {
  const either = pattern({ zones: ['rim', 'teeth'], kinds: ['rub'] });
  const twoKinds = pattern({ zones: ['rim'], kinds: ['rub', 'scoring'] });

  test('one found is enough, whatever was denied elsewhere', () => {
    expect(read(either, [drum(1, absent), drum(2, { zone: 'teeth' })])).toMatchObject({
      state: 'present',
      disputed: [],
    });
    expect(read(twoKinds, [drum(1, absent), drum(2, { kind: 'scoring' })]).state).toBe('present');
  });

  test('it is absent only when each was looked for', () => {
    expect(read(either, [drum(1, absent)]).state).toBe('unknown');
    expect(read(either, [drum(1, absent), drum(2, { zone: 'teeth', ...absent })]).state).toBe(
      'looked-for-absent',
    );
    expect(read(twoKinds, [drum(1, absent)]).state).toBe('unknown');
    expect(read(twoKinds, [drum(1, absent), drum(2, { kind: 'scoring', ...absent })]).state).toBe(
      'looked-for-absent',
    );
  });

  test('what is left may be not examined', () => {
    expect(read(either, [drum(1, absent), drum(2, { zone: 'teeth', ...notExamined })]).state).toBe(
      'not-examined',
    );
  });

  test('what is left to look at is listed', () => {
    expect(read(either, [drum(1, absent)]).open).toEqual([
      { test: 'finding', component: 'drum', position: null, zone: 'teeth', kind: 'rub' },
    ]);
    expect(read(either, [drum(1, { zone: null, ...absent })]).open).toEqual([]);
  });
});

describe('a finding about the part as a whole', () => {
  test('denied is denied at every zone', () => {
    expect(read(rimRub, [drum(1, { zone: null, ...absent })]).state).toBe('looked-for-absent');
    expect(read(pattern({}), [drum(1, { zone: null, ...absent })]).state).toBe('looked-for-absent');
  });

  test('found is found somewhere: enough for a mark of any zone, not for one of a certain zone', () => {
    expect(read(pattern({}), [drum(1, { zone: null })]).state).toBe('present');
    expect(read(rimRub, [drum(1, { zone: null })]).state).toBe('unknown');
  });

  test('found somewhere, and denied everywhere else, is found here', () => {
    const findings = [drum(1, { zone: null }), drum(2, { zone: 'teeth', ...absent })];
    expect(read(rimRub, findings).state).toBe('present');
  });

  test('found at a zone contradicts denied for the whole', () => {
    const reading = read(rimRub, [drum(1, { zone: null, ...absent }), drum(2, {})]);
    expect(reading.state).toBe('conflict');
    expect(reading.disputed.map((source) => source.id)).toEqual([findingId(1), findingId(2)]);
  });

  test('found somewhere contradicts denied zone by zone', () => {
    const findings = [
      drum(1, { zone: null }),
      drum(2, absent),
      drum(3, { zone: 'teeth', ...absent }),
      drum(4, { kind: 'scoring', ...absent }),
    ];
    const reading = read(rimRub, findings);
    expect(reading.state).toBe('conflict');
    expect(reading.disputed.map((source) => source.id)).toEqual([1, 2, 3].map(findingId));
  });

  test('a kind of the part as a whole', () => {
    const gone = pattern({ kinds: ['not-present'] });
    expect(read(gone, []).state).toBe('unknown');
    expect(read(gone, []).open.map((place) => place.test === 'finding' && place.zone)).toEqual([
      'rim',
      'teeth',
      null,
    ]);
    expect(read(gone, [drum(1, { zone: null, kind: 'not-present' })]).state).toBe('present');
    expect(read(gone, [drum(1, { zone: null, kind: 'not-present', ...absent })]).state).toBe(
      'looked-for-absent',
    );
  });
});

describe('positions', () => {
  const anyBore = pattern({ component: 'plain-bearing', zones: ['bore'], kinds: ['scoring'] });
  const leftBore = { ...anyBore, position: 'left' };

  test('a mark without a position is of either; with one, of that one', () => {
    expect(read(anyBore, [bore(1, { position: 'right' })]).state).toBe('present');
    expect(read(leftBore, [bore(1, { position: 'right' })]).state).toBe('unknown');
    expect(read(anyBore, [bore(1, { position: 'right', ...absent })]).state).toBe('unknown');
    expect(read(leftBore, [bore(1, { ...absent })]).state).toBe('looked-for-absent');
  });

  test('found at one, denied at the other, is no conflict', () => {
    const findings = [bore(1, { position: 'left' }), bore(2, { position: 'right', ...absent })];
    expect(read(anyBore, findings)).toMatchObject({ state: 'present', disputed: [] });
    expect(read(bothBoresScored, findings).state).toBe('looked-for-absent');
  });

  test('both ends are an all of two', () => {
    expect(read(bothBoresScored, [bore(1, { position: 'left' })]).state).toBe('unknown');
    expect(read(bothBoresScored, [bore(1, { position: 'left' }), bore(2, { position: 'right' })]).state).toBe(
      'present',
    );
    expect(
      read(bothBoresScored, [bore(1, { position: 'left' }), bore(2, { position: 'right', ...notExamined })])
        .state,
    ).toBe('not-examined');
  });
});

describe('a least share of teeth', () => {
  const half = pattern({ zones: ['teeth'], kinds: ['chipped'], leastShare: 0.5 });
  const chipped = (number: number, said: Partial<FindingEvidence>) =>
    drum(number, { zone: 'teeth', kind: 'chipped', ...said });
  const on = (affected: number, of = 12) => ({ extent: { affected, of } });

  const cases: readonly [string, readonly FindingEvidence[], MarkState][] = [
    ['reached', [chipped(1, on(6))], 'present'],
    ['all of them', [chipped(1, on(12))], 'present'],
    ['fewer: there, but not to this extent', [chipped(1, on(5))], 'looked-for-absent'],
    ['not said on how many', [chipped(1, {})], 'unknown'],
    ['none', [chipped(1, absent)], 'looked-for-absent'],
    [
      'two that may be different teeth and reach it together',
      [chipped(1, on(3)), chipped(2, on(3))],
      'unknown',
    ],
    ['two that cannot reach it together', [chipped(1, on(3)), chipped(2, on(2))], 'looked-for-absent'],
    ['one that reaches it beside one that does not', [chipped(1, on(3)), chipped(2, on(7))], 'present'],
    ['one that is too few beside one not said', [chipped(1, on(1)), chipped(2, {})], 'unknown'],
    ['some, against none', [chipped(1, on(3)), chipped(2, absent)], 'conflict'],
    ['not examined', [chipped(1, notExamined)], 'not-examined'],
  ];
  test.each(cases)('%s', (_name, findings, state) => {
    expect(read(half, findings).state).toBe(state);
  });

  test('thirds that make a whole are not lost to rounding', () => {
    const third = { ...half, leastShare: 1 / 3 };
    expect(read(third, [chipped(1, on(4))]).state).toBe('present');
  });
});

describe('a measurement beside its limit', () => {
  const wornLeft: MeasurementPattern = {
    test: 'measurement',
    quantity: 'bore-diameter',
    position: 'left',
    status: 'outside',
  };
  const wornAny = { ...wornLeft, position: null };
  const of = (id: string, status: MeasurementEvidence['status'], position: string | null = 'left') =>
    measurement(id, { quantity: 'bore-diameter', status, position });

  const cases: readonly [string, MeasurementPattern, readonly MeasurementEvidence[], MarkState][] = [
    ['none', wornLeft, [], 'unknown'],
    ['the status looked for', wornLeft, [of('m', 'outside')], 'present'],
    ['the other status', wornLeft, [of('m', 'inside')], 'looked-for-absent'],
    ['not decided within its uncertainty', wornLeft, [of('m', 'not-decided')], 'unknown'],
    ['two that differ', wornLeft, [of('m', 'outside'), of('n', 'inside')], 'conflict'],
    ['one decided, one not', wornLeft, [of('m', 'not-decided'), of('n', 'inside')], 'looked-for-absent'],
    ['another position', wornLeft, [of('m', 'outside', 'right')], 'unknown'],
    ['any position: one outside', wornAny, [of('m', 'outside', 'right')], 'present'],
    ['any position: one inside says nothing of the other', wornAny, [of('m', 'inside')], 'unknown'],
    [
      'any position: both inside',
      wornAny,
      [of('m', 'inside'), of('n', 'inside', 'right')],
      'looked-for-absent',
    ],
    ['no position said: outside is outside somewhere', wornAny, [of('m', 'outside', null)], 'present'],
    ['no position said: not of the left one', wornLeft, [of('m', 'outside', null)], 'unknown'],
    ['no position said: inside rules nothing out', wornAny, [of('m', 'inside', null)], 'unknown'],
    ['inside can be what is looked for', { ...wornLeft, status: 'inside' }, [of('m', 'inside')], 'present'],
  ];
  test.each(cases)('%s', (_name, predicate, measurements, state) => {
    expect(read(predicate, [], measurements).state).toBe(state);
  });

  test('worn at one end only: outside at one end and inside at the other', () => {
    const at = (position: string, status: 'inside' | 'outside'): MarkPredicate => ({
      ...wornLeft,
      position,
      status,
    });
    const oneEnd: MarkPredicate = {
      test: 'any',
      of: [
        { test: 'all', of: [at('left', 'outside'), at('right', 'inside')] },
        { test: 'all', of: [at('right', 'outside'), at('left', 'inside')] },
      ],
    };
    expect(read(oneEnd, [], [of('m', 'outside', 'right'), of('n', 'inside', 'left')]).state).toBe('present');
    expect(read(oneEnd, [], [of('m', 'outside', 'right'), of('n', 'outside', 'left')]).state).toBe(
      'looked-for-absent',
    );
    expect(read(oneEnd, [], [of('m', 'outside', 'right')]).state).toBe('unknown');
  });
});

describe('the evidence behind a state', () => {
  const either: MarkPredicate = {
    test: 'any',
    of: [rimRub, { test: 'measurement', quantity: 'bore-diameter', position: null, status: 'outside' }],
  };

  test('names each finding and measurement that touches the mark, once', () => {
    const twice: MarkPredicate = { test: 'all', of: [rimRub, either] };
    const reading = read(
      twice,
      [drum(1, {}), drum(2, { zone: 'teeth' })],
      [measurement('m', { quantity: 'bore-diameter', status: 'inside', position: 'left' })],
    );
    expect(reading.heard).toEqual([
      { from: 'finding', id: findingId(1) },
      { from: 'measurement', id: 'm' },
    ]);
  });

  test('a conflict is shown although something else makes the mark present', () => {
    const reading = read(
      either,
      [drum(1, {}), drum(2, absent)],
      [measurement('m', { quantity: 'bore-diameter', status: 'outside', position: 'left' })],
    );
    expect(reading.state).toBe('present');
    expect(reading.disputed).toEqual([
      { from: 'finding', id: findingId(1) },
      { from: 'finding', id: findingId(2) },
    ]);
  });

  test('a predicate with terms the pack does not have is refused', () => {
    expect(() => read(pattern({ component: 'crank' }), [])).toThrow(AppError);
  });
});
