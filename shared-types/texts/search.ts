/** Words of the search over all cases. */
import type { DamageClass, Presence } from '../finding.ts';
import type { FilterName, FoundExcerpt, IdentifierKind } from '../search.ts';
import { commonTexts } from './common.ts';

const identifiers = {
  number: 'case number',
  model: 'model',
  serial: 'serial',
  'part-number': 'part number',
} as const satisfies Record<IdentifierKind, string>;

const excerptWhere = {
  ...identifiers,
  case: 'case',
  finding: 'finding',
  photo: 'photo',
  party: 'party',
  custody: 'custody',
  'photo-name': 'file',
} as const satisfies Record<FoundExcerpt['where'], string>;

const filters = {
  component: 'Part',
  kind: 'Kind of damage',
  class: 'Class',
  presence: 'Presence',
  model: 'Model',
  customer: 'Customer',
  outcome: 'Outcome',
  period: 'Opened',
} as const satisfies Record<FilterName, string>;

/** How a class is typed into the box. */
const typedClasses: Readonly<Record<DamageClass, readonly string[]>> = {
  primary: [commonTexts.damageClasses.primary],
  secondary: [commonTexts.damageClasses.secondary],
  unrelated: [commonTexts.damageClasses.unrelated],
  undecided: [commonTexts.damageClasses.undecided],
};
/** How a presence is typed into the box. */
const typedPresences: Readonly<Record<Presence, readonly string[]>> = {
  present: ['present'],
  'looked-for-absent': ['absent', 'not there', 'looked for not there'],
  'not-examined': ['not examined', 'unexamined'],
};

const cases = (n: string, one: boolean) => `${n} ${one ? 'case' : 'cases'}`;

export const searchTexts = {
  title: 'Find in all cases',
  inputHint: 'Words, “a phrase”, a serial number, a damage',
  suggestions: 'Damage that findings in this library carry',
  tag: (component: string, kind: string) => `${component}: ${kind}`,
  anyPart: 'any part',
  anyKind: 'any damage',
  casesWithTag: cases,
  typedNames: { classes: typedClasses, presences: typedPresences },

  chosenTags: 'Damage looked for',
  classLabel: (tag: string) => `Class of ${tag}`,
  anyClass: 'any class',
  presenceLabel: (tag: string) => `Presence of ${tag}`,
  anyPresence: 'present or not',
  removeTag: (tag: string) => `Leave out ${tag}`,
  asWords: 'as words',
  asWordsLabel: (words: string) => `as words: ${words}`,
  clear: 'Clear',

  /** `shown` of `total` cases are in the list. */
  resultCount: (shown: string, total: string) =>
    shown === total ? `${total} found` : `${total} found, the first ${shown} listed`,
  hits: 'Cases found',
  more: (n: string) => `List ${n} more`,
  loadingMore: 'Reading more…',
  toHits: 'To the cases found',
  keysHint: '↑ ↓ from case to case, Enter opens',

  filters,
  filtersTitle: 'Narrow down',
  filtersShown: 'Hide the filters',
  filtersHidden: (chosen: number) => (chosen === 0 ? 'Filters' : `Filters (${chosen} chosen)`),
  /** Said beside the presences: what the counts of parts and kinds count. */
  presenceNote: 'Part and kind count damage that was looked for, whether it was there or not.',
  filterValue: (label: string, n: string, one: boolean) => `${label}, ${cases(n, one)}`,
  moreValues: (n: string) => `${n} more`,
  fewerValues: 'fewer',
  rarerValues: (n: string) => `and ${n} rarer`,
  noValues: 'No case to count.',
  clearFilters: 'All',
  clearFiltersLabel: 'All: choose nothing in any filter',
  quarter: (quarter: string, year: string) => `Q${quarter} ${year}`,
  countsFailed: 'The numbers could not be counted.',

  nothing: {
    title: 'No case fits',
    understood: 'What was looked for, and how many cases have it:',
    phrase: (words: string) => `the phrase “${words}”`,
    word: (word: string) => `“${word}”`,
    filter: (filter: string, values: string) => `${filter}: ${values}`,
    leaveOut: 'leave out',
    leaveOutLabel: (what: string) => `Leave out ${what}`,
    near: 'Near what was typed',
    nearOffer: (kind: string, written: string, count: string) => `${kind} ${written}, ${count}`,
    asDamage: (tag: string) => `Look for the damage ${tag}`,
    words:
      'All of it must be in the same case. The beginning of a word is enough; of numbers any three characters that follow each other, or, from five on, all of it with one slip.',
  },
  begin: {
    title: 'Find in everything that was written',
    words: [
      'Words of claims, conclusions, the state received, findings, captions, words on photos, parties and custody; in any order, the beginning of a word is enough. “In quotes” they must stand just so.',
      'Case, serial and part numbers and models, with or without their hyphens and capitals: any three characters that follow each other, or, from five on, all of it with one character wrong, missing, doubled or swapped. The name of a photo’s file in full.',
      'Damage that findings carry is offered below the box while you type, and taken from your words by Enter: “thrust bearing worn away primary”. Add “absent” for damage that was looked for and not there.',
    ],
  },
  matchedFindings: 'Findings that match',
  findingName: (number: number, component: string, kind: string) => `${number} ${component}: ${kind}`,
  otherCases: 'other cases with this damage',
  otherCasesLabel: (damage: string) => `other cases with this damage: ${damage}`,
  identifiers,
  /** Where a piece of text stands. */
  excerptWhere,
  near: (written: string) => `near: ${written}`,
} as const;
