/** Words that several screens share. Terms of the trade stand as the trade says them. */
import type { CaseStatus, Outcome } from '../case.ts';
import type { DamageClass, Presence } from '../finding.ts';

const damageClasses = {
  primary: 'primary',
  secondary: 'secondary',
  unrelated: 'unrelated',
  undecided: 'undecided',
} as const satisfies Record<DamageClass, string>;

/** What each class means, said where a class is chosen. */
const damageClassMeanings = {
  primary: 'began the failure',
  secondary: 'followed from it',
  unrelated: 'handling or old, not part of the failure',
  undecided: 'not decided yet',
} as const satisfies Record<DamageClass, string>;

const presences = {
  present: 'present',
  'looked-for-absent': 'looked for, not there',
  'not-examined': 'not examined',
} as const satisfies Record<Presence, string>;

const statuses = {
  open: 'open',
  issued: 'issued',
  superseded: 'superseded',
  withdrawn: 'withdrawn',
} as const satisfies Record<CaseStatus, string>;

const outcomes = {
  'not-answered': 'Not answered yet',
  'claim-supported': 'Claim supported',
  'claim-partly-supported': 'Claim partly supported',
  'claim-not-supported': 'Claim not supported',
  undetermined: 'Undetermined',
  'no-fault-found': 'No fault found',
  'settled-as-goodwill': 'Settled as goodwill',
} as const satisfies Record<Outcome, string>;

export const commonTexts = {
  programName: 'Teardown Docket',
  damageClasses,
  damageClassMeanings,
  presences,
  statuses,
  outcomes,
  cancel: 'Cancel',
  close: 'Close',
  save: 'Save',
  tryAgain: 'Try again',
  reload: 'Reload the window',
  dismiss: 'Dismiss',
  busy: 'Reading…',
  required: 'required',
  nothingEntered: 'not entered',
  none: '—',
  sortBy: (column: string) => `Sort by ${column}`,
  errorHeading: 'That did not work',
  messages: 'Messages',
  /** “…” round words that someone said. */
  quoted: (words: string) => `“${words}”`,
} as const;
