/** How many cases each value of a filter would leave. */
import type { FilterName, SearchFilters } from '#shared-types/search.ts';

import { codedTerms, codedValues, termValue, type CaseColumns, type KnownCase } from './case-columns.ts';
import { askingCases, asksOfFindings, failedTerms, filtersOfCase } from './case-filters.ts';

export type CountsInWork = {
  /** Counts the cases at these places; each place is given once. */
  readonly count: (places: readonly number[]) => void;
  /** Cases by value, for each filter. */
  readonly counted: () => ReadonlyMap<FilterName, ReadonlyMap<string, number>>;
};

/**
 * Counts cases by the values of every filter. A case counts for a value when it passes all other filters, and passed
 * this one if the value were chosen in it: for a filter of findings, by one and the same finding.
 */
export function countByFilters(columns: CaseColumns, filters: SearchFilters): CountsInWork {
  const failedOf = askingCases(columns, filters);
  const asksFindings = asksOfFindings(filters);
  const failed = failedTerms(columns, filters);
  const sums = codedValues.map((_, at) => new Int32Array(columns.values[at]?.list.length ?? 0));
  const findings = countFindings(columns, failed);

  const countOne = ({ codes, findings: terms }: KnownCase) => {
    const failedHere = failedOf(codes);
    // Two filters of cases say no: no value of either, and none of any other, would let it pass.
    if ((failedHere & (failedHere - 1)) !== 0) return;
    if (failedHere === 0) findings.take(terms);
    if (asksFindings && !terms.some((one) => failed[one] === 0)) return;
    for (const [place, { coded }] of filtersOfCase.entries()) {
      if ((failedHere & ~(1 << place)) !== 0) continue;
      for (const at of coded) {
        const sum = sums[at];
        const code = codes[at] ?? -1;
        if (sum !== undefined && code !== -1) sum[code] = (sum[code] ?? 0) + 1;
      }
    }
  };
  const countedOf = (coded: readonly number[]) =>
    new Map(
      coded.flatMap((at) =>
        (columns.values[at]?.list ?? [])
          .map((value, code) => [value, sums[at]?.[code] ?? 0] as const)
          .filter(([, sum]) => sum > 0),
      ),
    );
  return {
    count(places) {
      for (const place of places) {
        const known = columns.cases[place];
        if (known !== undefined) countOne(known);
      }
    },
    counted() {
      const counted = new Map<FilterName, ReadonlyMap<string, number>>(findings.counted());
      for (const { name, coded } of filtersOfCase) counted.set(name, countedOf(coded));
      return counted;
    },
  };
}

/** Cases by the values of the filters of findings, each case once for a value. */
function countFindings(columns: CaseColumns, failed: Uint8Array) {
  const fields = codedTerms.length;
  // For each terms the places of its values; -1 where a filter other than the value's own says no to the terms.
  const codes = Int32Array.from(columns.termCodes, (code, at) =>
    ((failed[Math.floor(at / fields)] ?? 0) & ~(1 << (at % fields))) === 0 ? code : -1,
  );
  const cases = new Int32Array(columns.termValues.list.length);
  const lastCounted = new Int32Array(cases.length);
  let turn = 0;
  return {
    take(terms: readonly number[]) {
      turn += 1;
      for (const one of terms) {
        for (let at = one * fields; at < (one + 1) * fields; at += 1) {
          const value = codes[at] ?? -1;
          if (value === -1 || lastCounted[value] === turn) continue;
          lastCounted[value] = turn;
          cases[value] = (cases[value] ?? 0) + 1;
        }
      }
    },
    counted: () =>
      codedTerms.map((field) => {
        const start = termValue(field, '');
        const counts = columns.termValues.list
          .map((value, place) => [value, cases[place] ?? 0] as const)
          .filter(([value, sum]) => sum > 0 && value.startsWith(start))
          .map(([value, sum]) => [value.slice(start.length), sum] as const);
        return [field, new Map(counts)] as const;
      }),
  };
}
