/** Entering, changing and removing the parties to a case. */
import { AppError } from '#shared-types/errors.ts';
import type { CaseId, PartyId } from '#shared-types/ids.ts';
import type { Party, PartyPut } from '#shared-types/party.ts';

import {
  addParty,
  caseOfParty,
  readParty,
  removeParty,
  writeParty,
} from '../database/repositories/parties.ts';
import { recordWrite } from './recorded-write.ts';
import type { Services } from './services.ts';

/** @throws AppError not-found (also for a party of another case), stale-revision, case-closed */
export function putParty(services: Services, put: PartyPut): Party {
  const { db } = services;
  const { caseId, partyId: id, revision, fields } = put;
  recordWrite(services, {
    caseId,
    what: revision === null ? 'party entered' : 'party changed',
    details: { party: id, roles: fields.roles },
    write: () => {
      if (revision === null) {
        addParty(db, { id, caseId, fields });
        return;
      }
      if (caseOfParty(db, id) !== caseId) throw new AppError('not-found', { thing: 'party' });
      writeParty(db, { id, revision, fields });
    },
  });
  tell(services, caseId);
  return readParty(db, id);
}

/** @throws AppError not-found, stale-revision, case-closed */
export function takePartyOut(services: Services, request: { partyId: PartyId; revision: number }): null {
  const { partyId: id, revision } = request;
  const caseId = caseOfParty(services.db, id);
  recordWrite(services, {
    caseId,
    what: 'party removed',
    details: { party: id },
    write: () => {
      removeParty(services.db, { id, revision });
    },
  });
  tell(services, caseId);
  return null;
}

function tell(services: Services, caseId: CaseId): void {
  services.publish({ name: 'case-changed', payload: { caseId, what: 'parties' } });
}
