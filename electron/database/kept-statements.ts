/**
 * Keeps every statement that was prepared once. SQLite compiles a statement each time it is prepared, and with it each
 * trigger that it may fire: for a finding that is more work than to write it.
 */
import type Database from 'better-sqlite3';

/** From now on `db.prepare` answers the same statement to the same text, in its plain mode (rows as objects). */
export function keepStatements(db: Database.Database): void {
  const prepare = db.prepare.bind(db);
  const kept = new Map<string, Database.Statement>();
  db.prepare = ((source: string) => {
    const known = kept.get(source);
    // One whose rows are still being read cannot be run a second time.
    if (known !== undefined && !known.busy) return known.reader ? known.pluck(false) : known;
    const statement = prepare(source);
    kept.set(source, statement);
    return statement;
  }) as typeof db.prepare;
}
