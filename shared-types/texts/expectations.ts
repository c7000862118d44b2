/** Words of the list of what can occur, looked through place by place. */
import type { Presence } from '../finding.ts';

/** The state of a place, as knowledge/mark-state.ts has them. */
type State = 'present' | 'looked-for-absent' | 'not-examined' | 'conflict' | 'unknown';

const states = {
  present: 'present',
  'looked-for-absent': 'looked for, not there',
  'not-examined': 'could not be examined',
  conflict: 'findings contradict each other',
  unknown: 'open',
} as const satisfies Record<State, string>;

const answers = {
  present: 'Present',
  'looked-for-absent': 'Not there',
  'not-examined': 'Not examined',
} as const satisfies Record<Presence, string>;

/** Keys that answer for the row that has the keyboard. */
const answerKeys = {
  present: 'P',
  'looked-for-absent': 'N',
  'not-examined': 'E',
} as const satisfies Record<Presence, string>;

export const expectationTexts = {
  states,
  answers,
  answerKeys,
  answerNames: {
    present: 'present',
    'looked-for-absent': 'looked for, not there',
    'not-examined': 'could not be examined',
  } as const satisfies Record<Presence, string>,
  name: 'What can occur, part by part',
  keys: {
    walk: 'walk',
    fold: 'fold',
  },
  filter: 'Only rows with these words',
  filterPlaceholder: 'part, zone or damage',
  openOnly: 'Open only',
  allParts: 'All parts',
  wholePart: 'the part as a whole',
  openOf: (open: number, of: number) => (open === 0 ? `all ${of} answered` : `${open} of ${of} open`),
  counts: (of: {
    readonly all: string;
    readonly open: string;
    readonly present: string;
    readonly absent: string;
    readonly unseen: string;
  }) =>
    `${of.open} of ${of.all} open · ${of.present} present · ${of.absent} not there · ${of.unseen} not examined`,
  rowName: (kind: string, place: string, state: string) => `${kind}, ${place}: ${state}`,
  answer: (name: string, kind: string) => `${name}: ${kind}`,
  by: (numbers: readonly number[]) =>
    numbers.length === 1 ? `finding ${numbers.join('')}` : `findings ${numbers.join(', ')}`,
  several: (numbers: readonly number[]) =>
    `Findings ${numbers.join(', ')} speak of exactly this: change them in the table.`,
  noneAtHand: 'No part is at hand yet',
  noneAtHandWords:
    'A part comes here when a photo is said to show it or a finding names it. All parts of the machine kind can be listed too.',
  noneFound: 'Nothing in the list has these words.',
  noneOpen: 'Nothing is open here.',
} as const;
