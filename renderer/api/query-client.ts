import { QueryClient } from '@tanstack/react-query';
import { AppError } from '#shared-types/errors.ts';

/**
 * Answers stay good until an event says otherwise, so nothing is read again merely because time passed
 * or the window came to the front.
 */
export const queryClient = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: Infinity,
      refetchOnWindowFocus: false,
      refetchOnReconnect: false,
      networkMode: 'always',
      retry: (failures, error) => failures < 2 && error instanceof AppError && error.retryable,
    },
    mutations: { networkMode: 'always', retry: false },
  },
});
