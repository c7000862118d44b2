import { describe, expect, test } from 'vitest';

import { openTestLibrary } from '../support/open-test-library.ts';

const sql = 'SELECT value AS number FROM json_each(?)';

describe('a statement that is kept', () => {
  test('is prepared once for the same text', () => {
    const db = openTestLibrary();
    expect(db.prepare(sql)).toBe(db.prepare(sql));
    expect(db.prepare(sql)).not.toBe(db.prepare(`${sql} LIMIT 1`));
  });

  test('answers whole rows again after another caller plucked one column', () => {
    const db = openTestLibrary();
    expect(db.prepare(sql).pluck().all('[1,2]')).toEqual([1, 2]);
    expect(db.prepare(sql).all('[3]')).toEqual([{ number: 3 }]);
  });

  test('can be run while its rows are still being read', () => {
    const db = openTestLibrary();
    const pairs: unknown[] = [];
    for (const outer of db.prepare<[string], { number: number }>(sql).iterate('[1,2]')) {
      pairs.push([
        outer.number,
        db
          .prepare(sql)
          .pluck()
          .all(`[${String(outer.number * 10)}]`),
      ]);
    }
    expect(pairs).toEqual([
      [1, [10]],
      [2, [20]],
    ]);
  });

  test('can be run again after it failed, and sees what the structure has become', () => {
    const db = openTestLibrary();
    db.exec('CREATE TABLE thing (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE) STRICT');
    const insert = () => db.prepare('INSERT INTO thing (name) VALUES (?)').run('once');
    expect(insert().changes).toBe(1);
    expect(insert).toThrow('UNIQUE');
    db.exec('DELETE FROM thing');
    expect(insert().changes).toBe(1);
    expect(Object.keys(db.prepare('SELECT * FROM thing').get() as object)).toEqual(['id', 'name']);
    db.exec("ALTER TABLE thing ADD COLUMN more TEXT NOT NULL DEFAULT 'x'");
    expect(db.prepare('SELECT * FROM thing').get()).toEqual({ id: 1, name: 'once', more: 'x' });
  });
});
