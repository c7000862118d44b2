/** Finds cases again: by what was written in them, by serial and part numbers, by damage tags; the answer is by case. */
import {
  asksAnything,
  asksOfFindings,
  findingPasses,
  passingTag,
  tagFits,
} from '#analysis/search/case-filters.ts';
import type { CaseColumns, FindingTerms } from '#analysis/search/case-columns.ts';
import { countTags } from '#analysis/search/known-tags.ts';
import { nearOffers } from '#analysis/search/near-offers.ts';
import {
  hitsAPage,
  type KnownTag,
  type SearchAnswer,
  type SearchHit,
  type SearchRequest,
} from '#shared-types/search.ts';

import { summariseCases } from '../database/repositories/cases.ts';
import { readTermLabels } from '../database/repositories/search-columns.ts';
import { namedFindingsOf, thumbnailsOf } from '../database/repositories/search-tags.ts';
import { columnsOf } from './case-search-columns.ts';
import { excerptsOf } from './case-search-excerpts.ts';
import { findCases, type Found } from './case-search-found.ts';
import type { Services } from './services.ts';

const mostThumbnails = 4;
const mostNear = 6;

type Place = Pick<Services, 'db'>;

/**
 * A case is found when each word and phrase of the text stands somewhere in it, be it in its claim, a caption or a
 * finding, or fits one of its identifiers; or when the whole text fits an identifier; when each tag fits one of its
 * findings; and when it passes the filters. Best first; without text, the newest first.
 */
export async function searchCases({ db }: Place, request: SearchRequest): Promise<SearchAnswer> {
  const kept = await columnsOf(db);
  const { columns } = kept;
  const found = findCases(db, kept, request);
  const asked = found.text.items.length > 0 || request.tags.length > 0 || asksAnything(request.filters);
  if (!asked) return { hits: [], total: 0, words: [], casesOfTags: [] };
  const shown = found.places.slice(request.from, request.from + hitsAPage);
  return {
    hits: hitsOf({ db }, columns, { request, found, shown }),
    total: found.places.length,
    words: found.text.items.map(({ item, cases }) => ({
      written: item.written,
      phrase: item.phrase,
      cases,
      near: found.places.length === 0 ? nearOffers(columns, item.written, mostNear) : [],
    })),
    casesOfTags:
      found.places.length === 0
        ? request.tags.map((tag) => passingTag(columns, tag).reduce((sum, passes) => sum + passes, 0))
        : [],
  };
}

function hitsOf(
  { db }: Place,
  columns: CaseColumns,
  { request, found, shown }: { request: SearchRequest; found: Found; shown: readonly number[] },
): SearchHit[] {
  const { tags, filters } = request;
  const asks = tags.length > 0 || asksOfFindings(filters);
  const fits = (terms: FindingTerms) =>
    tags.some((tag) => tagFits(tag, terms)) || findingPasses(filters, terms);
  return shown.flatMap((place): SearchHit[] => {
    const { row = -1, packRow = -1 } = columns.cases[place] ?? {};
    const [summary] = summariseCases(db, [row]);
    if (summary === undefined) return [];
    const findings = asks
      ? namedFindingsOf(db, { caseRow: row, packRow }).filter(({ terms }) => fits(terms))
      : [];
    return [
      {
        case: summary,
        excerpts: excerptsOf(db, columns, { place, text: found.text }),
        findings: findings.map(({ finding }) => finding),
        thumbnails: thumbnailsOf(db, { caseRow: row, most: mostThumbnails }),
      },
    ];
  });
}

/**
 * Part and kind of every finding in the library, with the number of cases that have it, those of most cases first;
 * named as the newest of these cases names them.
 */
export async function listKnownTags({ db }: Place): Promise<KnownTag[]> {
  const { columns } = await columnsOf(db);
  const labels = new Map(
    readTermLabels(db).map(({ packRow, list, term, label }) => [`${String(packRow)} ${list} ${term}`, label]),
  );
  return countTags(columns)
    .map(({ component, kind, cases, newestRow }): KnownTag => {
      const packRow = columns.cases[columns.placeOfRow[newestRow] ?? -1]?.packRow ?? 0;
      const labelOf = (list: string, term: string) =>
        labels.get(`${String(packRow)} ${list} ${term}`) ?? term;
      const componentLabel = labelOf('component', component);
      return { component, componentLabel, kind, kindLabel: labelOf('kind', kind), cases };
    })
    .sort(
      (one, other) =>
        other.cases - one.cases ||
        inOrder(one.componentLabel, other.componentLabel) ||
        inOrder(one.kindLabel, other.kindLabel),
    );
}

const inOrder = (one: string, other: string) => (one < other ? -1 : one > other ? 1 : 0);
