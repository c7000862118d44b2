/** Identifiers of all cases, so that a few of them need a closer look and not each. */
import { isNear, type Identifier } from './identifier-fit.ts';
import { oneEditApart, shortestNear } from './near-identifier.ts';

export type IdentifierIndex = {
  /** By the plain identifier or piece: places of the cases that have it, each as often as they do. */
  readonly owners: Map<string, number[]>;
  /** Identifiers and pieces by their length and a half of them: see halvesOf. */
  readonly byHalf: Map<string, Set<string>>;
  /** By place, what a case is called, all in one line. */
  readonly lines: string[];
  /** All lines in one text, and where each begins in it; null while it has to be put together again. */
  whole: { readonly text: string; readonly starts: Int32Array } | null;
};

export function createIdentifierIndex(): IdentifierIndex {
  return { owners: new Map(), byHalf: new Map(), lines: [], whole: null };
}

/** No identifier has it: it ends a line and parts what stands in it. */
const [lineEnd, apart] = ['\n', '\t'];

function keysOf(identifiers: readonly Identifier[]): string[] {
  return identifiers
    .flatMap(({ plain, pieces }) => (pieces.length > 1 ? [plain, ...pieces] : [plain]))
    .filter((key) => key.length >= shortestNear);
}

/**
 * The first and the last characters of a text that is held against identifiers of this length: one of both is alike
 * wherever one edit was made. With a = floor((length - 1) / 2) an edit behind the first a characters leaves those; one
 * among them, and be it the swap of the a-th with the next, leaves length - a - 1 >= a at the end.
 */
function halvesOf(text: string, length: number): [string, string] {
  const half = Math.floor((length - 1) / 2);
  return [`${length}<${text.slice(0, half)}`, `${length}>${text.slice(text.length - half)}`];
}

export function addIdentifiers(
  index: IdentifierIndex,
  identifiers: readonly Identifier[],
  place: number,
): void {
  index.lines[place] = identifiers.map(({ plain }) => plain).join(apart);
  index.whole = null;
  for (const key of keysOf(identifiers)) {
    const places = index.owners.get(key);
    if (places !== undefined) {
      places.push(place);
      continue;
    }
    index.owners.set(key, [place]);
    for (const half of halvesOf(key, key.length)) {
      const keys = index.byHalf.get(half);
      if (keys === undefined) index.byHalf.set(half, new Set([key]));
      else keys.add(key);
    }
  }
}

export function removeIdentifiers(
  index: IdentifierIndex,
  identifiers: readonly Identifier[],
  place: number,
): void {
  for (const key of keysOf(identifiers)) {
    const places = index.owners.get(key);
    if (places === undefined) continue;
    places.splice(places.indexOf(place), 1);
    if (places.length > 0) continue;
    index.owners.delete(key);
    for (const half of halvesOf(key, key.length)) index.byHalf.get(half)?.delete(key);
  }
}

/** Places of the cases that have this somewhere in an identifier, in rising order. @param typed plain, not empty */
export function placesContaining(index: IdentifierIndex, typed: string): number[] {
  const { text, starts } = (index.whole ??= joined(index.lines));
  const places: number[] = [];
  let place = 0;
  for (let at = text.indexOf(typed); at !== -1; at = text.indexOf(typed, starts[place] ?? text.length)) {
    // Lines are passed over one by one from the last that had it: they are many, but each is passed once.
    while ((starts[place + 1] ?? Infinity) <= at) place += 1;
    places.push(place);
    place += 1;
  }
  return places;
}

function joined(lines: readonly string[]): { text: string; starts: Int32Array } {
  const starts = new Int32Array(lines.length);
  let at = 0;
  for (const [place, line] of lines.entries()) {
    starts[place] = at;
    at += line.length + 1;
  }
  return { text: lines.join(lineEnd), starts };
}

/** Places of the cases with an identifier, or a piece of one, that is one edit away. @param typed plain */
export function placesNear(index: IdentifierIndex, typed: string): Set<number> {
  const found = new Set<number>();
  if (typed.length < shortestNear - 1) return found;
  for (const length of [typed.length - 1, typed.length, typed.length + 1]) {
    for (const half of halvesOf(typed, length)) {
      for (const key of index.byHalf.get(half) ?? []) {
        if (!oneEditApart(typed, key)) continue;
        for (const place of index.owners.get(key) ?? []) found.add(place);
      }
    }
  }
  return found;
}

/** True where one of these is near. @param typed plain */
export function anyNear(typed: string, identifiers: readonly Identifier[], serialsOnly: boolean): boolean {
  return identifiers.some(
    (identifier) => (!serialsOnly || identifier.kind === 'serial') && isNear(typed, identifier),
  );
}
