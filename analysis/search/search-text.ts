/** What was typed into the box over all cases, as it is looked for. */
import { foldedWords } from './folded-words.ts';

export type SearchItem = {
  /** As it was typed, without the quotes round a phrase. */
  readonly written: string;
  /** Its words without accents and capitals: a word with hyphens has several, and they stand side by side. */
  readonly words: readonly string[];
  /** In quotes: these words whole and in this order. Otherwise the last word may go on. */
  readonly phrase: boolean;
};

export type SearchText = {
  /** All of it, for identifiers with spaces in them. */
  readonly whole: string;
  readonly items: readonly SearchItem[];
};

/** Straight or typographic, in pairs. */
const quotes = /"([^"]*)"|“([^”“]*)[”“]|„([^“”]*)[“”]|«([^»]*)»/gu;

/**
 * Composed letters, no control characters, each item once. An item is what stands in quotes, or between spaces; it has
 * a letter or digit in it: the index makes nothing of the rest.
 */
export function readSearchText(text: string): SearchText {
  const whole = text
    .toWellFormed()
    .normalize('NFC')
    // U+E000 stands between the documents of a page; see migrations/0003-search.sql.
    .replaceAll(/[\p{Cc}\uE000]+/gu, ' ')
    .trim();
  const items: SearchItem[] = [];
  let end = 0;
  for (const match of whole.matchAll(quotes)) {
    items.push(...looseItems(whole.slice(end, match.index)));
    // One group a kind of quotes; those of the other kinds are empty.
    const written = match.slice(1).join('').trim();
    items.push({ written, words: foldedWords(written), phrase: true });
    end = match.index + match[0].length;
  }
  items.push(...looseItems(whole.slice(end)));
  const seen = new Set<string>();
  const once = items.filter((item) => {
    const key = JSON.stringify([item.phrase, item.written.toLowerCase()]);
    if (item.words.length === 0 || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return { whole, items: once };
}

function looseItems(text: string): SearchItem[] {
  return text
    .split(/\s+/u)
    .filter((word) => /[\p{L}\p{N}]/u.test(word))
    .map((word) => ({ written: trimmed(word), words: foldedWords(word), phrase: false }));
}

/** Without what stands before the first and behind the last letter or digit. */
const trimmed = (word: string) => word.replaceAll(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}\p{M}]+$/gu, '');

/** One letter alone begins half of all words: it must be the word. */
const shortestBeginning = 2;

/** True where the last word of the item is found in every word that begins with it. */
export function goesOn(item: SearchItem): boolean {
  return !item.phrase && (item.words.at(-1)?.length ?? 0) >= shortestBeginning;
}
