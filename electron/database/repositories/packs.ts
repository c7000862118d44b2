import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow } from './written-row.ts';

export type KeptPack = { readonly sha256: string; readonly content: string; readonly version: string };

/** Keeps a machine kind as it is now, once; answers its row. */
export function keepPack(db: Db, input: { pack: KnowledgePack; sha256: string; content: string }): number {
  const { pack, sha256, content } = input;
  const known = db
    .prepare<[string, string, string], number>(
      'SELECT id FROM pack WHERE pack_id = ? AND version = ? AND sha256 = ?',
    )
    .pluck()
    .get(pack.id, pack.version, sha256);
  if (known !== undefined) return known;
  const result = db
    .prepare('INSERT INTO pack (pack_id, version, sha256, label, content) VALUES (?, ?, ?, ?, ?)')
    .run(pack.id, pack.version, sha256, pack.label, content);
  assertOneRow(result, 'pack kept');
  const row = Number(result.lastInsertRowid);
  keepTerms(db, row, pack);
  return row;
}

function keepTerms(db: Db, row: number, pack: KnowledgePack): void {
  const insert = db.prepare(
    'INSERT INTO pack_term (pack_row, list, owner, term, label) VALUES (?, ?, ?, ?, ?)',
  );
  for (const component of pack.components) {
    insert.run(row, 'component', '', component.id, component.label);
    for (const zone of component.zones) insert.run(row, 'zone', component.id, zone.id, zone.label);
  }
  for (const kind of pack.kinds) insert.run(row, 'kind', '', kind.id, kind.label);
  for (const position of pack.positions) insert.run(row, 'position', '', position.id, position.label);
}

/** The kept text with this SHA-256, or null. */
export function readKeptContent(db: Db, sha256: string): string | null {
  return (
    db.prepare<[string], string>('SELECT content FROM pack WHERE sha256 = ? LIMIT 1').pluck().get(sha256) ??
    null
  );
}

/** The newest kept text of a machine kind at a version, or null. */
export function readKeptPack(db: Db, input: { id: string; version: string }): KeptPack | null {
  const row = db
    .prepare<[string, string], KeptPack>(
      'SELECT sha256, content, version FROM pack WHERE pack_id = ? AND version = ? ORDER BY id DESC',
    )
    .get(input.id, input.version);
  return row ?? null;
}
