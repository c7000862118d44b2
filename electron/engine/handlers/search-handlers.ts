import { countFilters } from '../../services/case-search-counts.ts';
import { listKnownTags, searchCases } from '../../services/case-search.ts';
import type { Handlers } from './handler-types.ts';

export const searchHandlers = {
  'search.cases': searchCases,
  'search.counts': countFilters,
  'search.known-tags': listKnownTags,
} satisfies Partial<Handlers>;
