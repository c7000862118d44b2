/** The sqlite3 shell as what a search is held against: the same statements, with nothing of ours round them. */
import { execFileSync } from 'node:child_process';

import type { Db } from '../../electron/database/open-library.ts';

type Value = string | number | null;

/** The statements that the work reads with, in their order, with the values that were bound to them written in. */
export async function statementsOf(db: Db, work: () => Promise<unknown>): Promise<string[]> {
  const statements: string[] = [];
  const prepare = db.prepare;
  const watched = (source: string, statement: object): object =>
    new Proxy(statement, {
      get(target, name) {
        const member: unknown = Reflect.get(target, name);
        if (typeof member !== 'function') return member;
        return (...values: unknown[]) => {
          if (name === 'all' || name === 'get') statements.push(written(source, values));
          const answer: unknown = Reflect.apply(member, target, values);
          return answer === target ? watched(source, statement) : answer;
        };
      },
    });
  db.prepare = ((source: string) => watched(source, prepare(source))) as typeof db.prepare;
  try {
    await work();
  } finally {
    db.prepare = prepare;
  }
  return statements;
}

function written(sql: string, values: readonly unknown[]): string {
  const [named] = values;
  if (typeof named === 'object' && named !== null) {
    return sql.replaceAll(/@(\w+)/g, (_, name: string) => literal((named as Record<string, Value>)[name]));
  }
  const inOrder = values.values();
  return sql.replaceAll('?', () => literal(inOrder.next().value as Value | undefined));
}

const literal = (value: Value | undefined) =>
  typeof value === 'string' ? `'${value.replaceAll("'", "''")}'` : String(value ?? null).toUpperCase();

/**
 * Milliseconds that the shell needs for each batch of statements, what they answer thrown away. Each is run so many
 * times in a row, after once for nothing; its clock knows milliseconds.
 */
export function timeInShell(file: string, batches: readonly (readonly string[])[], times: number): number[] {
  // Days; 'now' is the same within one statement and another in the next.
  const clock = "SELECT 'at ' || julianday('now')";
  const script = batches.flatMap((batch) => {
    const run = batch.map((sql) => `${sql};`);
    const silent = (lines: readonly string[]) => ['.output /dev/null', ...lines, '.output stdout'];
    return [
      ...silent(run),
      `${clock};`,
      ...silent(Array.from({ length: times }, () => run).flat()),
      `${clock};`,
    ];
  });
  const said = execFileSync('sqlite3', ['-readonly', '-batch', file], {
    input: `${script.join('\n')}\n`,
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  const stamps = Array.from(said.matchAll(/^at ([\d.]+)$/gm), (match) => Number(match[1]));
  if (stamps.length !== 2 * batches.length) throw new Error(`the shell told ${stamps.length} times`);
  const day = 86_400_000;
  return batches.map((_, at) => (((stamps[2 * at + 1] ?? 0) - (stamps[2 * at] ?? 0)) * day) / times);
}
