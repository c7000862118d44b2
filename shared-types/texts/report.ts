/** Words of the printed report. They stand on paper: no word here may depend on who reads it or where. */
import type { CaseStatus, DurationUnit, Outcome, ThreadHand } from '../case.ts';
import type { CustodyEvent } from '../custody.ts';
import type { Finding } from '../finding.ts';
import type { PartyRole } from '../party.ts';
import type { Stage } from '../photo.ts';
import type { TurningSense } from '../rotation.ts';

const stages = {
  'as-received': 'as received',
  stripped: 'stripped',
  cleaned: 'cleaned',
  sectioned: 'sectioned',
} as const satisfies Record<Stage, string>;

const severities = {
  slight: 'slight',
  moderate: 'moderate',
  severe: 'severe',
} as const satisfies Record<NonNullable<Finding['severity']>, string>;

const senses = {
  clockwise: 'clockwise',
  anticlockwise: 'anticlockwise',
} as const satisfies Record<TurningSense, string>;

const standings = {
  open: 'working copy, not issued',
  issued: 'issued',
  superseded: 'superseded',
  withdrawn: 'withdrawn',
} as const satisfies Record<CaseStatus, string>;

const threadHands = {
  right: 'right-hand',
  left: 'left-hand',
  'no-thread': 'no thread on the shaft',
} as const satisfies Record<ThreadHand, string>;

const durations = {
  days: { one: 'day', many: 'days' },
  weeks: { one: 'week', many: 'weeks' },
  months: { one: 'month', many: 'months' },
  years: { one: 'year', many: 'years' },
} as const satisfies Record<DurationUnit, { one: string; many: string }>;

const roles = {
  claims: 'claims',
  instructs: 'instructs the examination',
  pays: 'pays for the examination',
  owns: 'owns the unit',
  operates: 'operates the unit',
  fitted: 'fitted the unit',
  rebuilt: 'rebuilt the unit',
  supplied: 'supplied the unit',
  insures: 'insures',
  other: 'other',
} as const satisfies Record<PartyRole, string>;

const custodyEvents = {
  received: 'received',
  moved: 'moved',
  released: 'released',
  opened: 'opened',
  cleaned: 'cleaned',
  sectioned: 'sectioned',
  other: 'other',
} as const satisfies Record<CustodyEvent, string>;

/** What the examination says of the cause; of who is liable none of them says anything. */
const outcomes = {
  'not-answered': 'The claim is not answered yet.',
  'claim-supported': 'As to the cause of the failure, what was found supports the claim.',
  'claim-partly-supported':
    'As to the cause of the failure, what was found supports the claim in part; the conclusion says in which.',
  'claim-not-supported': 'As to the cause of the failure, what was found does not support the claim.',
  undetermined: 'The cause of the failure could not be determined from what was received.',
  'no-fault-found': 'No fault was found in what was received.',
  'settled-as-goodwill': 'The claim was settled as goodwill. That says nothing of the cause of the failure.',
} as const satisfies Record<Outcome, string>;

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

export const reportTexts = {
  /** BCP 47 tag of everything below. */
  language: 'en-GB',
  stages,
  severities,
  senses,
  standings,
  sampleStanding: 'sample case, photos computer-generated',
  threadHands,
  durations,
  roles,
  custodyEvents,
  outcomes,
  /** `month` counts from 1. */
  times: {
    month: (month: number, year: number) => `${months[month - 1] ?? ''} ${year}`,
    day: (day: number, month: number, year: number) => `${day} ${months[month - 1] ?? ''} ${year}`,
    time: (day: string, time: string) => `${day}, ${time}`,
    instant: (day: string, time: string) => `${day}, ${time} UTC`,
    offset: (sign: string, hours: string, minutes: string) => `UTC${sign}${hours}:${minutes}`,
    zoneless: (time: string) => `${time}, zone not told`,
    duration: (value: string, unit: string) => `${value} ${unit}`,
  },
  references: {
    printed: (kind: string, number: string) => `${kind}\u00a0${number}`,
    annex: 'annex',
  },
  /** Two no-break spaces: an en space is not in the typefaces. */
  heading: (section: number, words: string) => `${section}\u00a0\u00a0${words}`,
  title: (caseNumber: string) => `Report ${caseNumber}`,
  runningTitle: (caseNumber: string, standing: string) => `Report ${caseNumber}, ${standing}`,
  documentTitle: (caseNumber: string, unit: string) =>
    unit === '' ? `Report ${caseNumber}` : `Report ${caseNumber}: ${unit}`,
  subject: (machine: string, unit: string) =>
    unit === '' ? `Teardown report, ${machine}` : `Teardown report, ${machine}: ${unit}`,
  serial: (serial: string) => `serial ${serial}`,
  partNumber: (partNumber: string) => `part number ${partNumber}`,
  block: {
    caseNumber: 'Case number',
    standing: 'Standing',
    machine: 'Machine',
    unit: 'Unit',
    serial: 'Serial number',
    partNumber: 'Part number',
    rotation: 'Rotation, as seen',
    thread: 'Shaft thread, as seen',
    fittedOn: 'Fitted, as told',
    failedOn: 'Failed, as told',
    timeInService: 'Time in service, as told',
    runningHours: 'Running hours, as told',
    customer: 'Customer',
    analyst: 'Analyst',
    date: 'Date',
  },
  notEntered: 'not entered',
  hours: (hours: string) => `${hours} h`,
  /** What was seen, and the plate that shows it. */
  seenOn: (what: string, plate: number) => `${what}; see plate\u00a0${plate}`,
  seenOnNone: (what: string) => `${what}; no photograph of it was named`,
  seenOnTakenOut: (what: string) => `${what}; the photograph named for it was taken out of the case`,
  claim: {
    heading: 'The claim',
    lead: (claimants: string) => `Claimed by ${claimants}, word for word as received:`,
    leadOfNobody: 'Who claims has not been entered. Word for word as received:',
    none: 'No claim has been entered.',
  },
  instruction: {
    heading: 'Instruction and interest',
    instructs: 'Instructed by',
    pays: 'Paid for by',
    others: 'Other parties',
    other: (name: string, its: string) => `${name}: ${its}`,
    roleUnknown: 'role not stated',
    interest: 'The analyst’s interest',
    notStated: 'not stated',
    none: 'No interest in the answer is declared.',
    declared: 'An interest in the answer is declared.',
  },
  received: {
    heading: 'What was received',
    stateNone: 'The state in which it arrived has not been entered.',
    custody: 'Custody, in the order of the times told. Entries that were struck stay readable.',
    custodyNone: 'No custody entry has been made.',
    columns: {
      when: 'When',
      item: 'Item',
      event: 'What happened',
      from: 'From, or by',
      to: 'To',
      why: 'Why, and in what state',
    },
    struck: (by: string, at: string, reason: string) => `Struck by ${by}, ${at}: ${reason}`,
    empty: '–',
  },
  ownSection: { untitled: 'Untitled section' },
  answer: {
    heading: 'The analyst’s answer',
    liability: 'This answers what the cause was. Who is liable for it is not decided here.',
  },
  tables: {
    /** What stands above a table. */
    caption: (number: number) => `Table ${number}.`,
    findings: 'Findings.',
    photos: 'Photographs that came into the case.',
    /** Names by which own words refer to a table or a figure. */
    names: { custody: 'custody', findings: 'findings', photos: 'photos' },
    figureNames: { chain: 'chain' },
  },
  findings: {
    heading: 'Findings',
    none: 'No finding has been entered.',
    columns: {
      number: 'No.',
      class: 'Class',
      part: 'Part, zone',
      finding: 'Finding',
      presence: 'Presence',
      extent: 'Extent',
      plates: 'Shown on',
    },
    gone: (numbers: readonly number[]) =>
      numbers.length === 1
        ? `Number ${numbers.join('')} was given to a finding that was removed again before this report.`
        : `Numbers ${numbers.join(', ')} were given to findings that were removed again before this report.`,
    notesHeading: 'Notes to the findings',
    note: (number: number) => `Finding ${number}.`,
    nowhere: '–',
    /** Stands where a class would, of what is not there. */
    noClass: '–',
    bend: (sense: string, side: string) => `${sense} seen ${side}`,
    extent: (affected: number, of: number, counted: string) =>
      counted === '' ? `${affected} of ${of}` : `${affected} of ${of} ${counted}`,
  },
  plates: {
    heading: 'Plates',
    none: 'No photograph belongs to this case.',
    name: (number: number) => `Plate ${number}.`,
    reference: (number: number, marks: string) => `Plate ${number}, ${marks}`,
    markRange: (first: string, last: string) => `${first} to ${last}`,
    seenFrom: (side: string) => `seen ${side}`,
    photo: (number: number, of: number) => `photo ${number} of ${of}`,
    unassigned: 'not given to a finding',
  },
  limits: {
    heading: 'Limits of this report',
    scope:
      'The findings are what was seen on the parts that were received, in the state the photographs show. Nothing is said of parts that were not received or not examined.',
    notExamined: (count: number, of: number) =>
      count === 1
        ? `One of ${of} findings could not be examined; the table says which.`
        : `${count} of ${of} findings could not be examined; the table says which.`,
    unassignedMarks: (count: number) =>
      count === 1
        ? 'One mark on the plates is not given to a finding.'
        : `${count} marks on the plates are not given to a finding.`,
    opinion:
      'The opinion is the analyst’s. The program that printed these pages computes and checks; it concludes nothing.',
    handling:
      'Failed parts can have sharp edges and carry residues that harm. Whoever handles them, measures again or runs a trial follows the maker’s instructions, the local rules, and the people licensed for the work.',
    /** Only printed when it happened. */
    replacedCharacters:
      'Characters that the typefaces of this report do not have are printed as their Unicode numbers, [U+6F22] for one.',
  },
  signature: {
    heading: 'Signature',
    /** `last` is the number of the section before this one. */
    covers: (last: number, annexes: readonly string[]) =>
      annexes.length === 0
        ? `The signature stands for sections 1 to ${last}.`
        : `The signature stands for sections 1 to ${last} and for ${annexes.length === 1 ? 'annex' : 'annexes'} ${annexes.join(' and ')}, which ${annexes.length === 1 ? 'follows' : 'follow'} it; the pages are numbered through to the last.`,
    date: 'Place and date',
    signature: 'Signature',
  },
  record: {
    heading: 'Record',
    madeAt: 'Printed from the case as it stood on',
    pack: 'Machine kind data',
    packValue: (id: string, version: string) => `${id}, version ${version}`,
    packHash: 'SHA-256 of the machine kind data',
    journal: 'Lines in the journal',
    journalHead: 'Hash of the last line',
  },
  annex: (letter: string, words: string) => `Annex ${letter}\u00a0\u00a0${words}`,
  /** Of a photo whose file says of itself that no camera took it. */
  synthetic: {
    stamp: 'NOT A PHOTOGRAPH: computer-generated, as its own file says',
    caption: (words: string) => `The file says of itself that no camera took it (“${words}”).`,
    register: (words: string) => `says of itself: ${words}`,
    sheet: 'computer-generated',
  },
  register: {
    heading: 'Photo register',
    lead: 'Every photograph that ever came into the case: those in it by their number, then any that were taken out. The originals are kept as they came; their SHA-256 shows whether a file is the one that was examined.',
    columns: {
      photo: 'Photo',
      plate: 'Plate',
      file: 'File',
      taken: 'Taken, camera',
      sha256: 'SHA-256 of the original file',
    },
    out: 'taken out',
    came: (bytes: string, at: string, by: string) => `${bytes} bytes; came in ${at}, ${by}`,
    takenUnknown: 'time not in the file',
    takenOut: (at: string, by: string, reason: string) => `Taken out ${at} by ${by}: ${reason}`,
    nowhere: '–',
    place: (latitude: string, ns: string, longitude: string, ew: string, altitude: string | null) =>
      `camera at ${latitude}°\u00a0${ns}, ${longitude}°\u00a0${ew}${altitude === null ? '' : `; ${altitude}\u00a0m`}`,
    noPlace: 'camera place not in the file',
  },
  sheet: {
    heading: 'Contact sheet',
    lead: 'Every photograph of the case in small, without marks, by its number.',
    takenOut: (count: number, names: string) =>
      count === 1
        ? `One photograph was taken out of the case and is not shown: ${names}.`
        : `${count} photographs were taken out of the case and are not shown: ${names}.`,
    noneTakenOut: 'No photograph was taken out of the case.',
    gap: (first: string, last: string, count: number) =>
      count === 1 ? first : count === 2 ? `${first} and ${last}` : `${first} to ${last} (${count})`,
    gaps: (files: string) =>
      `The numbers in the file names leave gaps: no photograph of the case has the name ${files}. Why is not known: it may not have been taken or brought in, or may have come in under another name.`,
    noGaps: 'The numbers in the file names leave no gap.',
  },
  footer: (section: string) =>
    `The opinion is the analyst’s, within the limits stated in section ${section}.`,
  pageOf: (page: number, pages: number) => `${page} of ${pages}`,
  producer: 'Teardown Docket',
  /** Fill `{reason}` of the error `report-picture-missing`. */
  pictureReasons: {
    notGiven: 'it has no picture for its plate',
    noThumbnail: 'it has no picture for the contact sheet',
    notJpeg: 'its picture is no JPEG',
    unreadable: (code: string) => `its picture cannot be read: ${code}`,
  },
} as const;
