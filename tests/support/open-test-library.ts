/** A real library in a temporary folder, with the program's own migrations, closed when the test ends. */
import { onTestFinished } from 'vitest';

import type { CaseId } from '#shared-types/ids.ts';
import type { Instant } from '#shared-types/times.ts';

import { openLibrary, type Db } from '../../electron/database/open-library.ts';
import { shippedPath } from '../../electron/processes/entry-table.ts';
import { temporaryFolder } from './temporary-folder.ts';

export const testInstant = '2026-03-04T09:15:00.000Z' as Instant;
export const migrationsFolder = shippedPath('migrations');

export function openTestLibrary(folder = temporaryFolder()): Db {
  const { db } = openLibrary({ folder, migrationsFolder, now: () => testInstant });
  onTestFinished(() => {
    db.close();
  });
  return db;
}

/** Ids that a test can read: `testId(7)` is the same everywhere. */
export function testId<Id extends string = CaseId>(number: number): Id {
  return `00000000-0000-4000-8000-${String(number).padStart(12, '0')}` as Id;
}
