import { AppError } from '#shared-types/errors.ts';

import { asDiskError } from '../files/disk-error.ts';

/**
 * What a caller is told of an error: an expected one as it is, a full or refusing disk as that, and a fault of the
 * program without its insides, which are for the log.
 * @param what is being written, as the user knows it
 */
export function toldError(error: unknown, what: string): AppError {
  const seen = isFullDatabase(error)
    ? new AppError('disk-full', { what }, { retryable: true, cause: error })
    : asDiskError(error, what);
  return seen instanceof AppError ? seen : new AppError('unexpected', {}, { cause: error });
}

/** SQLite's code for a write that found no room: https://sqlite.org/rescode.html#full */
function isFullDatabase(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'SQLITE_FULL';
}
