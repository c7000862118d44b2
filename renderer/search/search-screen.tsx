import { useMemo } from 'react';
import { searchTexts } from '#shared-types/texts/search.ts';
import { useAnswer } from '../api/queries.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { classNames } from '../ui/class-names.ts';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { ChosenTags } from './chosen-tags.tsx';
import { FilterPanel } from './filter-panel.tsx';
import { HitList } from './hit-list.tsx';
import { NoHits } from './no-hits.tsx';
import { asksForNothing, lookedFor, lookForNothing, useSearchStore } from './search-store.ts';
import './search-screen.css';
import { useSettledText } from './settled-value.ts';
import { tagLabels } from './tag-offer.ts';
import { useHits } from './use-hits.ts';

const typingPauseMs = 150;

/** What was found, by case, and filters that count. The box to type in is the one in the header. */
export function SearchScreen() {
  const typed = useSearchStore((store) => store.text);
  const tags = useSearchStore((store) => store.tags);
  const filters = useSearchStore((store) => store.filters);
  // Words that went into a damage are gone at once: the damage is never looked for together with them.
  const text = useSettledText(typed, tags, typingPauseMs);
  const known = useAnswer('search.known-tags', {}).data;
  const labels = useMemo(() => tagLabels(known ?? []), [known]);
  const asked = useMemo(() => lookedFor(text, tags, filters), [text, tags, filters]);
  const asksNothing = asksForNothing(asked);
  const { found, error, behind, loadingMore, loadMore, again } = useHits(asksNothing ? null : asked);

  return (
    <div className="screen search-screen">
      <div className="screen-head">
        <h1>{searchTexts.title}</h1>
        <p className="secondary-words" role="status">
          {found === undefined
            ? ''
            : searchTexts.resultCount(numberText(found.hits.length), numberText(found.total))}
        </p>
        {found === undefined || found.hits.length === 0 ? null : (
          <p className="secondary-words">{searchTexts.keysHint}</p>
        )}
        {asksNothing ? null : (
          <div className="screen-head-actions">
            <Button kind="quiet" onClick={lookForNothing}>
              {searchTexts.clear}
            </Button>
          </div>
        )}
      </div>
      {tags.length === 0 ? null : <ChosenTags tags={tags} labels={labels} />}
      <div className="search-body">
        <FilterPanel asked={asked} filters={filters} />
        <section
          className={classNames('search-found', behind && 'search-behind')}
          aria-label={searchTexts.hits}
          aria-busy={behind}
        >
          {asksNothing ? (
            <EmptyState title={searchTexts.begin.title}>
              {searchTexts.begin.words.map((words) => (
                <p key={words}>{words}</p>
              ))}
            </EmptyState>
          ) : error !== null && found === undefined ? (
            <ErrorState error={error} onRetry={again} />
          ) : found === undefined ? (
            <BusyState />
          ) : found.total === 0 ? (
            <NoHits
              {...{ text, tags, filters, labels, known: known ?? [] }}
              words={found.words}
              casesOfTags={found.casesOfTags}
            />
          ) : (
            <>
              {error === null ? null : <ErrorState inline error={error} onRetry={again} />}
              <HitList hits={found.hits} total={found.total} loadingMore={loadingMore} onMore={loadMore} />
            </>
          )}
        </section>
      </div>
    </div>
  );
}
