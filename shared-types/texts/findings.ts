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
    conflicts: 'To settle',
    class: 'Class',
    part: 'Part',
    position: 'Position',
    zone: 'Zone',
    kind: 'Damage',
    severity: 'Severity',
    extent: 'Extent',
    bend: 'Bent, seen from',
    presence: 'Presence',
    note: 'Note',
    marks: 'Marks',
  },
  views: { name: 'Show', table: 'Table', look: 'What to look for' },
  rowName: (number: number, title: string) => `Finding ${number}, ${title}`,
  title: (number: number) => `Finding ${number}`,
  heldAs: (number: number, kind: string, place: string) => `${number} ${kind} · ${place}`,
  /** Of the picture of a mark: what is to be seen on it. */
  markPicture: (label: string, damage: string, photo: string) => `Mark ${label} on photo ${photo}: ${damage}`,
  toMark: (label: string) => `Show mark ${label} on its photo`,
  moreMarks: (n: number) => (n === 1 ? 'and 1 more mark' : `and ${n} more marks`),
  moreMarksShort: (n: number) => `+${n}`,
  noMarks: 'no mark',
  /** Stands where a class would, of what is not there: read out, and its sign. */
  noClass: 'no class',
  noClassSign: '–',

  add: 'Add a finding…',
  addTitle: 'A finding without a mark',
  addWords:
    'What was looked for and is not there, or could not be examined, often decides. Damage that is there is better entered with a mark on its photo.',
  toLookFor: 'Look through what can occur',
  emptyTitle: 'No findings yet',
  emptyWords:
    'A finding says what is wrong with a part, and whether it began the failure or followed from it. Draw an arrow on a photo and say what it shows, or enter here what you looked for and did not find.',
  toMarks: 'Go to the marks',
  nothingChosen: 'No finding chosen',
  nothingChosenWords: 'Choose one in the table to change it.',
  nothingLooked: 'Choose what you looked for in the list; what is known of it can be written here.',

  part: 'Part',
  choosePart: 'choose a part',
  zone: 'Zone',
  noZone: 'the part as a whole',
  kind: 'Kind of damage',
  chooseKind: 'choose what it is',
  class: 'Class',
  classHint: 'P, S, U or ? chooses while one of the four has the keyboard.',
  classOnlyOfPresent: 'Only damage that is there has a class.',
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
  extentHalf: 'One of the two numbers is missing, so nothing is saved yet: write both, or leave both empty.',
  save: 'Save',
  saveNew: 'Add',

  classNow: 'Class',
  changeClass: 'Change…',
  history: {
    heading: 'History of its class',
    none: 'Its class was never changed.',
    change: (from: string, to: string) => `${from} → ${to}`,
    changeRead: (from: string, to: string) => `from ${from} to ${to}`,
    by: (who: string, when: string) => `${who}, ${when}`,
  },
  classify: {
    title: (number: number) => `Class of finding ${number}`,
    words:
      'A class is never changed silently: the reason is kept with the finding, with your name and the time.',
    reason: 'Reason for the change',
    needsReason: 'Say why: someone will ask.',
    same: 'It has this class already. Choose another, or close.',
    save: 'Change the class',
  },

  zoneDropped: (zone: string, part: string) =>
    `${zone}: there is no such zone at the ${part}. The zone was dropped.`,
  denying: {
    title: (number: number) => `Finding ${number} has marks`,
    words: (labels: readonly string[]) =>
      labels.length === 1
        ? `Mark ${labels.join('')} shows something that is there. Is it not there all the same?`
        : `Marks ${labels.join(', ')} show something that is there. Is it not there all the same?`,
    kept: 'The marks stay on their photos, and the finding is listed among those to settle. Give the marks to another finding, or delete them, where they belong elsewhere.',
    confirm: 'It is not there',
  },
  undoTooLate: 'Something else was done since: take it back with Undo, step by step.',

  bend: {
    legend: 'Bend of the blades',
    senses: { clockwise: 'Clockwise', anticlockwise: 'Anticlockwise' },
    senseKeys: { clockwise: 'C', anticlockwise: 'A' },
    notTold: 'Not seen',
    notToldKey: 'O',
    seenFrom: 'Seen',
    chooseSide: 'choose from where',
    ofPhoto: (side: string) => `As its first mark’s photo: ${side}`,
    ofPhotoKey: 'F',
    needsSide:
      'Say from where it was seen too: from the other end it is the other way round. Nothing is saved until then.',
    hint: 'Which way the tips are pushed.',
    reads: {
      against: 'Against the rotation. A blade bends so when it rubs its housing while the rotor turns.',
      with: 'With the rotation. Points to a strike at rest, to handling or to a foreign object: look again.',
    },
    practice: 'Common practice of the trade, without a published source.',
    turns: (sense: string, side: string) => `The rotor turns ${sense} seen ${side}.`,
    undecided: {
      'pack-silent':
        'Not decided: the machine kind’s data of this case do not say which sides look along the axis. A case opened with newer data can be checked.',
      'bend-side':
        'Not decided: no sense of turning is seen from this side, it does not look along the axis.',
      'no-rotation': 'Not decided: which way the rotor turns has not been entered.',
      'rotation-side':
        'Not decided: the rotation was entered as seen from a side that does not look along the axis.',
    },
    toRotation: 'Enter the rotation',
    toRotationAgain: 'Look at the rotation',
    kindDisagrees: (kind: string) => `But the kind of damage says “${kind}”: one of the two is wrong.`,
  },

  conflicts: {
    heading: (n: number) => (n === 1 ? '1 thing to settle' : `${n} things to settle`),
    possible: (n: number) =>
      n === 1 ? '1 pair that may speak of the same place' : `${n} pairs that may speak of the same place`,
    possibleWords:
      'One of the two does not say at which position or zone, so they are not held against each other.',
    showAll: (n: number) => `Show all ${n}`,
    finding: (number: number, kind: string, place: string) => `${number} ${kind}, ${place}`,
    /** Words before, between and after the links to the findings. */
    sentences: {
      same: ['', ' and ', ' say the same.'],
      narrower: ['', ' may be the same damage as ', ', which is a case of it.'],
      denied: ['', ' is there, but ', ' was looked for and not found.'],
      'not-examined': ['', ' is answered, but ', ' could not be examined.'],
      'part-missing': ['', ', but ', ' says what was or was not seen on it.'],
      'marks-of-absent': ['', ' is said not to be there, but marks show it.'],
      'bend-otherwise': ['', ': the bend that was entered, held against the rotation, says the other way.'],
    },
    sign: '!',
    possibleSign: '(!)',
    withOthers: (numbers: readonly number[]) =>
      numbers.length === 1
        ? `to settle with finding ${numbers.join('')}`
        : `to settle with findings ${numbers.join(', ')}`,
    possiblyWith: (numbers: readonly number[]) =>
      `may speak of the same place as finding ${numbers.join(', ')}`,
    alone: {
      'marks-of-absent': 'it has marks and is said not to be there',
      'bend-otherwise': 'its bend, held against the rotation, says the other way',
    },
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
