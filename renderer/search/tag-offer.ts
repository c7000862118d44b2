/** Which damages are offered for what was typed. */
import type { DamageClass, Presence } from '#shared-types/finding.ts';
import type { DamageTag, FilterName, KnownTag } from '#shared-types/search.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { searchTexts } from '#shared-types/texts/search.ts';

export type TagOffer = {
  readonly tag: DamageTag;
  readonly label: string;
  /** How many cases carry it; null where that is not known before looking. */
  readonly cases: number | null;
};

const mostOffers = 12;
const mostExact = 8;
/** One letter offers half the list; two begin to mean something. */
const fewestLetters = 2;
const fewestNarrowing = 3;

const classes = Object.keys(commonTexts.damageClasses) as DamageClass[];
const presenceWords: readonly (readonly [string, Presence])[] = [
  ['absent', 'looked-for-absent'],
  ['present', 'present'],
  ['not-examined', 'not-examined'],
  ['unexamined', 'not-examined'],
];

/** Words typed, and what some of them were taken for. */
type Reading = {
  readonly words: readonly string[];
  readonly class: DamageClass | null;
  readonly presence: Presence | null;
};

/**
 * Every word typed must begin a word of the part or of the damage. A word that begins the name of a class or of
 * a presence may narrow the offer instead: "heat tint prim". Those that more cases carry come first.
 */
export function offersFor(typed: string, known: readonly KnownTag[]): readonly TagOffer[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const plain: Reading = { words, class: null, presence: null };
  const narrowed = narrowedReading(words);
  const readings = narrowed === null ? [plain] : [plain, narrowed];
  return readings.flatMap((reading) => offersOf(reading, known)).slice(0, mostOffers);
}

function narrowedReading(words: readonly string[]): Reading | null {
  const begun = (name: string) =>
    words.find((word) => word.length >= fewestNarrowing && name.startsWith(word));
  const damageClass = classes.find((name) => begun(name) !== undefined) ?? null;
  const presence = presenceWords.find(([name]) => begun(name) !== undefined) ?? null;
  if (damageClass === null && presence === null) return null;
  const usedUp = [damageClass, presence?.[0]].map((name) => (name ? begun(name) : undefined));
  return {
    words: words.filter((word) => !usedUp.includes(word)),
    class: damageClass,
    presence: presence?.[1] ?? null,
  };
}

function offersOf(reading: Reading, known: readonly KnownTag[]): readonly TagOffer[] {
  const { words, ...narrowing } = reading;
  if (words.join('').length < fewestLetters) return [];
  const suffix = [
    narrowing.class === null ? null : commonTexts.damageClasses[narrowing.class],
    narrowing.presence === null ? null : commonTexts.presences[narrowing.presence],
  ];
  const offer = (component: string | null, kind: string | null, label: string, cases: number | null) => ({
    tag: { component, kind, zone: null, ...narrowing },
    label: [label, ...suffix].filter(Boolean).join(', '),
    cases: narrowing.class === null && narrowing.presence === null ? cases : null,
  });

  const exact = known
    .filter((tag) => fits(words, `${tag.componentLabel} ${tag.kindLabel}`))
    .sort((a, b) => b.cases - a.cases)
    .map((tag) =>
      offer(tag.component, tag.kind, searchTexts.tag(tag.componentLabel, tag.kindLabel), tag.cases),
    );
  const anywhere = severalOf(known, (tag) => tag.kind)
    .filter((tag) => fits(words, tag.kindLabel))
    .map((tag) => offer(null, tag.kind, searchTexts.tag(searchTexts.anyPart, tag.kindLabel), null));
  const whatever = severalOf(known, (tag) => tag.component)
    .filter((tag) => fits(words, tag.componentLabel))
    .map((tag) => offer(tag.component, null, searchTexts.tag(tag.componentLabel, searchTexts.anyKind), null));
  return [...exact.slice(0, mostExact), ...anywhere.slice(0, 2), ...whatever.slice(0, 2)];
}

function fits(words: readonly string[], label: string): boolean {
  const begins = label.toLowerCase().split(/[\s,()/-]+/);
  return words.every((word) => begins.some((begin) => begin.startsWith(word)));
}

/** One tag of each group that has at least two. */
function severalOf(known: readonly KnownTag[], group: (tag: KnownTag) => string): readonly KnownTag[] {
  const byGroup = Map.groupBy(known, group);
  return [...byGroup.values()].flatMap((tags) => (tags.length > 1 && tags[0] !== undefined ? [tags[0]] : []));
}

export type TagLabels = {
  readonly component: (id: string) => string;
  readonly kind: (id: string) => string;
  /** A value of a filter; only parts and kinds are called otherwise than they are. */
  readonly of: (filter: FilterName, value: string) => string;
  readonly tag: (tag: DamageTag) => string;
};

/** Labels of parts and damages by id, from the tags that are known; an unknown id is read as words. */
export function tagLabels(known: readonly KnownTag[]): TagLabels {
  const components = new Map(known.map((tag) => [tag.component, tag.componentLabel]));
  const kinds = new Map(known.map((tag) => [tag.kind, tag.kindLabel]));
  const component = (id: string) => components.get(id) ?? wordsOf(id);
  const kind = (id: string) => kinds.get(id) ?? wordsOf(id);
  return {
    component,
    kind,
    of: (filter, value) =>
      filter === 'component' ? component(value) : filter === 'kind' ? kind(value) : value,
    tag: (tag) =>
      [
        searchTexts.tag(
          tag.component === null ? searchTexts.anyPart : component(tag.component),
          tag.kind === null ? searchTexts.anyKind : kind(tag.kind),
        ),
        ...(tag.class === null ? [] : [commonTexts.damageClasses[tag.class]]),
        ...(tag.presence === null ? [] : [commonTexts.presences[tag.presence]]),
      ].join(', '),
  };
}

/** An id of the machine kind's data as words: `leading-edge` becomes "leading edge". */
export function wordsOf(id: string): string {
  return id.replaceAll('-', ' ');
}
