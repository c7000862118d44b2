/** Why a case was found: its identifiers, files and texts that fit, cut to a line each. */
import type { CaseColumns, KnownCase } from '#analysis/search/case-columns.ts';
import { excerptOf } from '#analysis/search/excerpt.ts';
import { exactFit, isNear, type Identifier } from '#analysis/search/identifier-fit.ts';
import { pagesACase } from '#analysis/search/text-match.ts';
import { plainIdentifier } from '#analysis/search/plain-identifier.ts';
import type { FoundExcerpt } from '#shared-types/search.ts';

import type { Db } from '../database/open-library.ts';
import { namedFinding } from '../database/repositories/search-tags.ts';
import { photoIdOf, readPage, type SearchDocument } from '../database/repositories/search-text.ts';
import type { MatchedText } from './case-search-found.ts';

const mostExcerpts = 3;
/** A case with a thousand captions has many pages. */
const mostPages = 8;

/** What fits in one case: identifiers before files before texts, in which every word that was typed turns up if it can. */
export function excerptsOf(
  db: Db,
  columns: CaseColumns,
  input: { place: number; text: MatchedText },
): FoundExcerpt[] {
  const { place, text } = input;
  const one = columns.cases[place];
  if (one === undefined || text.items.length === 0) return [];
  const typed = [text.text.whole, ...text.items.map(({ item }) => item.written)].map(plainIdentifier);
  const known = [
    ...identifierExcerpts(one.identifiers, typed),
    ...(text.files.get(one.row) ?? []).slice(0, 1).map(({ name, photoId }) => ({
      ...outsideFindings,
      where: 'photo-name' as const,
      excerpt: [{ text: name, matched: true }],
      photoId,
    })),
  ];
  return [...known, ...textExcerpts(db, one, text)].slice(0, mostExcerpts);
}

const outsideFindings = { near: false, presence: null, finding: null, photoId: null } as const;

function identifierExcerpts(identifiers: readonly Identifier[], typed: readonly string[]): FoundExcerpt[] {
  const exact = identifiers.filter((identifier) => typed.some((one) => exactFit(one, identifier) !== null));
  const near = identifiers.filter(
    (identifier) => !exact.includes(identifier) && typed.some((one) => isNear(one, identifier)),
  );
  return [
    ...exact.map((identifier) => ({ identifier, isNear: false })),
    // Where something is exactly what was typed, what is near to it says nothing more of this case.
    ...(exact.length > 0 ? [] : near.map((identifier) => ({ identifier, isNear: true }))),
  ].map(({ identifier, isNear: far }) => ({
    ...outsideFindings,
    where: identifier.kind,
    excerpt: [{ text: identifier.written, matched: !far }],
    near: far,
  }));
}

type Candidate = { readonly document: SearchDocument; readonly excerpt: FoundExcerpt['excerpt'] };

function textExcerpts(db: Db, { row: caseRow, packRow }: KnownCase, text: MatchedText): FoundExcerpt[] {
  const items = text.items.map(({ item }) => item);
  const pages = pagesOfCase(
    text.items.map(({ pages: all }) => all),
    caseRow,
  ).slice(0, mostPages);
  const missing = new Set(items.keys());
  const candidates: Candidate[] = [];
  const more: Candidate[] = [];
  for (const page of pages) {
    for (const document of readPage(db, page)) {
      const found = excerptOf([document.title, document.body], items);
      if (found === null) continue;
      const saysMore = [...found.items].filter((place) => missing.delete(place)).length > 0;
      (saysMore ? candidates : more).push({ document, excerpt: found.excerpt });
      if (missing.size === 0 && candidates.length + more.length >= mostExcerpts) break;
    }
    if (missing.size === 0 && candidates.length + more.length >= mostExcerpts) break;
  }
  return [...candidates, ...more].slice(0, mostExcerpts).map(({ document, excerpt }) => {
    const { subject, row } = document;
    const finding = subject === 'finding' ? (namedFinding(db, packRow, row)?.finding ?? null) : null;
    return {
      ...outsideFindings,
      where: subject,
      excerpt,
      finding,
      presence: finding?.presence ?? null,
      photoId: subject === 'photo' ? photoIdOf(db, row) : null,
    };
  });
}

/** Pages of one case out of lists in rising order, each once: a page's number begins with its case's row. */
function pagesOfCase(lists: readonly (readonly number[])[], caseRow: number): number[] {
  const [first, behind] = [caseRow * pagesACase, (caseRow + 1) * pagesACase];
  const found = new Set<number>();
  for (const pages of lists) {
    for (let place = firstFrom(pages, first); ; place += 1) {
      const page = pages[place];
      if (page === undefined || page >= behind) break;
      found.add(page);
    }
  }
  return [...found].sort((one, other) => one - other);
}

/** Place of the first number that is not below `least`. */
function firstFrom(rising: readonly number[], least: number): number {
  let [from, to] = [0, rising.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((rising[middle] ?? 0) < least) from = middle + 1;
    else to = middle;
  }
  return from;
}
