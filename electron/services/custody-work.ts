/** Entering who had what when, and striking what was entered wrongly. */
import type { CustodyAdd, CustodyEntry } from '#shared-types/custody.ts';
import type { CaseId, CustodyEntryId } from '#shared-types/ids.ts';

import {
  addCustodyEntry,
  caseOfCustodyEntry,
  readCustodyEntry,
  strikeCustodyEntry,
} from '../database/repositories/custody.ts';
import { recordWrite } from './recorded-write.ts';
import type { Services } from './services.ts';

/** @throws AppError not-found, stale-revision when the entry is there already, case-closed */
export function enterCustody(services: Services, request: CustodyAdd): CustodyEntry {
  const { caseId, entryId: id, fields } = request;
  recordWrite(services, {
    caseId,
    what: 'custody entered',
    details: { entry: id, event: fields.event },
    write: ({ at, by }) => {
      addCustodyEntry(services.db, { id, caseId, fields, at, by });
    },
  });
  return told(services, caseId, id);
}

/** @throws AppError not-found, stale-revision, case-closed, request-invalid when it was struck before */
export function strikeCustody(
  services: Services,
  request: { entryId: CustodyEntryId; revision: number; reason: string },
): CustodyEntry {
  const { entryId: id, revision, reason } = request;
  const caseId = caseOfCustodyEntry(services.db, id);
  recordWrite(services, {
    caseId,
    what: 'custody entry struck',
    details: { entry: id },
    write: ({ at, by }) => {
      strikeCustodyEntry(services.db, { id, revision, reason, at, by });
    },
  });
  return told(services, caseId, id);
}

function told(services: Services, caseId: CaseId, id: CustodyEntryId): CustodyEntry {
  services.publish({ name: 'case-changed', payload: { caseId, what: 'custody' } });
  return readCustodyEntry(services.db, id);
}
