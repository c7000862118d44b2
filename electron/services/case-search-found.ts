/** Which cases fit what is looked for, in their order; kept for a while, as the next page and the counts ask for it too. */
import { asksAnything, passingFilters, passingTag } from '#analysis/search/case-filters.ts';
import { newestFirst, type CaseColumns } from '#analysis/search/case-columns.ts';
import { readSearchText, type SearchText } from '#analysis/search/search-text.ts';
import {
  matchItem,
  matchText,
  type MatchedItem,
  type TextIndex,
  type TextMatch,
} from '#analysis/search/text-match.ts';
import type { LookedFor } from '#shared-types/search.ts';

import type { Db } from '../database/open-library.ts';
import { pagesWith, photosFromFile, type NamedPhoto } from '../database/repositories/search-text.ts';
import type { KeptColumns } from './case-search-columns.ts';

export type MatchedText = TextMatch & {
  readonly text: SearchText;
  /** Photos found by the name of their file. */
  readonly files: ReadonlyMap<number, readonly NamedPhoto[]>;
};

export type Found = {
  readonly text: MatchedText;
  /** Places of the cases that fit text and tags. */
  readonly beforeFilters: readonly number[];
  /** Places of those that pass the filters too, the best first, without text the newest. */
  readonly places: readonly number[];
};

type Remembered = {
  readonly line: number;
  readonly items: Map<string, MatchedItem>;
  readonly texts: Map<string, MatchedText>;
  readonly found: Map<string, Found>;
};
const memories = new WeakMap<Db, Remembered>();
/** Two pages that look for different things do not drive each other out. */
const mostRemembered = 4;
/** A word stays while the next is typed. */
const mostItems = 16;

export function findCases(db: Db, { columns, line }: KeptColumns, lookedFor: LookedFor): Found {
  const memory = memoryOf(db, line);
  const { text, tags, filters } = lookedFor;
  return remembered(memory.found, JSON.stringify([text, tags, filters]), mostRemembered, () => {
    const matched = remembered(memory.texts, text, mostRemembered, () =>
      matchTyped(db, columns, memory, text),
    );
    // A text of which nothing can be looked for asks for nothing.
    const begin = matched.text.items.length === 0 ? newestFirst(columns) : matched.places;
    const beforeFilters = tags.reduce<readonly number[]>((places, tag) => {
      const passing = passingTag(columns, tag);
      return places.filter((place) => passing[place] === 1);
    }, begin);
    const passing = asksAnything(filters) ? passingFilters(columns, filters) : null;
    const places = passing === null ? beforeFilters : beforeFilters.filter((place) => passing[place] === 1);
    return { text: matched, beforeFilters, places };
  });
}

function memoryOf(db: Db, line: number): Remembered {
  const known = memories.get(db);
  if (known?.line === line) return known;
  const fresh: Remembered = { line, items: new Map(), texts: new Map(), found: new Map() };
  memories.set(db, fresh);
  return fresh;
}

function remembered<Value>(memory: Map<string, Value>, key: string, most: number, make: () => Value): Value {
  const known = memory.get(key) ?? make();
  // What was asked for last is forgotten last.
  memory.delete(key);
  memory.set(key, known);
  const [oldest] = memory.keys();
  if (memory.size > most && oldest !== undefined) memory.delete(oldest);
  return known;
}

function matchTyped(db: Db, columns: CaseColumns, memory: Remembered, typed: string): MatchedText {
  const text = readSearchText(typed);
  const index: TextIndex = {
    pagesWith: (item, whole) => pagesWith(db, item, whole),
    casesWithFile: (name) => photosFromFile(db, name).map(({ caseRow }) => caseRow),
  };
  const items = text.items.map((item) =>
    remembered(memory.items, JSON.stringify([item.phrase, item.written]), mostItems, () =>
      matchItem(columns, index, item),
    ),
  );
  const names = new Set([text.whole, ...text.items.map(({ written }) => written)]);
  const files = [...names].flatMap((name) => photosFromFile(db, name));
  return {
    ...matchText(columns, index, text, items),
    text,
    files: Map.groupBy(files, ({ caseRow }) => caseRow),
  };
}
