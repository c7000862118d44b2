/** Text round what was found, for one line on the screen. */
import type { Excerpt } from '#shared-types/search.ts';

import { fold, foldWords } from './folded-words.ts';
import { goesOn, type SearchItem } from './search-text.ts';

/** Words of a field that are shown when it is longer. */
const wordsShown = 16;
const wordsBefore = 4;

/** Stands between the fields of a document; see migrations/0003-search.sql. */
const fieldEnd = '\uE000';

export type CutExcerpt = {
  readonly excerpt: Excerpt;
  /** Places of the items that stand anywhere in the document. */
  readonly items: ReadonlySet<number>;
};

/**
 * The field of a document in which most of the items stand, cut round the first of them; null where none stands in any.
 * @param parts title and body as the index has them
 */
export function excerptOf(parts: readonly string[], items: readonly SearchItem[]): CutExcerpt | null {
  const found = new Set<number>();
  let best: { field: string; spans: readonly Span[]; items: number } | null = null;
  for (const part of parts) {
    // A glance tells most documents apart from those that are worth cutting into words.
    const folded = fold(part);
    const here = items.flatMap((item, place) =>
      folded.includes(item.words[0] ?? '') ? [{ item, place }] : [],
    );
    if (here.length === 0) continue;
    for (const field of part.split(fieldEnd).map((one) => one.trim())) {
      const spans = spansIn(field, here);
      const places = new Set(spans.map(({ place }) => place));
      for (const place of places) found.add(place);
      if (places.size > (best?.items ?? 0)) best = { field, spans, items: places.size };
    }
  }
  return best === null ? null : { excerpt: cut(best.field, best.spans), items: found };
}

type Span = { readonly start: number; readonly end: number; readonly place: number };

/** In the order of the text. */
function spansIn(field: string, items: readonly { item: SearchItem; place: number }[]): Span[] {
  const words = foldWords(field);
  const spans: Span[] = [];
  for (const [at, { start }] of words.entries()) {
    for (const { item, place } of items) {
      const last = words[at + item.words.length - 1];
      const fits = item.words.every((word, offset) => {
        const there = words[at + offset]?.word;
        const open = offset === item.words.length - 1 && goesOn(item);
        return open ? there?.startsWith(word) === true : there === word;
      });
      if (fits && last !== undefined) spans.push({ start, end: last.end, place });
    }
  }
  return spans;
}

function cut(field: string, spans: readonly Span[]): Excerpt {
  const words = foldWords(field);
  const [first] = spans;
  if (first === undefined) return [];
  const at = words.findIndex(({ start }) => start === first.start);
  const whole = words.length <= wordsShown;
  const from = whole ? 0 : Math.max(0, Math.min(at - wordsBefore, words.length - wordsShown));
  const lastWord = whole ? words.length - 1 : Math.min(words.length - 1, from + wordsShown - 1);
  const begins = from === 0 ? 0 : (words[from]?.start ?? 0);
  const ends = lastWord === words.length - 1 ? field.length : (words[lastWord]?.end ?? field.length);
  const pieces: { text: string; matched: boolean }[] = [];
  const add = (text: string, matched: boolean) => {
    if (text !== '') pieces.push({ text, matched });
  };
  let done = begins;
  add(from === 0 ? '' : '…', false);
  for (const { start, end } of spans) {
    const [here, there] = [Math.max(start, done), Math.min(end, ends)];
    if (there <= here) continue;
    add(field.slice(done, here), false);
    add(field.slice(here, there), true);
    done = there;
  }
  add(field.slice(done, ends), false);
  add(ends === field.length ? '' : '…', false);
  return pieces;
}
