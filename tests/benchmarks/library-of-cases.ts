/**
 * A library of very many cases and photos, out of a seed: poured straight into the database by prepared statements, the
 * triggers at work as ever. Photos are rows without files. Words are drawn so that few are frequent and most are rare,
 * as they are in any language (G. K. Zipf: the n-th most frequent word is used 1/n as often as the first).
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

import { kindsFor } from '#analysis/knowledge/pack-terms.ts';
import { outcomes } from '#shared-types/case.ts';
import { damageClasses, presences } from '#shared-types/finding.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Instant } from '#shared-types/times.ts';

import { inTransaction, openLibrary, type Db } from '../../electron/database/open-library.ts';
import { appendToJournal } from '../../electron/database/repositories/journal.ts';
import { keepPack } from '../../electron/database/repositories/packs.ts';
import { shippedPath } from '../../electron/processes/entry-table.ts';
import { chanceFrom, type Chance } from '../support/world-chance.ts';
import { customers, makers } from '../support/world-words.ts';
import { turbochargerPack } from '../support/world.ts';

export type LibrarySize = { readonly cases: number; readonly photos: number; readonly findings: number };

export type PouredLibrary = {
  readonly seconds: number;
  /** Words by the number of cases they were written into. */
  readonly casesOfWord: ReadonlyMap<string, number>;
  readonly serials: readonly string[];
};

const vocabularySize = 40_000;
const casesATransaction = 200;
const by = 'M. Sundgren';

export function pourLibrary(folder: string, seed: number, size: LibrarySize): PouredLibrary {
  const now = () => '2026-03-04T09:15:00.000Z' as Instant;
  const { db } = openLibrary({ folder, migrationsFolder: shippedPath('migrations'), now });
  // Nothing here has to outlive a power cut.
  db.pragma('synchronous = OFF');
  const begun = performance.now();
  const pour = pouring(db, seed, size);
  for (let from = 0; from < size.cases; from += casesATransaction) {
    inTransaction(db, () => {
      for (let index = from; index < Math.min(size.cases, from + casesATransaction); index += 1) {
        pour.oneCase(index);
      }
    });
  }
  const seconds = (performance.now() - begun) / 1_000;
  db.pragma('wal_checkpoint(TRUNCATE)');
  db.close();
  return { seconds, casesOfWord: pour.casesOfWord, serials: pour.serials };
}

function pouring(db: Db, seed: number, size: LibrarySize) {
  const chance = chanceFrom(seed);
  const pack = turbochargerPack();
  const content = readFileSync(shippedPath('analysis', 'knowledge', 'packs', 'turbocharger.json'), 'utf8');
  const sha256 = createHash('sha256').update(content).digest('hex');
  const packRow = keepPack(db, { pack, content, sha256 });
  const words = drawVocabulary(chance);
  const casesOfWord = new Map<string, number>();
  const serials: string[] = [];
  const write = writing(db, packRow);

  const oneCase = (index: number) => {
    const used = new Set<string>();
    const sentence = (count: number) =>
      Array.from({ length: count }, () => {
        const word = words[zipf(chance)] ?? '';
        used.add(word);
        return word;
      }).join(' ');
    const model = `R${String(20 + chance.integer(60))}`;
    const serial = `SN-${String(10_000_000 + chance.integer(90_000_000))}`;
    serials.push(serial);
    const uuid = chance.uuid();
    const openedAt = new Date(Date.UTC(2010, 0, 4) + index * 7_200_000).toISOString();
    const caseRow = write.case({
      uuid,
      number: `${String(10 + Math.floor(index / 9_000))}-${String(index % 9_000).padStart(4, '0')}`,
      maker: chance.pick(makers),
      model,
      serial,
      partNumber: chance.happens(0.8) ? `${model}-${String(1_000 + chance.integer(900))}` : '',
      customer: `${chance.pick(customers)} ${String(chance.integer(40))}`,
      claim: sentence(40),
      outcome: chance.pick(outcomes),
      conclusion: sentence(30),
      openedAt,
    });
    const spread = (total: number) =>
      Math.floor(((index + 1) * total) / size.cases) - Math.floor((index * total) / size.cases);
    for (let number = 1; number <= spread(size.findings); number += 1) {
      write.finding({
        ...drawTerms(chance, pack),
        uuid: chance.uuid(),
        caseRow,
        number,
        note: chance.happens(0.6) ? sentence(10) : '',
      });
    }
    const photos = spread(size.photos);
    for (let place = 0; place < photos; place += 1) {
      const caption = chance.happens(0.5) ? sentence(6) : '';
      const photoRow = write.photo({
        uuid: chance.uuid(),
        blob: chance.uuid(),
        caseRow,
        place,
        caption,
        openedAt,
      });
      if (place < 3) write.mark(chance.uuid(), photoRow);
    }
    for (const what of ['case opened', 'photos poured', 'bench']) {
      appendToJournal(db, {
        at: openedAt as Instant,
        who: by,
        caseId: uuid as CaseId,
        what,
        details: { index },
      });
    }
    for (const word of used) casesOfWord.set(word, (casesOfWord.get(word) ?? 0) + 1);
  };
  return { oneCase, casesOfWord, serials };
}

function writing(db: Db, packRow: number) {
  const addCase = db.prepare(
    `INSERT INTO teardown_case (uuid, number, status, pack_row, unit_maker, unit_model, unit_serial,
       unit_part_number, customer, claim, outcome, conclusion, opened_at, opened_by, revision)
     VALUES (@uuid, @number, 'open', ${String(packRow)}, @maker, @model, @serial, @partNumber, @customer, @claim,
       @outcome, @conclusion, @openedAt, '${by}', 1)`,
  );
  const addFinding = db.prepare(
    `INSERT INTO finding (uuid, case_row, number, component, position, zone, kind, class, presence, note, revision)
     VALUES (@uuid, @caseRow, @number, @component, NULL, @zone, @kind, @class, @presence, @note, 1)`,
  );
  const addBlob = db.prepare(
    `INSERT INTO blob (uuid, sha256, bytes, media_type, width, height, orientation, display_width, display_height,
       camera, stored_at)
     VALUES (@blob, @sha256, 3000000, 'image/jpeg', 4000, 3000, 1, 1600, 1200, '', @openedAt)`,
  );
  const addPhoto = db.prepare(
    `INSERT INTO photo (uuid, case_row, blob_row, place, source_name, caption, added_at, added_by, revision)
     VALUES (@uuid, @caseRow, @blobRow, @place, @name, @caption, @openedAt, '${by}', 1)`,
  );
  const addMark = db.prepare(
    `INSERT INTO mark (uuid, photo_row, kind, geometry_version, geometry, drawing_order, revision)
     VALUES (?, ?, 'arrow', 1, '{"kind":"arrow","v":1,"tail":{"x":1,"y":1},"tip":{"x":9,"y":9}}', 0, 1)`,
  );
  return {
    case: (fields: Readonly<Record<string, string>>) => Number(addCase.run(fields).lastInsertRowid),
    finding: (fields: Readonly<Record<string, string | number | null>>) => addFinding.run(fields),
    photo(fields: {
      uuid: string;
      blob: string;
      caseRow: number;
      place: number;
      caption: string;
      openedAt: string;
    }) {
      const sha256 = createHash('sha256').update(fields.blob).digest('hex');
      const { blob, openedAt, ...photo } = fields;
      const blobRow = addBlob.run({ blob, sha256, openedAt }).lastInsertRowid;
      const name = `IMG_${String(fields.caseRow).padStart(6, '0')}_${String(fields.place).padStart(3, '0')}.jpg`;
      return Number(addPhoto.run({ ...photo, blobRow, name, openedAt }).lastInsertRowid);
    },
    mark: (uuid: string, photoRow: number) => addMark.run(uuid, photoRow),
  };
}

export function drawTerms(chance: Chance, pack: KnowledgePack) {
  // Squared, so that the first parts turn up often and the last seldom.
  const place = Math.floor((chance.integer(1_000) / 1_000) ** 2 * pack.components.length);
  const component = pack.components[place] ?? chance.pick(pack.components);
  const zone = chance.happens(0.85) ? chance.pick(component.zones) : null;
  return {
    component: component.id,
    zone: zone?.id ?? null,
    kind: chance.pick(kindsFor(pack, component.id, zone?.id ?? null)).id,
    class: chance.pick(damageClasses),
    presence: chance.happens(0.75) ? presences[0] : chance.pick(presences),
  };
}

/** Words of two to five syllables, no two alike. */
function drawVocabulary(chance: Chance): string[] {
  const [first, then] = ['bdfgklmnprstvz', 'aeiou'];
  const syllable = () =>
    first.charAt(chance.integer(first.length)) + then.charAt(chance.integer(then.length));
  const words = new Set<string>();
  while (words.size < vocabularySize) {
    words.add(Array.from({ length: chance.between([2, 5]) }, syllable).join(''));
  }
  return [...words];
}

/** A place in the vocabulary, the n-th with a chance of about 1/n: the inverse of the integral of 1/x. */
function zipf(chance: Chance): number {
  const share = chance.integer(1_000_000) / 1_000_000;
  return Math.min(vocabularySize - 1, Math.floor((vocabularySize + 1) ** share) - 1);
}
