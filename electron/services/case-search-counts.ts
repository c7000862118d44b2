/** How many cases each filter would leave. */
import { setImmediate as otherCalls } from 'node:timers/promises';

import { countByFilters } from '#analysis/search/filter-counts.ts';
import {
  filterNames,
  type FilterCount,
  type FilterCounts,
  type FilterName,
  type SearchCounts,
  type SearchCountsRequest,
} from '#shared-types/search.ts';

import type { Db } from '../database/open-library.ts';
import { readTermLabels } from '../database/repositories/search-columns.ts';
import { columnsOf } from './case-search-columns.ts';
import { findCases } from './case-search-found.ts';
import type { Services } from './services.ts';

/** Cases counted between two looks at what else is asked: some milliseconds. */
const casesASlice = 4_000;
const mostValues = 50;

/** The newest request of each page, until it is answered. */
const newestOf = new WeakMap<Db, Map<string, SearchCountsRequest>>();

/** Null where a newer request of the same asker has come meanwhile. */
export async function countFilters(
  { db }: Pick<Services, 'db'>,
  request: SearchCountsRequest,
): Promise<SearchCounts | null> {
  const newest = newestOf.get(db) ?? new Map<string, SearchCountsRequest>();
  newestOf.set(db, newest);
  newest.set(request.asker, request);
  const overtaken = () => newest.get(request.asker) !== request;
  try {
    // What came in with it is looked at first: of ten requests in a row, one is counted.
    await otherCalls();
    if (overtaken()) return null;
    const kept = await columnsOf(db);
    if (overtaken()) return null;
    const { beforeFilters } = findCases(db, kept, request);
    const work = countByFilters(kept.columns, request.filters);
    for (let from = 0; from < beforeFilters.length; from += casesASlice) {
      if (from > 0) await otherCalls();
      if (overtaken()) return null;
      work.count(beforeFilters.slice(from, from + casesASlice));
    }
    return toldCounts(db, request, work.counted());
  } finally {
    if (!overtaken()) newest.delete(request.asker);
  }
}

function toldCounts(
  db: Db,
  { filters }: SearchCountsRequest,
  counted: ReadonlyMap<FilterName, ReadonlyMap<string, number>>,
): SearchCounts {
  // Later machine kinds have the last word on a label.
  const labels = new Map(readTermLabels(db).map(({ list, term, label }) => [`${list} ${term}`, label]));
  const told = (name: FilterName): FilterCounts => {
    const chosen: readonly string[] = filters[name] ?? [];
    const all = new Map<string, number>([
      ...chosen.map((value) => [value, 0] as const),
      ...(counted.get(name) ?? []),
    ]);
    const values = Array.from(all, ([value, cases]): FilterCount => {
      return { value, label: labels.get(`${name} ${value}`) ?? value, cases };
    }).sort(name === 'period' ? newestPeriodFirst : mostCasesFirst);
    const isChosen = ({ value }: FilterCount) => chosen.includes(value);
    const listed = values.filter((one, place) => place < mostValues || isChosen(one));
    return { values: listed, more: values.length - listed.length };
  };
  return Object.fromEntries(filterNames.map((name) => [name, told(name)])) as SearchCounts;
}

function mostCasesFirst(one: FilterCount, other: FilterCount): number {
  return other.cases - one.cases || (one.label < other.label ? -1 : 1);
}

function newestPeriodFirst(one: FilterCount, other: FilterCount): number {
  return one.value < other.value ? 1 : -1;
}
