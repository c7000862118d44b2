/** What is being looked for. It outlives the search screen, so that "back" from a case finds it again. */
import { create } from 'zustand';
import type { UnderstoodTag } from '#analysis/search/understood-tag.ts';
import type { DamageClass, Presence } from '#shared-types/finding.ts';
import {
  filterNames,
  type DamageTag,
  type FilterName,
  type LookedFor,
  type SearchFilters,
} from '#shared-types/search.ts';

export type ChosenTag = DamageTag & {
  readonly key: number;
  /** The words that it was taken from; null where it was chosen. */
  readonly asWords: string | null;
};

type SearchStore = {
  readonly text: string;
  readonly tags: readonly ChosenTag[];
  readonly filters: SearchFilters;
  readonly nextKey: number;
};

const nothing = { text: '', tags: [], filters: {} } as const satisfies Partial<SearchStore>;

export const useSearchStore = create<SearchStore>(() => ({ ...nothing, nextKey: 1 }));

export const mostTags = 12;
export const longestText = 400;

export function lookForText(text: string): void {
  useSearchStore.setState({ text: text.slice(0, longestText) });
}

/** Keeps the words alone. */
export function forgetChoices(): void {
  useSearchStore.setState({ tags: [], filters: {} });
}

/** Adds a damage; the words that led to it are used up. */
export function lookForTag(tag: DamageTag): void {
  addTag(tag, { text: '', asWords: null });
}

/** Takes what was typed as it was understood: the damage as a tag, the rest as words. */
export function lookForUnderstood({ tag, rest, asWords }: UnderstoodTag): void {
  addTag(tag, { text: rest, asWords });
}

/** Looks for this damage and nothing else. */
export function lookForTagAlone(tag: DamageTag): void {
  useSearchStore.setState(nothing);
  lookForTag(tag);
}

function addTag(tag: DamageTag, { text, asWords }: { text: string; asWords: string | null }): void {
  useSearchStore.setState(({ tags, nextKey }) =>
    tags.length >= mostTags || tags.some((chosen) => sameTag(chosen, tag))
      ? { text }
      : { text, tags: [...tags, { ...tag, key: nextKey, asWords }], nextKey: nextKey + 1 },
  );
}

export function narrowTag(key: number, to: { class?: DamageClass | null; presence?: Presence | null }): void {
  useSearchStore.setState(({ tags }) => ({
    // Narrowed by hand it is no more what was typed.
    tags: tags.map((tag) => (tag.key === key ? { ...tag, ...to, asWords: null } : tag)),
  }));
}

export function leaveOutTag(key: number): void {
  useSearchStore.setState(({ tags }) => ({ tags: tags.filter((tag) => tag.key !== key) }));
}

/** Gives up a damage that was taken from words, and looks for the words. */
export function lookForWordsOf({ key, asWords }: ChosenTag): void {
  useSearchStore.setState(({ text, tags }) => ({
    text: `${asWords ?? ''} ${text}`.trim().slice(0, longestText),
    tags: tags.filter((tag) => tag.key !== key),
  }));
}

/** Chooses a value of a filter, or gives it up. A year and one of its quarters are never chosen together. */
export function chooseFilter(name: FilterName, value: string, chosen: boolean): void {
  useSearchStore.setState(({ filters }) => {
    const before: readonly string[] = filters[name] ?? [];
    const kept = before.filter((one) => one !== value && !(name === 'period' && isPartOf(one, value)));
    // The values come out of the program's own counts, each of its filter's kind.
    return { filters: { ...filters, [name]: chosen ? [...kept, value] : kept } };
  });
}

const isPartOf = (one: string, other: string) => one.startsWith(`${other}-`) || other.startsWith(`${one}-`);

export function chooseNoFilter(): void {
  useSearchStore.setState({ filters: {} });
}

/** Gives up all values of one filter. */
export function leaveOutFilter(name: FilterName): void {
  useSearchStore.setState(({ filters }) => ({ filters: { ...filters, [name]: [] } }));
}

export function lookForNothing(): void {
  useSearchStore.setState(nothing);
}

export function filtersChosen(filters: SearchFilters): number {
  return filterNames.reduce((sum, name) => sum + (filters[name]?.length ?? 0), 0);
}

/** What the program is asked for. Filters of which nothing is chosen are left out: the same is asked in the same words. */
export function lookedFor(text: string, tags: readonly ChosenTag[], filters: SearchFilters): LookedFor {
  return {
    text: text.trim(),
    tags: tags.map((chosen) => ({
      component: chosen.component,
      zone: chosen.zone,
      kind: chosen.kind,
      class: chosen.class,
      presence: chosen.presence,
    })),
    filters: Object.fromEntries(
      filterNames.flatMap((name) => {
        const values = filters[name] ?? [];
        return values.length === 0 ? [] : [[name, values]];
      }),
    ),
  };
}

export function asksForNothing({ text, tags, filters }: LookedFor): boolean {
  return text === '' && tags.length === 0 && filtersChosen(filters) === 0;
}

function sameTag(a: DamageTag, b: DamageTag): boolean {
  return (
    a.component === b.component &&
    a.zone === b.zone &&
    a.kind === b.kind &&
    a.class === b.class &&
    a.presence === b.presence
  );
}
