import Database from 'better-sqlite3';
import { accessSync, constants, existsSync } from 'node:fs';

import { AppError } from '#shared-types/errors.ts';

import { asDiskError } from '../files/disk-error.ts';

/**
 * Why a database of the library could not be opened or made ready, by SQLite's codes: https://sqlite.org/rescode.html
 * @param place the database's file and the library's folder
 */
export function openingError(error: unknown, place: { file: string; folder: string }): AppError {
  const { file, folder } = place;
  const code = error instanceof Database.SqliteError ? error.code : '';
  const reason = error instanceof Error ? error.message : String(error);
  if (code === 'SQLITE_NOTADB') return new AppError('library-not-ours', { file }, { cause: error });
  if (code === 'SQLITE_FULL') return new AppError('disk-full', { what: file }, { cause: error });
  // A file that may only be read opens all the same, and refuses the first write.
  if (/^SQLITE_(READONLY|CANTOPEN|PERM)/.test(code)) {
    return new AppError('disk-refused', { what: file, reason }, { cause: error });
  }
  const seen = asDiskError(error, file);
  return seen instanceof AppError
    ? seen
    : new AppError('library-damaged', { folder, reason }, { cause: error });
}

/**
 * SQLite opens a file that may only be read, and takes its lock for no more than reading: such a one is refused here.
 * @throws AppError as openingError() answers it
 */
export function openToWrite(place: { file: string; folder: string }, timeout: number): Database.Database {
  try {
    if (existsSync(place.file)) accessSync(place.file, constants.R_OK | constants.W_OK);
    return new Database(place.file, { timeout });
  } catch (error) {
    throw openingError(error, place);
  }
}
