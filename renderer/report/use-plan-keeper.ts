import { useEffect, useState, useSyncExternalStore } from 'react';
import type { CaseId } from '#shared-types/ids.ts';
import type { ReportPlan } from '#shared-types/report-plan.ts';
import { call } from '../api/client.ts';
import { putAnswer } from '../api/queries.ts';
import { useFlushed } from '../api/use-flushed.ts';
import { createPlanKeeper, type PlanKeeper, type PlanView } from './plan-keeper.ts';

/** Well under the 400 ms within which what was written has to be on its way. */
const typingPauseMs = 150;

/** The keeper of one case's plan for as long as the panel stands; what is left unsaved is sent when it goes. */
export function usePlanKeeper(caseId: CaseId, plan: ReportPlan): { keeper: PlanKeeper; view: PlanView } {
  const [keeper] = useState(() => keeperOf(caseId, plan));
  const view = useSyncExternalStore(keeper.listen, keeper.view);

  useEffect(() => keeper.adopt(plan), [keeper, plan]);

  useFlushed(keeper);

  return { keeper, view };
}

function keeperOf(caseId: CaseId, plan: ReportPlan): PlanKeeper {
  return createPlanKeeper(plan, {
    send: async (revision, fields) => {
      const now = await call('report-plan.change', { caseId, revision, fields });
      putAnswer('report-plan.read', { caseId }, now);
      return now;
    },
    readAgain: async () => {
      const now = await call('report-plan.read', { caseId });
      putAnswer('report-plan.read', { caseId }, now);
      return now;
    },
    afterPause: (run) => {
      const timer = window.setTimeout(run, typingPauseMs);
      return () => window.clearTimeout(timer);
    },
  });
}
