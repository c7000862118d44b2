import { AppError } from '#shared-types/errors.ts';
import type { AnalystId } from '#shared-types/ids.ts';
import type { Settings, SettingsFields } from '#shared-types/settings.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, rowOf } from './written-row.ts';

type Row = {
  theme: SettingsFields['theme'];
  paper: SettingsFields['paper'];
  length_unit: SettingsFields['lengthUnit'];
  analyst: string | null;
  revision: number;
};

export function readSettings(db: Db): Settings {
  const row = db
    .prepare<[], Row>(
      `SELECT s.theme, s.paper, s.length_unit, a.uuid AS analyst, s.revision
       FROM setting s LEFT JOIN analyst a ON a.id = s.current_analyst_id WHERE s.id = 1`,
    )
    .get();
  if (!row) throw new Error('the library has lost its settings row');
  return {
    theme: row.theme,
    paper: row.paper,
    lengthUnit: row.length_unit,
    currentAnalystId: row.analyst as AnalystId | null,
    revision: row.revision,
  };
}

/** @throws AppError stale-revision, not-found (analyst) */
export function writeSettings(db: Db, input: { revision: number; fields: SettingsFields }): void {
  const { fields } = input;
  const analyst = fields.currentAnalystId === null ? null : rowOf(db, 'analyst', fields.currentAnalystId);
  if (readSettings(db).revision !== input.revision) {
    throw new AppError('stale-revision', { thing: 'setting' }, { retryable: true });
  }
  const result = db
    .prepare(
      `UPDATE setting SET theme = ?, paper = ?, length_unit = ?, current_analyst_id = ?, revision = revision + 1
       WHERE id = 1`,
    )
    .run(fields.theme, fields.paper, fields.lengthUnit, analyst);
  assertOneRow(result, 'settings changed');
}
