/** How a case's report is to be made. A case that nothing was said of has the plan of a new case, at revision 1. */
import { AppError } from '#shared-types/errors.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { OwnSection, ReportPlan, ReportPlanFields } from '#shared-types/report-plan.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, rowOf } from './written-row.ts';

type Row = { id: number; plates_a_page: 1 | 2 | 4; print_camera_places: 0 | 1; revision: number };
type SectionRow = { stands: OwnSection['place']; heading: string; words: string };

const ofNewCase: ReportPlan = { platesAPage: 1, printCameraPlaces: false, sections: [], revision: 1 };

/** @throws AppError not-found */
export function readReportPlan(db: Db, caseId: CaseId): ReportPlan {
  const row = findRow(db, rowOf(db, 'case', caseId));
  if (row === null) return ofNewCase;
  return {
    platesAPage: row.plates_a_page,
    printCameraPlaces: row.print_camera_places === 1,
    sections: listSections(db, row.id),
    revision: row.revision,
  };
}

/** @throws AppError not-found, stale-revision */
export function writeReportPlan(
  db: Db,
  input: { caseId: CaseId; revision: number; fields: ReportPlanFields },
): void {
  const { caseId, revision, fields } = input;
  const caseRow = rowOf(db, 'case', caseId);
  const known = findRow(db, caseRow);
  if ((known?.revision ?? ofNewCase.revision) !== revision) {
    throw new AppError('stale-revision', { thing: 'report plan' }, { retryable: true });
  }
  const result = db
    .prepare(
      `INSERT INTO report_plan (case_row, plates_a_page, print_camera_places, revision)
       VALUES (@caseRow, @platesAPage, @printCameraPlaces, @next)
       ON CONFLICT (case_row) DO UPDATE SET plates_a_page = excluded.plates_a_page,
         print_camera_places = excluded.print_camera_places, revision = excluded.revision`,
    )
    .run({
      caseRow,
      platesAPage: fields.platesAPage,
      printCameraPlaces: fields.printCameraPlaces ? 1 : 0,
      next: revision + 1,
    });
  assertOneRow(result, 'report plan written');
  const written = findRow(db, caseRow);
  if (written === null) throw new Error('report plan written: the row is not there');
  writeSections(db, written.id, fields.sections);
}

function findRow(db: Db, caseRow: number): Row | null {
  const row = db
    .prepare<[number], Row>(
      'SELECT id, plates_a_page, print_camera_places, revision FROM report_plan WHERE case_row = ?',
    )
    .get(caseRow);
  return row ?? null;
}

function listSections(db: Db, planRow: number): OwnSection[] {
  return db
    .prepare<[number], SectionRow>(
      'SELECT stands, heading, words FROM report_section WHERE plan_row = ? ORDER BY place',
    )
    .all(planRow)
    .map(({ stands, heading, words }) => ({ place: stands, heading, words }));
}

function writeSections(db: Db, planRow: number, sections: readonly OwnSection[]): void {
  db.prepare('DELETE FROM report_section WHERE plan_row = ?').run(planRow);
  const insert = db.prepare(
    'INSERT INTO report_section (plan_row, place, stands, heading, words) VALUES (?, ?, ?, ?, ?)',
  );
  sections.forEach(({ place, heading, words }, index) => {
    assertOneRow(insert.run(planRow, index, place, heading, words), 'section of a report');
  });
}
