/** What the analyst decides of the report: its own sections, how many plates stand on a page. */
import type { ReportPlan, ReportPlanChange } from '#shared-types/report-plan.ts';

import { readReportPlan, writeReportPlan } from '../database/repositories/report-plans.ts';
import { given } from './case-work.ts';
import { recordWrite } from './recorded-write.ts';
import type { Services } from './services.ts';

/** @throws AppError not-found, stale-revision, case-closed */
export function changeReportPlan(services: Services, change: ReportPlanChange): ReportPlan {
  const { db } = services;
  const { caseId, revision } = change;
  recordWrite(services, {
    caseId,
    what: 'report plan changed',
    details: { fields: Object.keys(change.fields).sort() },
    write: () => {
      const { platesAPage, printCameraPlaces, sections } = readReportPlan(db, caseId);
      const fields = { platesAPage, printCameraPlaces, sections, ...given(change.fields) };
      writeReportPlan(db, { caseId, revision, fields });
    },
  });
  services.publish({ name: 'case-changed', payload: { caseId, what: 'report-plan' } });
  return readReportPlan(db, caseId);
}
