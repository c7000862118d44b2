import { keepPreviousData, useQuery, type UseQueryResult } from '@tanstack/react-query';
import type { LookedFor, SearchCounts } from '#shared-types/search.ts';
import { call } from '../api/client.ts';

/** This page among all that may be open. */
const asker = crypto.randomUUID();

/** The program was asked something newer meanwhile. */
class Overtaken extends Error {}

const mostTries = 3;

/**
 * How many cases each filter would leave. What is counted for an older request is given up by the program as soon as
 * a newer one comes; it is asked again if this page comes back to it.
 */
export function useCounts(asked: LookedFor): UseQueryResult<SearchCounts> {
  return useQuery<SearchCounts>({
    queryKey: ['search.counts', asked],
    queryFn: async ({ signal }) => {
      const counts = await call('search.counts', { ...asked, asker });
      // Left alone by now: nobody waits for it, and nothing is kept of it.
      signal.throwIfAborted();
      if (counts === null) throw new Overtaken();
      return counts;
    },
    retry: (failures, error) => error instanceof Overtaken && failures < mostTries,
    retryDelay: 0,
    placeholderData: keepPreviousData,
  });
}
