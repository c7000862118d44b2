/** Reading and sending from components. A key is [channel, request]: event-intake.ts knows no other. */
import {
  keepPreviousData,
  useMutation,
  useQuery,
  type UseMutationResult,
  type UseQueryResult,
} from '@tanstack/react-query';
import type { Channel, RequestOf, ResponseOf } from '#shared-types/api-contract.ts';
import type { AppError } from '#shared-types/errors.ts';
import { call } from './client.ts';
import { queryClient } from './query-client.ts';

export type AnswerKey<C extends Channel> = readonly [C, RequestOf<C>];

/**
 * The program's answer to a request, kept until an event makes it stale. Pass null to ask nothing yet.
 * With `keepPrevious` the answer to the last request stays while the one to a new request is awaited.
 */
export function useAnswer<C extends Channel>(
  channel: C,
  request: RequestOf<C> | null,
  options: { keepPrevious?: boolean } = {},
): UseQueryResult<ResponseOf<C>, AppError> {
  return useQuery<ResponseOf<C>, AppError>({
    queryKey: [channel, request],
    queryFn: () => call(channel, request as RequestOf<C>),
    enabled: request !== null,
    ...(options.keepPrevious === true ? { placeholderData: keepPreviousData } : {}),
  });
}

/** Sends a request on demand: `send.mutate(request)`, or `await send.mutateAsync(request)`. */
export function useSend<C extends Channel>(
  channel: C,
): UseMutationResult<ResponseOf<C>, AppError, RequestOf<C>> {
  return useMutation<ResponseOf<C>, AppError, RequestOf<C>>({
    mutationFn: (request) => call(channel, request),
  });
}

/** Puts an answer that a write has just brought in place of the one that was read earlier. */
export function putAnswer<C extends Channel>(channel: C, request: RequestOf<C>, answer: ResponseOf<C>): void {
  queryClient.setQueryData([channel, request], answer);
}

/** Marks a channel's answers stale; those on screen are read again. Without a request: all of the channel. */
export function readAgain<C extends Channel>(channel: C, request?: RequestOf<C>): Promise<void> {
  return queryClient.invalidateQueries({ queryKey: request === undefined ? [channel] : [channel, request] });
}
