import type { Analyst, AnalystDraft } from '#shared-types/analyst.ts';
import type { AnalystId } from '#shared-types/ids.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, rowAtRevision } from './written-row.ts';

type Row = { uuid: string; name: string; qualification: string; revision: number };

const toAnalyst = (row: Row): Analyst => ({
  id: row.uuid as AnalystId,
  name: row.name,
  qualification: row.qualification,
  revision: row.revision,
});

const columns = 'uuid, name, qualification, revision';

export function listAnalysts(db: Db): Analyst[] {
  return db.prepare<[], Row>(`SELECT ${columns} FROM analyst ORDER BY name, id`).all().map(toAnalyst);
}

export function findAnalyst(db: Db, id: AnalystId): Analyst | null {
  const row = db.prepare<[string], Row>(`SELECT ${columns} FROM analyst WHERE uuid = ?`).get(id);
  return row ? toAnalyst(row) : null;
}

export function addAnalyst(db: Db, input: { id: AnalystId; draft: AnalystDraft }): void {
  const result = db
    .prepare('INSERT INTO analyst (uuid, name, qualification, revision) VALUES (?, ?, ?, 1)')
    .run(input.id, input.draft.name, input.draft.qualification);
  assertOneRow(result, 'analyst added');
}

export function changeAnalyst(
  db: Db,
  input: { id: AnalystId; revision: number; fields: AnalystDraft },
): void {
  const row = rowAtRevision(db, 'analyst', input.id, input.revision);
  const result = db
    .prepare('UPDATE analyst SET name = ?, qualification = ?, revision = revision + 1 WHERE id = ?')
    .run(input.fields.name, input.fields.qualification, row);
  assertOneRow(result, 'analyst changed');
}
