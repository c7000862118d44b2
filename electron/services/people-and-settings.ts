import type { Analyst, AnalystDraft } from '#shared-types/analyst.ts';
import type { ParsedRequestOf } from '#shared-types/api-contract.ts';
import type { AnalystId } from '#shared-types/ids.ts';
import type { Settings } from '#shared-types/settings.ts';

import { inTransaction } from '../database/open-library.ts';
import { addAnalyst, changeAnalyst, findAnalyst } from '../database/repositories/analysts.ts';
import { appendToJournal } from '../database/repositories/journal.ts';
import { readSettings, writeSettings } from '../database/repositories/settings.ts';
import { given } from './case-work.ts';
import type { Services } from './services.ts';
import { whoWorksHere } from './who-works-here.ts';

/** Who works here from now on is also said in the journal. @throws AppError stale-revision, not-found */
export function changeSettings(services: Services, change: ParsedRequestOf<'settings.change'>): Settings {
  const { db } = services;
  inTransaction(db, () => {
    const { revision: _now, ...fields } = readSettings(db);
    const next = { ...fields, ...given(change.fields) };
    writeSettings(db, { revision: change.revision, fields: next });
    if (next.currentAnalystId !== null && next.currentAnalystId !== fields.currentAnalystId) {
      note(services, 'analyst took over', { analyst: next.currentAnalystId });
    }
  });
  services.publish({ name: 'settings-changed', payload: {} });
  return readSettings(db);
}

/** The first analyst entered works here from then on. */
export function enterAnalyst(services: Services, draft: AnalystDraft): Analyst {
  const { db } = services;
  const id = services.newId() as AnalystId;
  inTransaction(db, () => {
    addAnalyst(db, { id, draft });
    const { revision, ...fields } = readSettings(db);
    if (fields.currentAnalystId === null) {
      writeSettings(db, { revision, fields: { ...fields, currentAnalystId: id } });
    }
    note(services, 'analyst entered', { analyst: id });
  });
  services.publish({ name: 'settings-changed', payload: {} });
  return existing(services, id);
}

/** @throws AppError not-found, stale-revision */
export function correctAnalyst(
  services: Services,
  change: { analystId: AnalystId; revision: number; fields: AnalystDraft },
): Analyst {
  const { db } = services;
  const { analystId: id, revision, fields } = change;
  inTransaction(db, () => {
    changeAnalyst(db, { id, revision, fields });
    note(services, 'analyst corrected', { analyst: id });
  });
  services.publish({ name: 'settings-changed', payload: {} });
  return existing(services, id);
}

/** A line of the library's own, by whoever works here once the change is made; inside the caller's transaction. */
function note(services: Services, what: string, details: Readonly<Record<string, string>>): void {
  const { db } = services;
  appendToJournal(db, { at: services.now(), who: whoWorksHere(db).name, caseId: null, what, details });
}

function existing(services: Services, id: AnalystId): Analyst {
  const analyst = findAnalyst(services.db, id);
  if (!analyst) throw new Error('an analyst just written is not there');
  return analyst;
}
