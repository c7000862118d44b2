/** Where custody does not join up: our own rule, that whoever hands an item on is the one who had it last. */
import { describe, expect, test } from 'vitest';

import { custodyGaps } from '#analysis/custody/custody-gaps.ts';
import { readTime } from '#analysis/text/typed-time.ts';
import type { CustodyEntry, CustodyEvent } from '#shared-types/custody.ts';
import type { CustodyEntryId } from '#shared-types/ids.ts';
import type { Instant } from '#shared-types/times.ts';

type Told = readonly [event: CustodyEvent, at: string, from: string, to?: string];

/** Entered a minute after one another, each told of its own time. */
function entriesOf(told: readonly Told[], item = 'the unit'): CustodyEntry[] {
  return told.map(([event, at, from, to = ''], index) => {
    const time = readTime(at);
    if (time.kind !== 'understood') throw new Error(at);
    return {
      id: `entry-${item}-${String(index)}` as CustodyEntryId,
      revision: 1,
      item,
      event,
      from,
      to,
      at: time.value,
      why: '',
      enteredAt: `2026-04-01T09:${String(index).padStart(2, '0')}:00.000Z` as Instant,
      enteredBy: 'M. Sundgren',
      struck: null,
    };
  });
}

const gapsIn = (entries: readonly CustodyEntry[]) =>
  custodyGaps(entries).map((gap) => [gap.kind, gap.entry.event, gap.entry.from]);

const joined: readonly Told[] = [
  ['received', '2026-03-04', 'the carrier', 'A. Berg'],
  ['opened', '2026-03-05', 'A. Berg'],
  ['moved', '2026-03-06', 'A. Berg', 'the laboratory'],
  ['sectioned', '2026-03-07', 'the laboratory'],
  ['released', '2026-03-08', 'the laboratory', 'the customer'],
];

test('custody that joins up has no gap, in whatever order it was entered', () => {
  expect(gapsIn(entriesOf(joined))).toEqual([]);
  expect(gapsIn(entriesOf([...joined].reverse()))).toEqual([]);
  expect(gapsIn(entriesOf(joined).reverse())).toEqual([]);
});

test('received by one, released by another: the gap names both entries', () => {
  const entries = entriesOf([
    ['received', '2026-03-04', 'the carrier', 'A. Berg'],
    ['released', '2026-03-08', 'C. Lund', 'the customer'],
  ]);
  expect(custodyGaps(entries)).toEqual([{ kind: 'other-hands', entry: entries[1], before: entries[0] }]);
});

test('names are the same whatever their capitals and blanks, items too', () => {
  const entries = entriesOf([
    ['received', '2026-03-04', 'the carrier', ' a.  BERG '],
    ['released', '2026-03-08', 'A. Berg', 'the customer'],
  ]);
  expect(gapsIn(entries)).toEqual([]);
  const [first, second] = entries as [CustodyEntry, CustodyEntry];
  expect(gapsIn([first, { ...second, item: 'The  UNIT', from: 'C. Lund' }])).toHaveLength(1);
});

test('each item has a custody of its own', () => {
  const unit = entriesOf([['received', '2026-03-04', 'the carrier', 'A. Berg']]);
  const sample = entriesOf([['received', '2026-03-05', 'C. Lund', 'D. Moe']], 'oil sample 2');
  expect(gapsIn([...unit, ...sample])).toEqual([]);
});

describe('opened, cleaned or sectioned before anybody received it', () => {
  test.each(['opened', 'cleaned', 'sectioned'] as const)('%s', (event) => {
    const received: Told = ['received', '2026-03-05', 'the carrier', 'A. Berg'];
    expect(gapsIn(entriesOf([[event, '2026-03-04', 'A. Berg'], received]))).toEqual([
      ['not-yet-received', event, 'A. Berg'],
    ]);
    expect(gapsIn(entriesOf([[event, '2026-03-05', 'A. Berg'], received]))).toEqual([]);
    expect(gapsIn(entriesOf([[event, '2026-03-04', 'A. Berg']]))).toHaveLength(1);
  });

  test('is not said of what was told too coarsely to know, nor of another deed', () => {
    const received: Told = ['received', '2026-03-05 14:30', 'the carrier', 'A. Berg'];
    expect(gapsIn(entriesOf([['opened', 'March 2026', 'A. Berg'], received]))).toEqual([]);
    expect(gapsIn(entriesOf([['opened', '2026-03-05 14:29', 'A. Berg'], received]))).toHaveLength(1);
    expect(gapsIn(entriesOf([['other', '2026-03-04', 'A. Berg'], received]))).toEqual([]);
  });
});

test('handovers of one day, told by the day, keep the order in which they were entered', () => {
  const inOrder: readonly Told[] = [
    ['received', '2026-03-04', 'the carrier', 'A. Berg'],
    ['moved', '2026-03-04', 'A. Berg', 'the laboratory'],
  ];
  expect(gapsIn(entriesOf(inOrder))).toEqual([]);
  // The database lists by time told, then by entry; the order of entry counts, not that of the list.
  expect(gapsIn(entriesOf(inOrder).reverse())).toEqual([]);
  const [received, moved] = inOrder as [Told, Told];
  expect(gapsIn(entriesOf([moved, received]))).toHaveLength(1);
});

test('a struck entry counts for nothing: neither as a gap nor as the hands that had it', () => {
  const struck = { at: '2026-04-02T09:00:00.000Z' as Instant, by: 'M. Sundgren', reason: 'wrong name' };
  const [received, released] = entriesOf([
    ['received', '2026-03-04', 'the carrier', 'A. Berg'],
    ['released', '2026-03-08', 'C. Lund', 'the customer'],
  ]) as [CustodyEntry, CustodyEntry];
  expect(gapsIn([received, { ...released, struck }])).toEqual([]);
  expect(gapsIn([{ ...received, struck }, released])).toEqual([]);
});
