/**
 * Cases by what was typed, the best first. A word weighs as much as it is rare, more where it stands in the case's own
 * words than in a caption, more where it stands whole than where it only begins. Identifiers weigh more than any word,
 * those that are only near less than any.
 */
import { newestFirst, type CaseColumns } from './case-columns.ts';
import { exactFit, type IdentifierFit } from './identifier-fit.ts';
import { anyNear, placesContaining, placesNear } from './identifier-index.ts';
import { plainIdentifier } from './plain-identifier.ts';
import { goesOn, type SearchItem, type SearchText } from './search-text.ts';

/** What the library's index answers. */
export type TextIndex = {
  /** Pages on which the item stands, in rising order; `whole`: its last word does not go on. */
  pagesWith(item: SearchItem, whole: boolean): readonly number[];
  /** Rows of cases that have a photo from a file of this name, with or without its ending. */
  casesWithFile(name: string): readonly number[];
};

/** Numbers that the pages of one case can have; see migrations/0003-search.sql. */
export const pagesACase = 1_024;

const caseRowOf = (page: number) => Math.floor(page / pagesACase);
const subjectOf = (page: number) => Math.floor(page / 256) % 4;

/** By subject: the case, its findings, its photos, its parties and custody. */
const weightOfSubject = [3, 2, 1, 2] as const;
const weightWhole = 1.5;
const weightOfFit = { whole: 1_000, beginning: 300, inside: 150, near: 0.01 } as const satisfies Record<
  IdentifierFit,
  number
>;
const weightOfFile = 100;

export type MatchedItem = {
  readonly item: SearchItem;
  /** Pages on which it stands, in rising order. */
  readonly pages: readonly number[];
  /** How well each case fits, by its place; 0 where it does not. */
  readonly scores: Float64Array;
  /** Cases that fit. */
  readonly cases: number;
};

export type TextMatch = {
  readonly items: readonly MatchedItem[];
  /** Places of the cases that fit, the best first and of equals the newest. */
  readonly places: readonly number[];
};

/**
 * A case fits when every item does; or when all of the text is one of its identifiers, or near one.
 * @param items of the text, each by matchItem
 */
export function matchText(
  columns: CaseColumns,
  index: TextIndex,
  text: SearchText,
  items: readonly MatchedItem[],
): TextMatch {
  const scores = new Float64Array(columns.cases.length);
  if (items.length > 0) {
    for (let place = 0; place < scores.length; place += 1) {
      let sum = 0;
      for (const item of items) {
        const score = item.scores[place] ?? 0;
        if (score === 0) {
          sum = 0;
          break;
        }
        sum += score;
      }
      scores[place] = sum;
    }
  }
  // One item is the whole text already.
  if (text.items.length > 1 && text.items.every(({ phrase }) => !phrase)) {
    const whole = new Float64Array(columns.cases.length);
    for (const row of index.casesWithFile(text.whole)) raise(columns, whole, row, weightOfFile);
    scoreIdentifiers(columns, text.whole, whole, countOf(scores) === 0);
    for (const [place, score] of whole.entries()) if (score > 0) scores[place] = (scores[place] ?? 0) + score;
  }
  const places = newestFirst(columns).filter((place) => (scores[place] ?? 0) > 0);
  places.sort((one, other) => (scores[other] ?? 0) - (scores[one] ?? 0));
  return { items, places };
}

export function matchItem(columns: CaseColumns, index: TextIndex, item: SearchItem): MatchedItem {
  const scores = new Float64Array(columns.cases.length);
  const pages = scoreWords(columns, index, item, scores);
  for (const row of index.casesWithFile(item.written)) raise(columns, scores, row, weightOfFile);
  scoreIdentifiers(columns, item.written, scores, countOf(scores) === 0);
  return { item, pages, scores, cases: countOf(scores) };
}

/** Of a word on more pages it is not asked where it stands whole: that would tell the cases apart by little. */
const mostPagesAskedTwice = 10_000;

function scoreWords(
  columns: CaseColumns,
  index: TextIndex,
  item: SearchItem,
  scores: Float64Array,
): readonly number[] {
  const pages = index.pagesWith(item, false);
  raisePages(columns, scores, pages, 1);
  if (goesOn(item) && pages.length > 0 && pages.length <= mostPagesAskedTwice) {
    raisePages(columns, scores, index.pagesWith(item, true), weightWhole);
  }
  const rare = rarity(countOf(scores), scores.length);
  for (let place = 0; place < scores.length; place += 1) scores[place] = (scores[place] ?? 0) * rare;
  return pages;
}

/** @param pages in rising order: those of one case follow each other */
function raisePages(
  columns: CaseColumns,
  scores: Float64Array,
  pages: readonly number[],
  weight: number,
): void {
  let row = -1;
  let place = -1;
  for (const page of pages) {
    if (caseRowOf(page) !== row) {
      row = caseRowOf(page);
      place = columns.placeOfRow[row] ?? -1;
    }
    const score = weight * (weightOfSubject[subjectOf(page)] ?? 1);
    if (place !== -1 && (scores[place] ?? 0) < score) scores[place] = score;
  }
}

function countOf(scores: Float64Array): number {
  let count = 0;
  for (const score of scores) if (score > 0) count += 1;
  return count;
}

/**
 * Inverse document frequency as in S. Robertson and H. Zaragoza, "The Probabilistic Relevance Framework: BM25 and
 * Beyond" (2009), formula from memory; 1 is added under the logarithm, so that a word of every case still counts.
 */
export function rarity(having: number, of: number): number {
  return Math.log(1 + (of - having + 0.5) / (having + 0.5));
}

/**
 * An identifier that is near counts where nothing fits as it was typed, and for serial numbers also below the one that
 * was typed whole: two units' numbers that one slip tells apart may be one unit's.
 */
function scoreIdentifiers(
  columns: CaseColumns,
  written: string,
  scores: Float64Array,
  nothingElse: boolean,
): void {
  const typed = plainIdentifier(written);
  if (typed === '') return;
  let found = false;
  let wholeSerial = false;
  for (const place of placesContaining(columns.identifiers, typed)) {
    for (const identifier of columns.cases[place]?.identifiers ?? []) {
      const fit = exactFit(typed, identifier);
      if (fit === null) continue;
      found = true;
      wholeSerial ||= fit === 'whole' && identifier.kind === 'serial' && identifier.plain === typed;
      scores[place] = Math.max(scores[place] ?? 0, weightOfFit[fit]);
    }
  }
  const serialsOnly = found || !nothingElse;
  if (serialsOnly && !wholeSerial) return;
  for (const place of placesNear(columns.identifiers, typed)) {
    if ((scores[place] ?? 0) > 0) continue;
    if (anyNear(typed, columns.cases[place]?.identifiers ?? [], serialsOnly))
      scores[place] = weightOfFit.near;
  }
}

function raise(columns: CaseColumns, scores: Float64Array, row: number, to: number): void {
  const place = columns.placeOfRow[row];
  if (place !== undefined && (scores[place] ?? 0) < to) scores[place] = to;
}
