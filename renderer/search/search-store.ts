/** What is being looked for. It outlives the search screen, so that "back" from a case finds it again. */
import { create } from 'zustand';
import type { DamageClass, Presence } from '#shared-types/finding.ts';
import type { DamageTag, SearchRequest } from '#shared-types/search.ts';

export type ChosenTag = DamageTag & { readonly key: number };

type SearchStore = {
  readonly text: string;
  readonly tags: readonly ChosenTag[];
  readonly nextKey: number;
};

export const useSearchStore = create<SearchStore>(() => ({ text: '', tags: [], nextKey: 1 }));

export const mostTags = 12;
export const longestText = 400;

export function lookForText(text: string): void {
  useSearchStore.setState({ text: text.slice(0, longestText) });
}

/** Adds a damage; the words that led to it are used up. */
export function lookForTag(tag: DamageTag): void {
  useSearchStore.setState(({ tags, nextKey }) =>
    tags.length >= mostTags || tags.some((chosen) => sameTag(chosen, tag))
      ? { text: '' }
      : { text: '', tags: [...tags, { ...tag, key: nextKey }], nextKey: nextKey + 1 },
  );
}

export function narrowTag(key: number, to: { class?: DamageClass | null; presence?: Presence | null }): void {
  useSearchStore.setState(({ tags }) => ({
    tags: tags.map((tag) => (tag.key === key ? { ...tag, ...to } : tag)),
  }));
}

export function leaveOutTag(key: number): void {
  useSearchStore.setState(({ tags }) => ({ tags: tags.filter((tag) => tag.key !== key) }));
}

export function lookForNothing(): void {
  useSearchStore.setState({ text: '', tags: [] });
}

/** The request, or null where nothing is looked for. */
export function searchRequest(text: string, tags: readonly ChosenTag[]): SearchRequest | null {
  if (text.trim() === '' && tags.length === 0) return null;
  return {
    text: text.trim(),
    tags: tags.map((chosen) => ({
      component: chosen.component,
      zone: chosen.zone,
      kind: chosen.kind,
      class: chosen.class,
      presence: chosen.presence,
    })),
  };
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
