/** What the spine says of each station: empty, begun or done. */
import { describe, expect, test } from 'vitest';

import type { FindingId } from '#shared-types/ids.ts';

import { stationSigns, type CaseContents } from '../../../renderer/app/station-state.ts';
import { openedCase } from '../../support/case-fields.ts';
import { testId } from '../../support/open-test-library.ts';

const finding = testId<FindingId>(7);
const nothing: CaseContents = {
  photos: [],
  marks: [],
  findings: [],
  chain: { nodes: [], links: [] },
  toSettle: false,
};
const counts = { photos: 1, marks: 1, findings: 1, journalEntries: 1 };
const signs = (contents: Partial<CaseContents>) =>
  stationSigns({ ...openedCase(), counts }, { ...nothing, ...contents });
const primary = { id: finding, presence: 'present', class: 'primary' } as const;
const undecided = { ...primary, class: 'undecided' } as const;

describe('findings', () => {
  test('are done when every one that is there has its class', () => {
    expect(signs({ findings: [undecided] }).findings).toEqual({ state: 'begun', count: 1 });
    expect(signs({ findings: [primary] }).findings).toEqual({ state: 'done', count: 1 });
  });

  test('that are not there do not hold the station open', () => {
    const absent = { ...undecided, presence: 'looked-for-absent' } as const;
    expect(signs({ findings: [primary, absent] }).findings.state).toBe('done');
  });

  test('are not done while something is to settle among them', () => {
    expect(signs({ findings: [primary], toSettle: true }).findings.state).toBe('begun');
  });
});

test('photos are done when each shows a part', () => {
  const part = { component: 'rotor', position: null };
  expect(signs({ photos: [{ parts: [part] }, { parts: [] }] }).photos.state).toBe('begun');
  expect(signs({ photos: [{ parts: [part] }] }).photos.state).toBe('done');
});

test('marks are done when each that points at damage is given to a finding', () => {
  const given = { findingId: finding, geometry: { kind: 'arrow' } } as const;
  const note = { findingId: null, geometry: { kind: 'text' } } as const;
  expect(signs({ marks: [given, { ...given, findingId: null }] }).marks.state).toBe('begun');
  expect(signs({ marks: [given, note] }).marks.state).toBe('done');
});

test('the chain is done when every link has its reason and no primary or secondary finding is left out', () => {
  const node = { findingId: finding };
  const chain = { nodes: [node], links: [{ reason: 'The oil was off before the wheel touched.' }] };
  expect(signs({ findings: [primary], chain }).chain).toEqual({ state: 'done', count: 1 });
  expect(signs({ findings: [primary], chain: { ...chain, links: [{ reason: '' }] } }).chain.state).toBe(
    'begun',
  );
  const other = { ...primary, id: testId<FindingId>(8), class: 'secondary' } as const;
  expect(signs({ findings: [primary, other], chain }).chain.state).toBe('begun');
});

test('the claim is done with its words, a model, a serial number and the declaration of interest', () => {
  const told = openedCase();
  const whole = {
    ...told,
    unit: { ...told.unit, serial: '30771' },
    interest: { standing: 'none', words: '' },
  } as const;
  expect(stationSigns(whole, null).claim.state).toBe('done');
  expect(stationSigns({ ...whole, claim: ' ' }, null).claim.state).toBe('begun');
  expect(stationSigns({ ...whole, interest: told.interest }, null).claim.state).toBe('begun');
});

test('before a case is read its counts alone are known', () => {
  expect(stationSigns({ ...openedCase(), counts }, null).photos).toEqual({ state: 'begun', count: 1 });
});
