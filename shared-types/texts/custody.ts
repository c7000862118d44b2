/** Words of the custody of a case's items. */
import type { CustodyEvent } from '../custody.ts';

const events = {
  received: 'received',
  moved: 'moved',
  released: 'released',
  opened: 'opened',
  cleaned: 'cleaned',
  sectioned: 'sectioned',
  other: 'other',
} as const satisfies Record<CustodyEvent, string>;

export const custodyTexts = {
  head: 'Custody',
  intro:
    'Who had which item when, and what was done to it. An entry is never changed: a wrong one is struck with its reason and stays readable.',
  events,
  table: 'Custody entries in the order of the times told',
  when: 'When',
  item: 'Item',
  what: 'What happened',
  strikeColumn: 'Strike',
  none: 'No entry yet. Begin with the receipt of the unit: who handed it over, who took it, in what packing.',
  handover: (event: string, from: string, to: string) => `${event}: from ${from} to ${to}`,
  deed: (event: string, who: string) => `${event} by ${who}`,
  enteredBy: (who: string, when: string) => `entered by ${who}, ${when}`,
  struck: (who: string, when: string) => `Struck by ${who}, ${when}:`,
  add: 'Make an entry',
  formHead: 'A new entry',
  itemLabel: 'Item',
  itemHint: 'Such as: unit in its crate, oil sample 2, sectioned thrust bearing.',
  itemMissing: 'Say which item it was.',
  event: 'What happened',
  eventEmpty: 'Choose what happened',
  eventMissing: 'Choose what happened.',
  fromHandover: 'Handed over by',
  fromDeed: 'Done by',
  fromMissing: 'Enter who it was.',
  to: 'Taken by',
  toMissing: 'Enter who took it: an item never hangs in the air.',
  at: 'When',
  atHint: 'A day, or a day with its hour; coarser where no more is known.',
  atMissing: 'Enter when it was, as exactly as it is known.',
  why: 'Why, and in what state',
  enter: 'Enter',
  strike: 'Strike…',
  strikeOf: (item: string, when: string) => `Strike the entry on ${item}, ${when}`,
  strikeReason: 'Why this entry is struck',
  strikeReasonHint: 'It stays readable, with this reason. Make the right entry anew.',
  strikeReasonMissing: 'Enter the reason.',
  doStrike: 'Strike the entry',
  gaps: {
    head: (count: string) => (count === '1' ? 'One gap in the custody' : `${count} gaps in the custody`),
    otherHands: (item: string, had: string, hadWhen: string, from: string, fromWhen: string) =>
      `${item}: ${had} had it last (${hadWhen}), but it was handed on by ${from} (${fromWhen}). Nothing says how it came from one to the other.`,
    notYetReceived: (item: string, event: string, who: string, when: string) =>
      `${item}: ${event} by ${who} (${when}), and nothing before that says who had received it.`,
    showAll: (count: string) => `Show all ${count}`,
  },
} as const;
