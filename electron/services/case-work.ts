/** Opening, changing and withdrawing cases. */
import { sideOf } from '#analysis/knowledge/pack-terms.ts';
import type { CaseChange, CaseDraft, CaseFields, TeardownCase, Unit } from '#shared-types/case.ts';
import { AppError } from '#shared-types/errors.ts';
import type { CaseId } from '#shared-types/ids.ts';

import {
  addCase,
  readCase,
  readStanding,
  refuseTakenNumber,
  writeCase,
  writeCaseStatus,
} from '../database/repositories/cases.ts';
import { caseOfPhoto } from '../database/repositories/photos.ts';
import { recordWrite } from './recorded-write.ts';
import type { Services } from './services.ts';

/** @throws AppError analyst-needed, case-number-taken, machine-kind-unknown */
export function openCase(services: Services, draft: CaseDraft): { caseId: CaseId } {
  const id = services.newId() as CaseId;
  recordWrite(services, {
    caseId: id,
    opensCase: true,
    what: 'case opened',
    details: { number: draft.number, machineKind: draft.machineKind },
    write: ({ at, by }) => {
      refuseTakenNumber(services.db, { number: draft.number, except: null });
      const packRow = services.packs.keep(draft.machineKind);
      addCase(services.db, { id, draft, packRow, at, by });
    },
  });
  services.publish({ name: 'shelf-changed', payload: {} });
  return { caseId: id };
}

/** @throws AppError not-found, stale-revision, case-closed, case-number-taken */
export function changeCase(services: Services, change: CaseChange): TeardownCase {
  const { caseId, revision } = change;
  recordWrite(services, {
    caseId,
    what: 'case changed',
    details: { fields: Object.keys(change.fields).sort() },
    write: () => {
      const fields = { ...fieldsOf(readCase(services.db, caseId)), ...given(change.fields) };
      refuseTakenNumber(services.db, { number: fields.number, except: caseId });
      refuseForeignObservations(services, caseId, fields.unit);
      writeCase(services.db, { id: caseId, revision, fields });
    },
  });
  return told(services, caseId);
}

/** What was seen of the unit names a side of its machine kind and photos of this very case. */
function refuseForeignObservations(services: Services, caseId: CaseId, unit: Unit): void {
  const { rotation, thread } = unit;
  if (rotation !== null) {
    sideOf(services.packs.ofCase(readStanding(services.db, caseId).pack), rotation.seenFrom);
  }
  for (const photoId of [rotation?.photoId, thread?.photoId]) {
    if (photoId && caseOfPhoto(services.db, photoId) !== caseId) {
      throw new AppError('not-found', { thing: 'photo' });
    }
  }
}

/** A withdrawn case stays in the library, readable, and takes no more changes. */
export function withdrawCase(
  services: Services,
  request: { caseId: CaseId; revision: number; reason: string },
): TeardownCase {
  const { caseId, revision, reason } = request;
  recordWrite(services, {
    caseId,
    what: 'case withdrawn',
    details: {},
    write: () => {
      writeCaseStatus(services.db, { id: caseId, revision, status: 'withdrawn', reason });
    },
  });
  return told(services, caseId);
}

function told(services: Services, caseId: CaseId): TeardownCase {
  services.publish({ name: 'case-changed', payload: { caseId, what: 'fields' } });
  services.publish({ name: 'shelf-changed', payload: {} });
  return readCase(services.db, caseId);
}

function fieldsOf(one: TeardownCase): CaseFields {
  const { number, unit, customer, claim, service, stateReceived, interest, outcome, conclusion } = one;
  return { number, unit, customer, claim, service, stateReceived, interest, outcome, conclusion };
}

/** Leaves out what a partial change does not mention. */
export function given<Fields extends object>(
  fields: Fields,
): { [Key in keyof Fields]: Exclude<Fields[Key], undefined> } {
  const mentioned = Object.entries(fields).filter(([, value]) => value !== undefined);
  return Object.fromEntries(mentioned) as { [Key in keyof Fields]: Exclude<Fields[Key], undefined> };
}
