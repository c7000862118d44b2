/** Turns what the system says about a file into the errors a user can act on. */
import { AppError } from '#shared-types/errors.ts';
import { diskReasons } from '#shared-types/texts/disk.ts';

/** The system's name for an error (ENOSPC, say), or null where it has none. */
export function systemCode(error: unknown): string | null {
  if (!(error instanceof Error) || !('code' in error)) return null;
  // Neither this program's own codes (disk-full) nor Node's for wrong use (ERR_INVALID_ARG_TYPE).
  return typeof error.code === 'string' && /^E[A-Z0-9]+$/.test(error.code) ? error.code : null;
}

/** The catalogue's words for a system's error name. */
export function diskReason(code: string): string {
  const known = Object.hasOwn(diskReasons, code) ? diskReasons[code as keyof typeof diskReasons] : null;
  return (known ?? diskReasons.other).replace('{code}', code);
}

/**
 * `disk-full` or `disk-refused` for an error while `what` was being written; anything else comes back as it is.
 * A quota that is used up counts as a full disk.
 */
export function asDiskError(error: unknown, what: string): unknown {
  const code = systemCode(error);
  if (code === 'ENOSPC' || code === 'EDQUOT') {
    return new AppError('disk-full', { what }, { retryable: true, cause: error });
  }
  if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM') {
    return new AppError('disk-refused', { what, reason: diskReason(code) }, { cause: error });
  }
  return error;
}

/** For an error while the user's file `name` was being read: `file-unreadable` with the system's reason. */
export function asSourceError(error: unknown, name: string): unknown {
  const code = systemCode(error);
  return code === null
    ? error
    : new AppError('file-unreadable', { name, reason: diskReason(code) }, { cause: error });
}
