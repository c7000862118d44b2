import { listClassChanges, listFindings } from '../../database/repositories/findings.ts';
import { listMarks } from '../../database/repositories/marks.ts';
import { changeClass, commitAtBench } from '../../services/bench-work.ts';
import type { Handlers } from './handler-types.ts';

export const benchHandlers = {
  'bench.read': ({ db }, { caseId }) => ({
    marks: listMarks(db, caseId),
    findings: listFindings(db, caseId),
  }),
  'bench.commit': commitAtBench,
  'findings.classify': changeClass,
  'findings.class-history': ({ db }, { caseId }) => listClassChanges(db, caseId),
} satisfies Partial<Handlers>;
