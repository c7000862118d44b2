/** What the columns of all cases are filled from: analysis/search/case-columns.ts. */
import type { CaseFacts, FindingTerms } from '#analysis/search/case-columns.ts';

import type { Db } from '../open-library.ts';

const facts = `
  c.id AS row, c.pack_row AS packRow, c.number, c.unit_model AS model, c.unit_serial AS serial,
  c.unit_part_number AS partNumber, c.customer, c.outcome, c.opened_at AS openedAt`;

/** Cases in the order of their rows, at most `most` behind the row `after`. */
export function readCasesAfter(db: Db, input: { after: number; most: number }): CaseFacts[] {
  return db
    .prepare<[number, number], CaseFacts>(
      `SELECT ${facts} FROM teardown_case c WHERE c.id > ? ORDER BY c.id LIMIT ?`,
    )
    .all(input.after, input.most);
}

export function readCaseFacts(db: Db, caseRow: number): CaseFacts | null {
  return (
    db.prepare<[number], CaseFacts>(`SELECT ${facts} FROM teardown_case c WHERE c.id = ?`).get(caseRow) ??
    null
  );
}

/** The part next to `after` in the order of ids that some finding names; null behind the last. */
export function nextComponent(db: Db, after: string): string | null {
  return (
    db
      .prepare<[string], string | null>('SELECT min(component) FROM finding WHERE component > ?')
      .pluck()
      .get(after) ?? null
  );
}

type TermsWithCases = FindingTerms & { readonly caseRows: string };

/** Every combination of terms that findings of this part have, with the rows of their cases; answered by the index alone. */
export function readTermsOfComponent(
  db: Db,
  component: string,
): { terms: FindingTerms; caseRows: number[] }[] {
  return db
    .prepare<[string], TermsWithCases>(
      `SELECT f.component, f.zone, f.kind, f.class, f.presence, group_concat(f.case_row) AS caseRows
       FROM finding f WHERE f.component = ? GROUP BY f.component, f.kind, f.zone, f.class, f.presence`,
    )
    .all(component)
    .map(({ caseRows, ...terms }) => ({ terms, caseRows: JSON.parse(`[${caseRows}]`) as number[] }));
}

export function readTermsOfCase(db: Db, caseRow: number): FindingTerms[] {
  return db
    .prepare<[number], FindingTerms>(
      `SELECT f.component, f.zone, f.kind, f.class, f.presence FROM finding f WHERE f.case_row = ?`,
    )
    .all(caseRow);
}

/** Number of the journal's newest line: 0 where it has none. */
export function newestJournalLine(db: Db): number {
  return db.prepare<[], number>('SELECT number FROM journal ORDER BY number DESC LIMIT 1').pluck().get() ?? 0;
}

/** Rows of the cases that the journal tells of behind this line: whatever was written to a case has its line there. */
export function casesWrittenSince(db: Db, line: number): number[] {
  return db
    .prepare<[number], number>(
      `SELECT c.id FROM teardown_case c
       WHERE c.uuid IN (SELECT j.case_uuid FROM journal j WHERE j.number > ?)`,
    )
    .pluck()
    .all(line);
}

export type TermLabel = {
  readonly packRow: number;
  readonly list: 'component' | 'kind';
  readonly term: string;
  readonly label: string;
};

/** Labels of parts and kinds in every machine kind that cases were opened with, the oldest machine kind first. */
export function readTermLabels(db: Db): TermLabel[] {
  return db
    .prepare<[], TermLabel>(
      `SELECT t.pack_row AS packRow, t.list, t.term, t.label
       FROM pack p CROSS JOIN pack_term t ON t.pack_row = p.id AND t.list IN ('component', 'kind') AND t.owner = ''
       ORDER BY p.id`,
    )
    .all();
}
