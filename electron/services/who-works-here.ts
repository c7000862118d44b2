import { AppError } from '#shared-types/errors.ts';
import type { Analyst } from '#shared-types/analyst.ts';

import type { Db } from '../database/open-library.ts';
import { findAnalyst } from '../database/repositories/analysts.ts';
import { readSettings } from '../database/repositories/settings.ts';

/** The analyst at the workstation now. @throws AppError analyst-needed before the first one is entered */
export function whoWorksHere(db: Db): Analyst {
  const id = readSettings(db).currentAnalystId;
  const analyst = id === null ? null : findAnalyst(db, id);
  if (!analyst) throw new AppError('analyst-needed');
  return analyst;
}
