/** Finds cases again: by what was written in them, by serial and part numbers, by damage tags; the answer is by case. */
import type { SearchAnswer, SearchHit, SearchRequest } from '#shared-types/search.ts';

import { summariseCases } from '../database/repositories/cases.ts';
import { casesWithTag, findingsWithTag, thumbnailsOf } from '../database/repositories/search-tags.ts';
import {
  casesWithIdentifier,
  casesWithWord,
  identifierExcerpts,
  wordExcerpts,
} from '../database/repositories/search-text.ts';
import type { Services } from './services.ts';

const mostHits = 100;
const mostExcerpts = 3;
const mostThumbnails = 4;

/** What an identifier that fits is worth more than any word: see CaseFit. */
const identifierScore = -100;
const wholeIdentifierScore = -1_000;

/**
 * A case is found when each word of the text stands somewhere in it, be it in its claim, a caption or a finding, or in
 * one of its identifiers; or when the whole text stands in an identifier; and when each tag fits one of its findings.
 * Best first; by tags alone, the newest first.
 */
export function searchCases({ db }: Pick<Services, 'db'>, request: SearchRequest): SearchAnswer {
  const text = readText(request.text);
  if (text.words.length === 0 && request.tags.length === 0) return { hits: [], total: 0 };
  const byTag = request.tags.map((tag) => casesWithTag(db, tag));
  const inOrder = text.words.length === 0 ? (byTag[0] ?? []) : casesWithText(db, text);
  const tagged = byTag.map((rows) => new Set(rows));
  const found = inOrder.filter((row) => tagged.every((rows) => rows.has(row)));
  const shown = found.slice(0, mostHits);
  const excerpts = excerptsByCase(db, text, shown);
  const hits = summariseCases(db, shown).map((summary, index): SearchHit => {
    const caseRow = shown[index] ?? -1;
    return {
      case: summary,
      excerpts: (excerpts.get(caseRow) ?? [])
        .slice(0, mostExcerpts)
        .map(({ subject, excerpt, presence }) => ({ where: subject, excerpt, presence })),
      findings: request.tags.flatMap((tag) => findingsWithTag(db, { caseRow, tag })).filter(firstOfItsId),
      thumbnails: thumbnailsOf(db, { caseRow, most: mostThumbnails }),
    };
  });
  return { hits, total: found.length };
}

type SearchText = { readonly whole: string; readonly words: readonly string[] };

/**
 * The text as it is looked up: composed letters, no control characters, each word once. A word is what stands between
 * spaces and has a letter or digit in it; the index makes nothing of the rest.
 */
function readText(text: string): SearchText {
  const whole = text
    .toWellFormed()
    .normalize('NFC')
    .replaceAll(/\p{Cc}+/gu, ' ')
    .trim();
  const words = whole
    .toLowerCase()
    .split(/\s+/u)
    .filter((word) => /[\p{L}\p{N}]/u.test(word));
  return { whole, words: [...new Set(words)] };
}

function casesWithText(db: Services['db'], { whole, words }: SearchText): number[] {
  const [first = new Map<number, number>(), ...others] = words.map((word) => fitsOfWord(db, word));
  const scores = new Map<number, number>();
  for (const [row, score] of first) {
    const rest = others.map((fits) => fits.get(row));
    if (rest.every((one) => one !== undefined)) {
      scores.set(
        row,
        rest.reduce((sum, one) => sum + one, score),
      );
    }
  }
  for (const row of casesWithIdentifier(db, whole)) {
    scores.set(row, (scores.get(row) ?? 0) + wholeIdentifierScore);
  }
  return [...scores]
    .sort(([row, score], [other, others]) => score - others || other - row)
    .map(([row]) => row);
}

/** Scores by case row. */
function fitsOfWord(db: Services['db'], word: string): Map<number, number> {
  const scores = new Map(casesWithWord(db, word).map(({ caseRow, score }) => [caseRow, score]));
  for (const row of casesWithIdentifier(db, word)) scores.set(row, identifierScore);
  return scores;
}

/** Identifiers that fit stand before words that fit. */
function excerptsByCase(db: Services['db'], { whole, words }: SearchText, caseRows: readonly number[]) {
  const parts = [...new Set([whole, ...words])];
  return Map.groupBy(
    [
      ...identifierExcerpts(db, { caseRows, parts }),
      ...wordExcerpts(db, { caseRows, words, most: mostExcerpts }),
    ],
    (match) => match.caseRow,
  );
}

function firstOfItsId<Item extends { findingId: string }>(
  item: Item,
  index: number,
  all: readonly Item[],
): boolean {
  return all.findIndex((other) => other.findingId === item.findingId) === index;
}
