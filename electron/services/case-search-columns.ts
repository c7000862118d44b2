/**
 * Keeps the columns of all cases as the library is. They are read once, when the first search asks for them, in slices
 * between which other calls are answered; from then on the journal says which cases were written to.
 */
import { setImmediate as otherCalls } from 'node:timers/promises';

import { addFindings, createCaseColumns, putCase, type CaseColumns } from '#analysis/search/case-columns.ts';

import type { Db } from '../database/open-library.ts';
import {
  casesWrittenSince,
  newestJournalLine,
  nextComponent,
  readCaseFacts,
  readCasesAfter,
  readTermsOfCase,
  readTermsOfComponent,
} from '../database/repositories/search-columns.ts';

export type KeptColumns = {
  readonly columns: CaseColumns;
  /** The journal's line that they are as of: as long as it stands, so does what was found. */
  readonly line: number;
};

type Kept = { readonly reading: Promise<CaseColumns>; line: number };

/** By connection: another library is another connection. */
const keptOf = new WeakMap<Db, Kept>();

const casesASlice = 2_000;

/** The columns as the library is now. What they answer holds until the next await. */
export async function columnsOf(db: Db): Promise<KeptColumns> {
  let kept = keptOf.get(db);
  if (kept === undefined) {
    kept = { reading: readColumns(db), line: newestJournalLine(db) };
    keptOf.set(db, kept);
    // A library that could not be read is asked again the next time.
    kept.reading.catch(() => keptOf.delete(db));
  }
  const columns = await kept.reading;
  const newest = newestJournalLine(db);
  if (newest !== kept.line) {
    for (const row of casesWrittenSince(db, kept.line)) readCaseAgain(db, columns, row);
    kept.line = newest;
  }
  return { columns, line: newest };
}

async function readColumns(db: Db): Promise<CaseColumns> {
  const columns = createCaseColumns();
  for (let after = 0; ;) {
    const cases = readCasesAfter(db, { after, most: casesASlice });
    for (const facts of cases) putCase(columns, facts);
    const last = cases.at(-1);
    if (last === undefined) break;
    after = last.row;
    await otherCalls();
  }
  for (let component = nextComponent(db, ''); component !== null; component = nextComponent(db, component)) {
    for (const { terms, caseRows } of readTermsOfComponent(db, component)) {
      addFindings(columns, terms, caseRows);
    }
    await otherCalls();
  }
  return columns;
}

function readCaseAgain(db: Db, columns: CaseColumns, row: number): void {
  const facts = readCaseFacts(db, row);
  if (facts === null) return;
  putCase(columns, facts);
  for (const terms of readTermsOfCase(db, row)) addFindings(columns, terms, [row]);
}
