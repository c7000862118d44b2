/** A case with very many photos and marks, and a library with very many cases. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

import type { DamageTag } from '#shared-types/search.ts';
import type { Instant } from '#shared-types/times.ts';

import { openLibrary } from '../../electron/database/open-library.ts';
import { shippedPath } from '../../electron/processes/entry-table.ts';
import { chanceFrom } from '../support/world-chance.ts';
import { pourWorld } from '../support/world-through-repositories.ts';
import { customers, remarks } from '../support/world-words.ts';
import { makeWorld, type World, type WorldSize } from '../support/world.ts';
import { startEngineProcess, type EngineProcess } from './engine-process.ts';
import { figure, medianAndWorst, share, timed, type Figure } from './figures.ts';

async function engineOver(folder: string, size: WorldSize): Promise<{ engine: EngineProcess; world: World }> {
  mkdirSync(folder);
  const world = makeWorld(91, size);
  const now = () => '2026-03-04T09:15:00.000Z' as Instant;
  const { db } = openLibrary({ folder, migrationsFolder: shippedPath('migrations'), now });
  pourWorld(db, world);
  db.close();
  return { engine: await startEngineProcess(folder), world };
}

/** Opening a case with 1,000 photos and 5,000 marks, and drawing one more arrow in it. */
export async function measureLargeCase(folder: string): Promise<Figure[]> {
  const size = { cases: 1, findings: [40, 40], photos: [1_000, 1_000], marks: [5_000, 5_000] } as const;
  const { engine, world } = await engineOver(join(folder, 'large-case'), size);
  try {
    const [{ id: caseId, marks, photos } = never('case')] = world.cases;
    const opening = await timed(20, () =>
      Promise.all([engine.ask('photos.list', { caseId }), engine.ask('bench.read', { caseId })]),
    );
    const chance = chanceFrom(92);
    const mark = marks[0] ?? never('mark');
    const drawing = await timed(100, (order) =>
      engine.ask('bench.commit', {
        caseId,
        changes: [
          {
            change: 'put-mark',
            revision: null,
            mark: { ...mark, id: chance.uuid(), photoId: chance.pick(photos).id, order },
          },
        ],
      }),
    );
    return [
      ...medianAndWorst(
        'Opening a case with 1,000 photos and 5,000 marks: photos.list and bench.read',
        opening,
      ),
      ...medianAndWorst('One arrow committed in that case', drawing),
    ];
  } finally {
    await engine.close();
  }
}

/** Searching 2,000 cases with 40,000 findings. */
export async function measureSearch(folder: string): Promise<Figure[]> {
  const size = { cases: 2_000, findings: [20, 20], photos: [2, 2], marks: [2, 4] } as const;
  const { engine, world } = await engineOver(join(folder, 'many-cases'), size);
  try {
    const chance = chanceFrom(93);
    const word = () => chance.pick(`${chance.pick(remarks)} ${chance.pick(customers)}`.split(' '));
    const texts = Array.from({ length: 20 }, (_, run) => {
      const serial = chance.pick(world.cases).draft.unit.serial.slice(2, 7);
      return [word(), `${word()} ${word()}`, serial, word().slice(0, 3)][run % 4] ?? never('text');
    });
    const byText = await timed(20, (run) =>
      engine.ask('search.cases', { text: texts[run] ?? never('text'), tags: [] }),
    );
    const tags = Array.from({ length: 20 }, (_, run): DamageTag => {
      const { fields } = chance.pick(chance.pick(world.cases).findings);
      const { component, zone, kind, class: damageClass, presence } = fields;
      return {
        component: run % 4 === 3 ? null : component,
        kind: run % 4 === 2 ? null : kind,
        zone: run % 4 === 1 ? zone : null,
        class: run % 2 === 0 ? damageClass : null,
        presence: run % 5 === 0 ? presence : null,
      };
    });
    const byTag = await timed(20, (run) =>
      engine.ask('search.cases', { text: '', tags: [tags[run] ?? never('tag')] }),
    );
    const known = await timed(5, () => engine.ask('search.known-tags', {}));
    const shelf = await timed(5, () => engine.ask('cases.list', {}));
    const over = 'over 2,000 cases with 40,000 findings';
    return [
      ...medianAndWorst(`Search by text ${over}`, byText),
      ...medianAndWorst(`Search by damage tag ${over}`, byTag),
      figure(`All damage tags that are known, ${over}`, share(known, 0.5), 'ms'),
      figure(`The list of all cases, ${over}`, share(shelf, 0.5), 'ms'),
    ];
  } finally {
    await engine.close();
  }
}

function never(what: string): never {
  throw new Error(`the generated world has no ${what}`);
}
