/** What is done at the bench: marks and findings, a gesture at a time, whole or not at all. */
import { checkFindingTerms } from '#analysis/knowledge/pack-terms.ts';
import type { BenchChange, BenchCommit, BenchOutcome } from '#shared-types/bench-change.ts';
import { AppError } from '#shared-types/errors.ts';
import type { DamageClass, Finding } from '#shared-types/finding.ts';
import type { CaseId, FindingId, MarkId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';

import { readStanding } from '../database/repositories/cases.ts';
import {
  addFinding,
  caseOfFinding,
  classifyFinding,
  findFinding,
  removeFinding,
  writeFinding,
} from '../database/repositories/findings.ts';
import {
  addMark,
  photoOfMark,
  readMark,
  refuseMarkOfOtherCase,
  removeMark,
  writeMark,
} from '../database/repositories/marks.ts';
import { refuseTakenOut } from '../database/repositories/photo-register.ts';
import { caseOfPhoto } from '../database/repositories/photos.ts';
import { recordWrite } from './recorded-write.ts';
import type { Services } from './services.ts';

/**
 * @throws AppError stale-revision, not-found, mark-photo-mismatch, photo-taken-out, term-unknown, finding-in-use, finding-in-chain,
 *   class-change-needs-reason, case-closed: nothing of the commit is there then
 */
export function commitAtBench(services: Services, commit: BenchCommit): BenchOutcome {
  const { caseId, changes } = commit;
  const pack = services.packs.ofCase(readStanding(services.db, caseId).pack);
  recordWrite(services, {
    caseId,
    what: 'bench',
    details: { changes: changes.map(journalLine) },
    write: () => {
      for (const change of changes) carryOut(services, { caseId, pack, change });
    },
  });
  services.publish({ name: 'case-changed', payload: { caseId, what: 'bench' } });
  if (changes.some((change) => change.change.endsWith('finding'))) {
    services.publish({ name: 'shelf-changed', payload: {} });
  }
  return outcomeOf(services, changes);
}

function carryOut(
  services: Services,
  work: { caseId: CaseId; pack: KnowledgePack; change: BenchChange },
): void {
  const { db } = services;
  const { caseId, pack, change } = work;
  switch (change.change) {
    case 'put-mark': {
      const { mark, revision } = change;
      if (caseOfPhoto(db, mark.photoId) !== caseId) throw new AppError('mark-photo-mismatch');
      refuseTakenOut(db, mark.photoId);
      if (mark.findingId !== null && caseOfFinding(db, mark.findingId) !== caseId) {
        throw new AppError('mark-photo-mismatch');
      }
      if (revision === null) {
        addMark(db, mark);
      } else {
        refuseMarkOfOtherCase(db, { caseId, markId: mark.id });
        refuseTakenOut(db, photoOfMark(db, mark.id));
        writeMark(db, { mark, revision });
      }
      return;
    }
    case 'remove-mark':
      refuseMarkOfOtherCase(db, { caseId, markId: change.markId });
      refuseTakenOut(db, photoOfMark(db, change.markId));
      removeMark(db, { id: change.markId, revision: change.revision });
      return;
    case 'put-finding': {
      checkFindingTerms(pack, change.fields);
      const { findingId: id, fields, revision } = change;
      if (revision === null) {
        addFinding(db, { id, caseId, fields });
        return;
      }
      const known = findingOfCase(services, id, caseId);
      if (known.class !== fields.class)
        throw new AppError('class-change-needs-reason', { number: known.number });
      writeFinding(db, { id, revision, fields });
      return;
    }
    case 'remove-finding': {
      const known = findingOfCase(services, change.findingId, caseId);
      removeFinding(db, { id: change.findingId, revision: change.revision, number: known.number });
    }
  }
}

function findingOfCase(services: Services, id: FindingId, caseId: CaseId): Finding {
  const known = findFinding(services.db, id);
  if (!known || caseOfFinding(services.db, id) !== caseId)
    throw new AppError('not-found', { thing: 'finding' });
  return known;
}

function journalLine(change: BenchChange): Record<string, unknown> {
  switch (change.change) {
    case 'put-mark':
      return { change: change.change, mark: change.mark.id, finding: change.mark.findingId };
    case 'remove-mark':
      return { change: change.change, mark: change.markId };
    case 'put-finding': {
      const { note: _ownWords, ...fields } = change.fields;
      return { change: change.change, finding: change.findingId, ...fields };
    }
    case 'remove-finding':
      return { change: change.change, finding: change.findingId };
  }
}

function outcomeOf(services: Services, changes: readonly BenchChange[]): BenchOutcome {
  const removedMarkIds = new Set<MarkId>();
  const removedFindingIds = new Set<FindingId>();
  const putMarkIds = new Set<MarkId>();
  const putFindingIds = new Set<FindingId>();
  for (const change of changes) {
    if (change.change === 'put-mark') move(change.mark.id, removedMarkIds, putMarkIds);
    else if (change.change === 'remove-mark') move(change.markId, putMarkIds, removedMarkIds);
    else if (change.change === 'put-finding') move(change.findingId, removedFindingIds, putFindingIds);
    else move(change.findingId, putFindingIds, removedFindingIds);
  }
  return {
    marks: [...putMarkIds].map((id) => readMark(services.db, id)),
    findings: [...putFindingIds].flatMap((id) => findFinding(services.db, id) ?? []),
    removedMarkIds: [...removedMarkIds],
    removedFindingIds: [...removedFindingIds],
  };
}

function move<Id>(id: Id, from: Set<Id>, to: Set<Id>): void {
  from.delete(id);
  to.add(id);
}

/**
 * A change of class keeps what it was, who changed it and why.
 * @throws AppError not-found, stale-revision, case-closed, request-invalid when it is of that class already
 */
export function changeClass(
  services: Services,
  request: { findingId: FindingId; revision: number; class: DamageClass; reason: string },
): Finding {
  const { findingId: id, revision, reason } = request;
  const caseId = caseOfFinding(services.db, id);
  const { class: from } = findingOfCase(services, id, caseId);
  const { class: to } = request;
  recordWrite(services, {
    caseId,
    what: 'class changed',
    details: { finding: id, from, to },
    write: ({ at, by }) => {
      classifyFinding(services.db, { id, revision, from, to, reason, at, by });
    },
  });
  services.publish({ name: 'case-changed', payload: { caseId, what: 'bench' } });
  return findingOfCase(services, id, caseId);
}
