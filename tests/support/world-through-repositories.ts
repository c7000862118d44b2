/**
 * Pours a world straight into the database, in one transaction: for thousands of rows, where the engine's own way would
 * take minutes. Photos are rows without files. The triggers keep the full text as always, and each case has its lines
 * in the journal.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

import { loadPack } from '#analysis/knowledge/load-pack.ts';
import type { AnalystId, BlobId } from '#shared-types/ids.ts';

import { inTransaction, type Db } from '../../electron/database/open-library.ts';
import { addAnalyst } from '../../electron/database/repositories/analysts.ts';
import { addBlob } from '../../electron/database/repositories/blobs.ts';
import { addCase, writeCase } from '../../electron/database/repositories/cases.ts';
import { addFinding } from '../../electron/database/repositories/findings.ts';
import { appendToJournal } from '../../electron/database/repositories/journal.ts';
import { addMark } from '../../electron/database/repositories/marks.ts';
import { keepPack } from '../../electron/database/repositories/packs.ts';
import { addPhoto, writePhoto } from '../../electron/database/repositories/photos.ts';
import { readSettings, writeSettings } from '../../electron/database/repositories/settings.ts';
import { shippedPath } from '../../electron/processes/entry-table.ts';
import { fieldsAfterOpening } from './case-fields.ts';
import { chanceFrom } from './world-chance.ts';
import type { World, WorldCase, WorldPhoto } from './world.ts';

export function pourWorld(db: Db, world: World): void {
  inTransaction(db, () => {
    const chance = chanceFrom(world.cases.length);
    const analystId = chance.uuid() as AnalystId;
    addAnalyst(db, { id: analystId, draft: world.analyst });
    const { revision, ...settings } = readSettings(db);
    writeSettings(db, { revision, fields: { ...settings, currentAnalystId: analystId } });
    const packRow = keepShippedPack(db);
    for (const one of world.cases) pourCase(db, one, { packRow, by: world.analyst.name });
  });
}

function keepShippedPack(db: Db): number {
  const content = readFileSync(shippedPath('analysis', 'knowledge', 'packs', 'turbocharger.json'), 'utf8');
  const pack = loadPack(content, 'turbocharger.json');
  return keepPack(db, { pack, content, sha256: createHash('sha256').update(content).digest('hex') });
}

function pourCase(db: Db, one: WorldCase, { packRow, by }: { packRow: number; by: string }): void {
  const { id, openedAt: at, draft, outcome, conclusion } = one;
  const line = (what: string, details: Record<string, unknown>) => {
    appendToJournal(db, { at, who: by, caseId: id, what, details });
  };
  addCase(db, { id, draft, packRow, at, by });
  line('case opened', { number: draft.number });
  one.photos.forEach((photo, place) => {
    pourPhoto(db, { photo, place, one, by });
  });
  line('photos poured', { photos: one.photos.length });
  for (const { id: findingId, fields } of one.findings) addFinding(db, { id: findingId, caseId: id, fields });
  for (const mark of one.marks) addMark(db, mark);
  line('bench', { findings: one.findings.length, marks: one.marks.length });
  writeCase(db, { id, revision: 1, fields: fieldsAfterOpening(draft, { outcome, conclusion }) });
  line('case changed', {});
}

function pourPhoto(
  db: Db,
  { photo, place, one, by }: { photo: WorldPhoto; place: number; one: WorldCase; by: string },
): void {
  const { id, name, width, height, fields } = photo;
  const at = one.openedAt;
  // A photo's id is as good as its own content would be: nobody opens the file.
  const sha256 = createHash('sha256').update(id).digest('hex');
  const blobId = chanceFrom(photo.pictureSeed + 1).uuid() as BlobId;
  addBlob(db, {
    id: blobId,
    sha256,
    bytes: 3_000_000,
    mediaType: 'image/jpeg',
    width,
    height,
    orientation: 1,
    displayWidth: width,
    displayHeight: height,
    takenAt: null,
    camera: '',
    declaredSynthetic: null,
    gps: null,
    storedAt: at,
  });
  addPhoto(db, { id, caseId: one.id, blobId, sourceName: name, place, at, by });
  writePhoto(db, { id, revision: 1, fields });
}
