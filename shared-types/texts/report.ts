/** Words of the printed report. They stand on paper: no word here may depend on who reads it or where. */
import type { CaseStatus } from '../case.ts';
import type { Finding } from '../finding.ts';
import type { Stage } from '../photo.ts';

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

const standings = {
  open: 'working copy, not issued',
  issued: 'issued',
  superseded: 'superseded',
  withdrawn: 'withdrawn',
} as const satisfies Record<CaseStatus, string>;

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
  standings,
  /** `month` counts from 1. */
  date: (day: number, month: number, year: number, time: string) =>
    `${day} ${months[month - 1] ?? ''} ${year}, ${time} UTC`,
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
    customer: 'Customer',
    analyst: 'Analyst',
    date: 'Date',
  },
  notEntered: 'not entered',
  claim: {
    heading: 'The claim',
    lead: 'Word for word as received:',
    none: 'No claim has been entered.',
  },
  answer: { heading: 'The analyst’s answer' },
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
    notesHeading: 'Notes to the findings',
    note: (number: number) => `Finding ${number}.`,
    nowhere: '–',
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
    /** Only printed when it happened. */
    replacedCharacters:
      'Characters that the typefaces of this report do not have are printed as their Unicode numbers, [U+6F22] for one.',
  },
  signature: { date: 'Place and date', signature: 'Signature' },
  record: {
    heading: 'Record',
    madeAt: 'Printed from the case as it stood on',
    pack: 'Machine kind data',
    packValue: (id: string, version: string) => `${id}, version ${version}`,
    packHash: 'SHA-256 of the machine kind data',
    journal: 'Lines in the journal',
    journalHead: 'Hash of the last line',
    original: (plate: number) => `Original of plate ${plate}`,
    originalValue: (name: string, sha256: string) => `${name}, SHA-256 ${sha256}`,
  },
  footer: (section: number) =>
    `The opinion is the analyst’s, within the limits stated in section ${section}.`,
  pageOf: (page: number, pages: number) => `${page} of ${pages}`,
  producer: 'Teardown Docket',
  /** Fill `{reason}` of the error `report-picture-missing`. */
  pictureReasons: {
    notGiven: 'it has no display copy',
    notJpeg: 'its display copy is no JPEG',
    unreadable: (code: string) => `its display copy cannot be read: ${code}`,
  },
} as const;
