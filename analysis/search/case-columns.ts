/**
 * What every case of the library is filtered, counted and called by, held side by side: thousands of cases are looked
 * through in the time of a few rows of a database. It holds what it is given; electron/services keeps it as the
 * library is.
 */
import type { Outcome } from '#shared-types/case.ts';
import type { DamageClass, Presence } from '#shared-types/finding.ts';
import { identifierKinds } from '#shared-types/search.ts';

import { readIdentifier, type Identifier } from './identifier-fit.ts';
import {
  addIdentifiers,
  createIdentifierIndex,
  removeIdentifiers,
  type IdentifierIndex,
} from './identifier-index.ts';
import { periodsOf } from './periods.ts';

/** What a tag or a filter can ask of a finding. */
export type FindingTerms = {
  readonly component: string;
  readonly zone: string | null;
  readonly kind: string;
  readonly class: DamageClass;
  readonly presence: Presence;
};

export type CaseFacts = {
  /** Its row in the library: what it is known by here. */
  readonly row: number;
  /** Of the machine kind that it was opened with. */
  readonly packRow: number;
  readonly number: string;
  readonly model: string;
  readonly serial: string;
  readonly partNumber: string;
  readonly customer: string;
  readonly outcome: Outcome;
  readonly openedAt: string;
};

export type KnownCase = CaseFacts & {
  /** Model, customer, outcome, year and quarter of opening: places in the lists of `values`, -1 for an empty one. */
  readonly codes: readonly number[];
  readonly identifiers: readonly Identifier[];
  /** Which terms its findings have, by their place in `terms`; one that several findings have stands several times. */
  readonly findings: number[];
};

/** Values that filters of cases choose from, in the order of a case's codes. */
export const codedValues = ['model', 'customer', 'outcome', 'year', 'quarter'] as const;

/** What filters of findings choose from; all values of a finding have places in one list. */
export const codedTerms = ['component', 'kind', 'class', 'presence'] as const;

/** Each value once, and where it stands in its list. */
export type ValueList = { readonly list: string[]; readonly placeOf: Map<string, number> };

export type CaseColumns = {
  /** For each of codedValues. */
  readonly values: readonly ValueList[];
  /** In no order; a case keeps its place. */
  readonly cases: KnownCase[];
  /** By a case's row: rows count up from 1 with few gaps, so a list is quicker than a map. */
  readonly placeOfRow: (number | undefined)[];
  /** Every combination that some finding has or had. */
  readonly terms: FindingTerms[];
  readonly placeOfTerms: Map<string, number>;
  /** Values of codedTerms, each written as its field and the value. */
  readonly termValues: ValueList;
  /** For each terms in turn the places of its values in that list, one for each of codedTerms; -1 for none. */
  readonly termCodes: number[];
  /** Places of the cases with a finding of each terms; a case stands as often as it has such findings. */
  readonly casesOfTerms: number[][];
  readonly identifiers: IdentifierIndex;
  /** Places of the cases, newest first; null while it has to be sorted again. */
  newestFirst: readonly number[] | null;
};

export function createCaseColumns(): CaseColumns {
  return {
    values: codedValues.map(() => ({ list: [], placeOf: new Map<string, number>() })),
    cases: [],
    placeOfRow: [],
    terms: [],
    placeOfTerms: new Map(),
    termValues: { list: [], placeOf: new Map() },
    termCodes: [],
    casesOfTerms: [],
    identifiers: createIdentifierIndex(),
    newestFirst: null,
  };
}

/** Adds the case, or puts it in the place of what was known of it: then it has no findings until they are added. */
export function putCase(columns: CaseColumns, facts: CaseFacts): void {
  const written = [facts.number, facts.model, facts.serial, facts.partNumber];
  const identifiers = identifierKinds
    .map((kind, at) => readIdentifier(kind, written[at] ?? ''))
    .filter(({ plain }) => plain !== '');
  const place = columns.placeOfRow[facts.row] ?? columns.cases.length;
  const before = columns.cases[place];
  if (before !== undefined) {
    removeIdentifiers(columns.identifiers, before.identifiers, place);
    for (const terms of before.findings) removeOne(columns.casesOfTerms[terms] ?? [], place);
  }
  columns.cases[place] = {
    ...facts,
    codes: codesOf(columns, facts),
    identifiers,
    findings: [],
  };
  addIdentifiers(columns.identifiers, identifiers, place);
  columns.placeOfRow[facts.row] = place;
  columns.newestFirst = null;
}

function codesOf({ values }: CaseColumns, facts: CaseFacts): number[] {
  const coded = [facts.model, facts.customer, facts.outcome, ...periodsOf(facts.openedAt)];
  return values.map((list, at) => {
    const value = coded[at] ?? '';
    return value === '' ? -1 : placeIn(list, value);
  });
}

function placeIn({ list, placeOf }: ValueList, value: string): number {
  const known = placeOf.get(value);
  if (known !== undefined) return known;
  placeOf.set(value, list.length);
  return list.push(value) - 1;
}

/** What a finding answers to a filter; null for the class of what is not there, which has none. */
export function answerOf(terms: FindingTerms, field: (typeof codedTerms)[number]): string | null {
  return field === 'class' && terms.presence !== 'present' ? null : terms[field];
}

/** How a value of a finding's terms is written in `termValues`. */
export const termValue = (field: (typeof codedTerms)[number], value: string) => `${field} ${value}`;

/** Adds findings with the same terms, one for each row given; a row that is not known is left out. */
export function addFindings(columns: CaseColumns, terms: FindingTerms, caseRows: Iterable<number>): void {
  const termsPlace = placeOfTerms(columns, terms);
  for (const row of caseRows) {
    const place = columns.placeOfRow[row];
    if (place === undefined) continue;
    columns.cases[place]?.findings.push(termsPlace);
    columns.casesOfTerms[termsPlace]?.push(place);
  }
}

function placeOfTerms(columns: CaseColumns, terms: FindingTerms): number {
  const { component, zone, kind, class: damageClass, presence } = terms;
  const key = `${component}|${zone ?? ''}|${kind}|${damageClass}|${presence}`;
  const known = columns.placeOfTerms.get(key);
  if (known !== undefined) return known;
  columns.placeOfTerms.set(key, columns.terms.length);
  columns.casesOfTerms.push([]);
  columns.terms.push({ component, zone, kind, class: damageClass, presence });
  for (const field of codedTerms) {
    const answer = answerOf(terms, field);
    columns.termCodes.push(answer === null ? -1 : placeIn(columns.termValues, termValue(field, answer)));
  }
  return columns.terms.length - 1;
}

function removeOne(places: number[], place: number): void {
  const at = places.indexOf(place);
  if (at !== -1) places.splice(at, 1);
}

/** Places of all cases: the one opened last first, and of those opened at one instant the one entered last. */
export function newestFirst(columns: CaseColumns): readonly number[] {
  if (columns.newestFirst !== null) return columns.newestFirst;
  const { cases } = columns;
  const order = cases.map((one, place) => ({ openedAt: one.openedAt, row: one.row, place }));
  order.sort((one, other) =>
    one.openedAt === other.openedAt ? other.row - one.row : one.openedAt < other.openedAt ? 1 : -1,
  );
  columns.newestFirst = order.map(({ place }) => place);
  return columns.newestFirst;
}
