import { readReportPlan } from '../../database/repositories/report-plans.ts';
import { changeReportPlan } from '../../services/report-plan-work.ts';
import { makeReport } from '../../services/report-work.ts';
import type { Handlers } from './handler-types.ts';

export const reportHandlers = {
  'report-plan.read': ({ db }, { caseId }) => readReportPlan(db, caseId),
  'report-plan.change': changeReportPlan,
  'reports.make': makeReport,
} satisfies Partial<Handlers>;
