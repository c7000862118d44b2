/** Words that were typed, taken for a damage tag where they are exactly the words of one. */
import { damageClasses, presences, type DamageClass, type Presence } from '#shared-types/finding.ts';
import type { DamageTag, KnownTag } from '#shared-types/search.ts';

import { foldedWords } from './folded-words.ts';

export type UnderstoodTag = {
  readonly tag: DamageTag;
  /** What else was typed. */
  readonly rest: string;
  /** The words that it was understood from, to be looked for as they are: those of part and kind as phrases. */
  readonly asWords: string;
};

/** How a class or a presence is typed. */
export type TypedNames = {
  readonly classes: Readonly<Record<DamageClass, readonly string[]>>;
  readonly presences: Readonly<Record<Presence, readonly string[]>>;
};

type Sense = { readonly field: 'component' | 'kind' | 'class' | 'presence'; readonly value: string };
type Name = Sense & { readonly words: readonly string[] };
type TypedWord = { readonly written: string; readonly word: string; readonly place: number };

/** Nothing but a damage was typed: a part and a kind, with nothing left over. Anything else may be meant as words. */
export function isWholeDamage({ tag, rest }: UnderstoodTag): boolean {
  return tag.component !== null && tag.kind !== null && rest === '';
}

/**
 * The longest names first: "shaft nut" is not the shaft. What stands in quotes is left as it is. Null where no part or
 * kind is named in full, or where no finding of the library has the part and the kind together.
 */
export function understoodTag(
  text: string,
  known: readonly KnownTag[],
  names: TypedNames,
): UnderstoodTag | null {
  const pieces = text
    .split(/("[^"]*"|“[^”]*”)/u)
    .flatMap((piece) => (/^["“]/u.test(piece) ? [piece] : piece.split(/\s+/u)));
  const written = pieces.filter((piece) => piece !== '');
  const typed = written.flatMap((piece, place): TypedWord[] =>
    /^["“]/u.test(piece) ? [] : foldedWords(piece).map((word) => ({ written: piece, word, place })),
  );
  const used = new Map<number, Sense['field']>();
  const found = new Map<Sense['field'], string>();
  for (const name of namesOf(known, names)) {
    if (found.has(name.field)) continue;
    const at = placeOfName(typed, used, name.words);
    if (at === -1) continue;
    for (let place = at; place < at + name.words.length; place += 1) used.set(place, name.field);
    found.set(name.field, name.value);
  }
  const [component, kind] = [found.get('component') ?? null, found.get('kind') ?? null];
  const carried = known.some(
    (tag) => (component === null || tag.component === component) && (kind === null || tag.kind === kind),
  );
  if ((component === null && kind === null) || !carried) return null;
  const usedPieces = new Set([...used.keys()].map((place) => typed[place]?.place));
  return {
    tag: {
      component,
      kind,
      zone: null,
      class: damageClasses.find((one) => one === found.get('class')) ?? null,
      presence: presences.find((one) => one === found.get('presence')) ?? null,
    },
    rest: written.filter((_, place) => !usedPieces.has(place)).join(' '),
    asWords: asWords(typed, used),
  };
}

function namesOf(known: readonly KnownTag[], { classes, presences: typedPresences }: TypedNames): Name[] {
  const name = (field: Sense['field'], value: string, label: string): Name => ({
    field,
    value,
    words: foldedWords(label),
  });
  const all = [
    ...known.flatMap((tag) => [
      name('component', tag.component, tag.componentLabel),
      name('kind', tag.kind, tag.kindLabel),
    ]),
    ...Object.entries(classes).flatMap(([value, words]) => words.map((one) => name('class', value, one))),
    ...Object.entries(typedPresences).flatMap(([value, words]) =>
      words.map((one) => name('presence', value, one)),
    ),
  ];
  return all
    .filter(({ words }) => words.length > 0)
    .sort((one, other) => other.words.length - one.words.length);
}

/** Where the words of a name stand side by side and none is used yet; -1 where they do not. */
function placeOfName(
  typed: readonly TypedWord[],
  used: ReadonlyMap<number, unknown>,
  words: readonly string[],
): number {
  return typed.findIndex((_, at) =>
    words.every((word, offset) => typed[at + offset]?.word === word && !used.has(at + offset)),
  );
}

function asWords(typed: readonly TypedWord[], used: ReadonlyMap<number, Sense['field']>): string {
  const phrases: { field: Sense['field']; words: string[] }[] = [];
  for (const [place, field] of [...used].sort(([one], [other]) => one - other)) {
    const word = typed[place]?.word ?? '';
    const last = phrases.at(-1);
    if (last?.field === field) last.words.push(word);
    else phrases.push({ field, words: [word] });
  }
  return phrases
    .map(({ field, words }) =>
      field === 'component' || field === 'kind' ? `"${words.join(' ')}"` : words.join(' '),
    )
    .join(' ');
}
