/** Identifiers of all cases, so that a few of them need a closer look and not each. */
import { isNear, type Identifier } from './identifier-fit.ts';
import { oneEditApart, shortestNear } from './near-identifier.ts';

export type IdentifierIndex = {
  /**
   * By length, then by the plain identifier or piece: places of the cases that have it, each as often as they do. One
   * that is near is as long, or one longer or shorter.
   */
  readonly byLength: Map<number, Map<string, number[]>>;
  /** By place, what a case is called, all in one line. */
  readonly lines: string[];
  /** All lines in one text, and where each begins in it; null while it has to be put together again. */
  whole: { readonly text: string; readonly starts: Int32Array } | null;
};

export function createIdentifierIndex(): IdentifierIndex {
  return { byLength: new Map(), lines: [], whole: null };
}

/** No identifier has it: it ends a line and parts what stands in it. */
const [lineEnd, apart] = ['\n', '\t'];

function keysOf(identifiers: readonly Identifier[]): string[] {
  return identifiers
    .flatMap(({ plain, pieces }) => (pieces.length > 1 ? [plain, ...pieces] : [plain]))
    .filter((key) => key.length >= shortestNear);
}

export function addIdentifiers(
  index: IdentifierIndex,
  identifiers: readonly Identifier[],
  place: number,
): void {
  index.lines[place] = identifiers.map(({ plain }) => plain).join(apart);
  index.whole = null;
  for (const key of keysOf(identifiers)) {
    const known = index.byLength.get(key.length) ?? new Map<string, number[]>();
    index.byLength.set(key.length, known);
    const places = known.get(key);
    if (places === undefined) known.set(key, [place]);
    else places.push(place);
  }
}

export function removeIdentifiers(
  index: IdentifierIndex,
  identifiers: readonly Identifier[],
  place: number,
): void {
  for (const key of keysOf(identifiers)) {
    const known = index.byLength.get(key.length);
    const places = known?.get(key);
    if (known === undefined || places === undefined) continue;
    places.splice(places.indexOf(place), 1);
    if (places.length === 0) known.delete(key);
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
    index.byLength.get(length)?.forEach((places, key) => {
      if (oneEditApart(typed, key)) for (const place of places) found.add(place);
    });
  }
  return found;
}

/** True where one of these is near. @param typed plain */
export function anyNear(typed: string, identifiers: readonly Identifier[], serialsOnly: boolean): boolean {
  return identifiers.some(
    (identifier) => (!serialsOnly || identifier.kind === 'serial') && isNear(typed, identifier),
  );
}
