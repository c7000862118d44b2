import { useMemo } from 'react';
import { searchTexts } from '#shared-types/texts/search.ts';
import { useAnswer } from '../api/queries.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { ChosenTags } from './chosen-tags.tsx';
import { HitEntry } from './hit-entry.tsx';
import { lookForNothing, searchRequest, useSearchStore } from './search-store.ts';
import './search-screen.css';
import { useSettledValue } from './settled-value.ts';
import { tagLabels } from './tag-offer.ts';

const typingPauseMs = 150;

/** What was found, by case. The box to type in is the one in the header. */
export function SearchScreen() {
  const text = useSettledValue(
    useSearchStore((store) => store.text),
    typingPauseMs,
  );
  const tags = useSearchStore((store) => store.tags);
  const known = useAnswer('search.known-tags', {}).data;
  const labels = useMemo(() => tagLabels(known ?? []), [known]);
  const request = searchRequest(text, tags);
  const answer = useAnswer('search.cases', request, { keepPrevious: true });
  const shown = request === null ? undefined : answer.data;

  return (
    <div className="screen search-screen">
      <div className="screen-head">
        <h1>{searchTexts.title}</h1>
        <p className="secondary-words" role="status">
          {shown === undefined
            ? ''
            : searchTexts.resultCount(numberText(shown.hits.length), numberText(shown.total))}
        </p>
        {request === null ? null : (
          <div className="screen-head-actions">
            <Button kind="quiet" onClick={lookForNothing}>
              {searchTexts.clear}
            </Button>
          </div>
        )}
      </div>
      {tags.length === 0 ? null : <ChosenTags tags={tags} labels={labels} />}
      {request === null ? (
        <EmptyState title={searchTexts.begin.title}>
          <p>{searchTexts.begin.words}</p>
          <p>{searchTexts.begin.examples}</p>
        </EmptyState>
      ) : answer.error !== null ? (
        <ErrorState error={answer.error} onRetry={() => void answer.refetch()} />
      ) : shown === undefined ? (
        <BusyState />
      ) : shown.hits.length === 0 ? (
        <EmptyState title={searchTexts.nothing.title}>
          <p>{searchTexts.nothing.words}</p>
        </EmptyState>
      ) : (
        <ol className="hits">
          {shown.hits.map((hit) => (
            <HitEntry key={hit.case.id} hit={hit} />
          ))}
        </ol>
      )}
    </div>
  );
}
