import { useMemo } from 'react';
import { understoodTag } from '#analysis/search/understood-tag.ts';
import { filterNames, type KnownTag, type SearchFilters, type UnderstoodWord } from '#shared-types/search.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { Button } from '../ui/button.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { valueLabel } from './filter-words.ts';
import {
  leaveOutFilter,
  leaveOutTag,
  lookForText,
  lookForUnderstood,
  type ChosenTag,
} from './search-store.ts';
import type { TagLabels } from './tag-offer.ts';

const texts = searchTexts.nothing;

type Part = {
  readonly key: string;
  readonly what: string;
  readonly cases: number | null;
  readonly leaveOut: () => void;
};

/** No case fits: what was understood, part by part, and what is near to it. */
export function NoHits(props: {
  text: string;
  tags: readonly ChosenTag[];
  filters: SearchFilters;
  words: readonly UnderstoodWord[];
  casesOfTags: readonly number[];
  known: readonly KnownTag[];
  labels: TagLabels;
}) {
  const { text, tags, filters, words, casesOfTags, known, labels } = props;
  const damage = useMemo(() => understoodTag(text, known, searchTexts.typedNames), [text, known]);
  const without = (word: UnderstoodWord) =>
    words
      .filter((one) => one !== word)
      .map((one) => (one.phrase ? `"${one.written}"` : one.written))
      .join(' ');
  const parts: Part[] = [
    ...words.map((word, place) => ({
      key: `word-${place}`,
      what: word.phrase ? texts.phrase(word.written) : texts.word(word.written),
      cases: word.cases,
      leaveOut: () => lookForText(without(word)),
    })),
    ...tags.map((tag, place) => ({
      key: `tag-${tag.key}`,
      what: labels.tag(tag),
      cases: casesOfTags[place] ?? null,
      leaveOut: () => leaveOutTag(tag.key),
    })),
    ...filterNames.flatMap((name): Part[] => {
      const chosen: readonly string[] = filters[name] ?? [];
      if (chosen.length === 0) return [];
      const values = chosen.map((value) => valueLabel(name, { value, label: labels.of(name, value) }));
      const what = texts.filter(searchTexts.filters[name], values.join(', '));
      return [{ key: `filter-${name}`, what, cases: null, leaveOut: () => leaveOutFilter(name) }];
    }),
  ];
  const near = words.flatMap((word) => word.near.map((offer) => ({ word, offer })));

  return (
    <EmptyState title={texts.title}>
      <p>{texts.understood}</p>
      <ul className="understood">
        {parts.map(({ key, what, cases, leaveOut }) => (
          <li key={key}>
            <span>{what}</span>
            <span className="secondary-words">
              {cases === null ? null : searchTexts.casesWithTag(numberText(cases), cases === 1)}
            </span>
            <Button kind="quiet" aria-label={texts.leaveOutLabel(what)} onClick={leaveOut}>
              {texts.leaveOut}
            </Button>
          </li>
        ))}
      </ul>
      {damage === null ? null : (
        <p>
          <Button onClick={() => lookForUnderstood(damage)}>{texts.asDamage(labels.tag(damage.tag))}</Button>
        </p>
      )}
      {near.length === 0 ? null : (
        <>
          <p>{texts.near}</p>
          <ul className="near-offers">
            {near.map(({ word, offer }) => (
              <li key={`${word.written} ${offer.kind} ${offer.written}`}>
                <Button onClick={() => lookForText(`${without(word)} ${offer.written}`.trim())}>
                  {texts.nearOffer(
                    searchTexts.identifiers[offer.kind],
                    offer.written,
                    searchTexts.casesWithTag(numberText(offer.cases), offer.cases === 1),
                  )}
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
      <p>{texts.words}</p>
    </EmptyState>
  );
}
