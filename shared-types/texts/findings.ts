/** Words of the findings screen and of the forms in which findings are written. */
import type { DamageClass, Finding, Presence } from '../finding.ts';
import { reportTexts } from './report.ts';

const presenceChoices = {
  present: 'Present',
  'looked-for-absent': 'Looked for, not there',
  'not-examined': 'Could not be examined',
} as const satisfies Record<Presence, string>;

const severityChoices = {
  slight: 'Slight',
  moderate: 'Moderate',
  severe: 'Severe',
} as const satisfies Record<NonNullable<Finding['severity']>, string>;

/** Keys that choose a class while its row of choices has the keyboard. */
const classKeys = {
  primary: 'P',
  secondary: 'S',
  unrelated: 'U',
  undecided: '?',
} as const satisfies Record<DamageClass, string>;

export const findingsTexts = {
  heading: 'Findings',
  severities: reportTexts.severities,
  severityChoices,
  presenceChoices,
  classKeys,
  count: (n: number) => (n === 1 ? '1 finding' : `${n} findings`),
  caption: 'Findings of this case',
  columns: {
    number: 'No.',
    class: 'Class',
    place: 'Part, zone',
    kind: 'Damage',
    presence: 'Presence',
    extent: 'Extent',
    note: 'Note',
    marks: 'Marks',
  },
  rowName: (number: number, title: string) => `Finding ${number}, ${title}`,
  title: (number: number) => `Finding ${number}`,
  heldAs: (number: number, kind: string, place: string) => `${number} ${kind} · ${place}`,
  toMark: (label: string) => `Show mark ${label} on its photo`,
  noMarks: 'no mark',

  add: 'Add a finding…',
  addTitle: 'A finding without a mark',
  addWords:
    'What was looked for and is not there, or could not be examined, often decides. Damage that is there is better entered with a mark on its photo.',
  emptyTitle: 'No findings yet',
  emptyWords:
    'A finding says what is wrong with a part, and whether it began the failure or followed from it. Draw an arrow on a photo and say what it shows, or enter here what you looked for and did not find.',
  toMarks: 'Go to the marks',
  nothingChosen: 'No finding chosen',
  nothingChosenWords: 'Choose one in the table to change it.',

  part: 'Part',
  choosePart: 'choose a part',
  zone: 'Zone',
  noZone: 'the part as a whole',
  kind: 'Kind of damage',
  chooseKind: 'choose what it is',
  class: 'Class',
  classHint: 'Letters choose too.',
  presence: 'Presence',
  severity: 'Severity',
  noSeverity: 'not graded',
  extentOf: (counted: string) =>
    counted === '' ? 'Extent, how many of how many' : `How many of how many ${counted}`,
  affected: 'affected',
  of: 'of',
  outOf: 'there are',
  note: 'Note',
  noteHint: 'Printed in the report as it stands here.',
  needsPart: 'Choose the part.',
  needsKind: 'Choose the kind of damage.',
  extentWrong: 'Two whole numbers, the first no larger than the second; or leave both empty.',
  save: 'Save',
  saveNew: 'Add',

  classNow: 'Class',
  changeClass: 'Change…',
  classify: {
    title: (number: number) => `Class of finding ${number}`,
    words:
      'A class is never changed silently: the reason is kept with the finding, with your name and the time.',
    reason: 'Reason for the change',
    needsReason: 'Say why: someone will ask.',
    same: 'It has this class already. Choose another, or close.',
    save: 'Change the class',
  },

  remove: 'Delete finding…',
  removing: {
    title: (number: number) => `Delete finding ${number}?`,
    words: (marks: number) =>
      marks === 0
        ? 'Its number is not given to another finding.'
        : marks === 1
          ? 'Its mark goes with it. Its number is not given to another finding.'
          : `Its ${marks} marks go with it. Its number is not given to another finding.`,
    undo: 'It can be taken back with undo as long as this window is open.',
    confirm: 'Delete',
  },
  removed: 'Finding deleted.',
  undo: 'Undo',
  redo: 'Redo',
} as const;
