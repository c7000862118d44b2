/** A library whose database may not grow beyond so many pages, as on a disk that is full. */
import type { CaseId } from '#shared-types/ids.ts';

import type { Db } from '../../electron/database/open-library.ts';
import { exampleFinding } from '../support/exchanges.ts';
import { testId } from '../support/open-test-library.ts';
import { engineHere } from './engine-here.ts';
import type { LibraryWork } from './library-work.ts';
import { codeOf } from './program-under-test.ts';

export async function smallLibrary() {
  const held: Db[] = [];
  const engine = await engineHere({ onConnection: (db) => held.push(db) });
  const [db] = held;
  if (!db) throw new Error('the engine opened no database');
  return {
    engine,
    pages: () => Number(db.pragma('page_count', { simple: true })),
    // https://sqlite.org/pragma.html#pragma_max_page_count: for this connection only, until it is set anew.
    limit: (pages: number) => db.pragma(`max_page_count = ${pages}`),
  };
}

/** A finding with a note of so many characters. */
export function bigCommit(caseId: CaseId, number: number, length = 19_000) {
  const note = `${number} `.repeat(5_000).slice(0, length);
  return {
    caseId,
    changes: [
      {
        change: 'put-finding',
        findingId: testId(1_000 + number),
        fields: { ...exampleFinding, note },
        revision: null,
      },
    ],
  };
}

/** Fills what room there is within the pages, so that whatever comes next has to ask for each further one. */
export async function fillUp(engine: LibraryWork, caseId: CaseId): Promise<void> {
  const lengths = [19_000, 3_000, 300, 0];
  for (let number = 1; lengths.length > 0; number += 1) {
    const answer = await engine.answer('bench.commit', bigCommit(caseId, number, lengths[0]));
    if (codeOf(answer) !== null) lengths.shift();
  }
}
