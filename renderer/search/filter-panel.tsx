import { useState } from 'react';
import { filterNames, type LookedFor, type SearchFilters } from '#shared-types/search.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { Button } from '../ui/button.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorState } from '../ui/error-state.tsx';
import { FilterGroup } from './filter-group.tsx';
import { focusFirstHit } from './hit-list.tsx';
import { chooseNoFilter, filtersChosen } from './search-store.ts';
import { useCounts } from './use-counts.ts';

/** Filters that count. On a narrow window they fold away behind one button. */
export function FilterPanel({ asked, filters }: { asked: LookedFor; filters: SearchFilters }) {
  const [open, setOpen] = useState(false);
  const counts = useCounts(asked);
  const chosen = filtersChosen(filters);
  return (
    <section
      className={classNames('filters', open && 'filters-open')}
      aria-label={searchTexts.filtersTitle}
      aria-busy={counts.isFetching}
    >
      <div className="filters-head">
        <Button className="filters-fold" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? searchTexts.filtersShown : searchTexts.filtersHidden(chosen)}
        </Button>
        <h2>{searchTexts.filtersTitle}</h2>
        {chosen === 0 ? null : (
          <Button kind="quiet" aria-label={searchTexts.clearFiltersLabel} onClick={chooseNoFilter}>
            {searchTexts.clearFilters}
          </Button>
        )}
        <button type="button" className="filters-skip" onClick={() => focusFirstHit()}>
          {searchTexts.toHits}
        </button>
      </div>
      <div className="filters-body">
        {counts.error === null ? null : (
          <ErrorState inline error={counts.error} onRetry={() => void counts.refetch()} />
        )}
        {filterNames.map((name) => (
          <FilterGroup key={name} name={name} counts={counts.data?.[name]} chosen={filters[name] ?? []} />
        ))}
        {counts.data !== undefined && filterNames.every((name) => counts.data[name].values.length === 0) ? (
          <p className="panel-note">{searchTexts.noValues}</p>
        ) : null}
      </div>
    </section>
  );
}
