import { listCases, readCase } from '../../database/repositories/cases.ts';
import { changeCase, openCase, withdrawCase } from '../../services/case-work.ts';
import type { Handlers } from './handler-types.ts';

export const caseHandlers = {
  'cases.list': ({ db }, { latest }) => listCases(db, latest),
  'cases.open': openCase,
  'cases.read': ({ db }, { caseId }) => readCase(db, caseId),
  'cases.change': changeCase,
  'cases.withdraw': withdrawCase,
} satisfies Partial<Handlers>;
