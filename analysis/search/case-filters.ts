/** Which cases pass tags and filters. */
import { filterNames, type DamageTag, type FilterName, type SearchFilters } from '#shared-types/search.ts';

import {
  answerOf,
  codedTerms,
  codedValues,
  termValue,
  type CaseColumns,
  type FindingTerms,
} from './case-columns.ts';

/** Filters that speak of the case, each with the values it chooses from, by their places in codedValues. */
export const filtersOfCase = [
  { name: 'model', coded: [codedValues.indexOf('model')] },
  { name: 'customer', coded: [codedValues.indexOf('customer')] },
  { name: 'outcome', coded: [codedValues.indexOf('outcome')] },
  { name: 'period', coded: [codedValues.indexOf('year'), codedValues.indexOf('quarter')] },
] as const satisfies { name: FilterName; coded: number[] }[];

export function tagFits(tag: DamageTag, terms: FindingTerms): boolean {
  return (
    (tag.component === null || tag.component === terms.component) &&
    (tag.zone === null || tag.zone === terms.zone) &&
    (tag.kind === null || tag.kind === terms.kind) &&
    (tag.class === null || tag.class === answerOf(terms, 'class')) &&
    (tag.presence === null || tag.presence === terms.presence)
  );
}

/** Null where nothing is chosen. */
function chosen(filters: SearchFilters, name: FilterName): readonly string[] | null {
  const values = filters[name];
  return values === undefined || values.length === 0 ? null : values;
}

/** True where anything is chosen of any filter. */
export const asksAnything = (filters: SearchFilters) =>
  filterNames.some((name) => chosen(filters, name) !== null);

export const asksOfFindings = (filters: SearchFilters) =>
  codedTerms.some((name) => chosen(filters, name) !== null);

/** True where filters ask for something of a finding, and it has all of it. */
export function findingPasses(filters: SearchFilters, terms: FindingTerms): boolean {
  return (
    asksOfFindings(filters) &&
    codedTerms.every((field) => {
      const answer = answerOf(terms, field);
      return chosen(filters, field)?.some((value) => value === answer) ?? true;
    })
  );
}

/** For each terms a bit for each of codedTerms whose filter says no to it, the first of them the lowest. */
export function failedTerms(columns: CaseColumns, filters: SearchFilters): Uint8Array {
  const failed = new Uint8Array(columns.terms.length);
  for (const [field, name] of codedTerms.entries()) {
    const values = chosen(filters, name);
    if (values === null) continue;
    const wanted = new Set(values.map((value) => columns.termValues.placeOf.get(termValue(name, value))));
    for (let place = 0; place < failed.length; place += 1) {
      const code = columns.termCodes[place * codedTerms.length + field];
      if (!wanted.has(code)) failed[place] = (failed[place] ?? 0) | (1 << field);
    }
  }
  return failed;
}

/** Answers a bit for each filter of cases that says no to a case's codes, the first of them the lowest. */
export function askingCases(
  { values }: CaseColumns,
  filters: SearchFilters,
): (codes: readonly number[]) => number {
  const asked = filtersOfCase.flatMap(({ name, coded }, place) => {
    const wanted = chosen(filters, name);
    if (wanted === null) return [];
    const allowed = coded.map((at) => ({ at, codes: wanted.map((one) => values[at]?.placeOf.get(one)) }));
    return [{ allowed, bit: 1 << place }];
  });
  return (codes) =>
    asked.reduce(
      (failed, { allowed, bit }) =>
        allowed.some((one) => one.codes.includes(codes[one.at])) ? failed : failed | bit,
      0,
    );
}

/** For each case, by its place, 1 where it passes. Good until a case is added or changed. */
export type PassingCases = Uint8Array;

/** Cases that have a finding with one of these terms. */
function withTerms(columns: CaseColumns, fits: (place: number) => boolean): PassingCases {
  const passing = new Uint8Array(columns.cases.length);
  for (let place = 0; place < columns.terms.length; place += 1) {
    if (!fits(place)) continue;
    for (const one of columns.casesOfTerms[place] ?? []) passing[one] = 1;
  }
  return passing;
}

export function passingTag(columns: CaseColumns, tag: DamageTag): PassingCases {
  const { terms } = columns;
  return withTerms(columns, (place) => {
    const one = terms[place];
    return one !== undefined && tagFits(tag, one);
  });
}

export function passingFilters(columns: CaseColumns, filters: SearchFilters): PassingCases {
  const failedOfTerms = failedTerms(columns, filters);
  const passing = asksOfFindings(filters)
    ? withTerms(columns, (place) => failedOfTerms[place] === 0)
    : new Uint8Array(columns.cases.length).fill(1);
  const failed = askingCases(columns, filters);
  for (const [place, { codes }] of columns.cases.entries()) if (failed(codes) !== 0) passing[place] = 0;
  return passing;
}
