import { keepPreviousData, useInfiniteQuery } from '@tanstack/react-query';
import type { AppError } from '#shared-types/errors.ts';
import type { LookedFor, SearchAnswer, SearchHit, UnderstoodWord } from '#shared-types/search.ts';
import { call } from '../api/client.ts';

export type Hits = {
  /** What was answered so far; undefined until there is an answer, or where nothing is asked. */
  readonly found:
    | {
        readonly hits: readonly SearchHit[];
        readonly total: number;
        readonly words: readonly UnderstoodWord[];
        readonly casesOfTags: readonly number[];
      }
    | undefined;
  readonly error: AppError | null;
  /** The answer shown is to an earlier request; the one to the newest is awaited. */
  readonly behind: boolean;
  readonly loadingMore: boolean;
  readonly loadMore: () => void;
  readonly again: () => void;
};

/** The cases found, page after page; null asks nothing. */
export function useHits(asked: LookedFor | null): Hits {
  const query = useInfiniteQuery<
    SearchAnswer,
    AppError,
    { pages: SearchAnswer[] },
    readonly unknown[],
    number
  >({
    queryKey: ['search.cases', asked],
    queryFn: ({ pageParam }) =>
      call('search.cases', { ...(asked ?? { text: '', tags: [] }), from: pageParam }),
    initialPageParam: 0,
    getNextPageParam: (last, pages) => {
      const listed = pages.reduce((sum, page) => sum + page.hits.length, 0);
      return last.hits.length > 0 && listed < last.total ? listed : undefined;
    },
    enabled: asked !== null,
    placeholderData: keepPreviousData,
  });
  const pages = query.data?.pages ?? [];
  const [first] = pages;
  return {
    found:
      asked === null || first === undefined
        ? undefined
        : { ...first, total: pages.at(-1)?.total ?? 0, hits: eachOnce(pages.flatMap((page) => page.hits)) },
    error: query.error,
    behind: query.isPlaceholderData,
    loadingMore: query.isFetchingNextPage,
    loadMore: () => {
      if (query.hasNextPage && !query.isFetching) void query.fetchNextPage();
    },
    again: () => void query.refetch(),
  };
}

/** Between two pages a case may have come in before the others, and stand on both. */
function eachOnce(hits: readonly SearchHit[]): readonly SearchHit[] {
  return [...new Map(hits.map((hit) => [hit.case.id, hit])).values()];
}
