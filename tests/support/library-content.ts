/** Everything a library says, table by table: two that are equal hold the same. */
import type { Db } from '../../electron/database/open-library.ts';

export type LibraryContent = Readonly<Record<string, readonly unknown[]>>;

/** The tables of our own, in the order of their rows; what the full text index keeps for itself is left out. */
export function libraryContent(db: Db): LibraryContent {
  const names = db
    .prepare<[], string>(
      `SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 1 ORDER BY name`,
    )
    .pluck()
    .all();
  return Object.fromEntries(
    names.map((name) => [name, db.prepare(`SELECT * FROM "${name}" ORDER BY 1`).all()] as const),
  );
}
