/**
 * A world of cases out of a seed: the same seed, size and machine kind give the same world, to the byte. What is here is
 * only the plan; world-through-engine.ts makes it by the engine's calls, world-through-repositories.ts straight in the
 * database where thousands of rows are wanted.
 */
import { readFileSync } from 'node:fs';

import { loadPack } from '#analysis/knowledge/load-pack.ts';
import type { AnalystDraft } from '#shared-types/analyst.ts';
import { outcomes, type CaseDraft, type Outcome } from '#shared-types/case.ts';
import type { FindingFields } from '#shared-types/finding.ts';
import type { CaseId, FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { MarkFields } from '#shared-types/mark.ts';
import { stages, type PhotoFields } from '#shared-types/photo.ts';
import { imagePointSchema } from '#shared-types/points.ts';
import type { Instant } from '#shared-types/times.ts';

import { shippedPath } from '../../electron/processes/entry-table.ts';
import { chanceFrom, type Chance } from './world-chance.ts';
import { drawFinding, drawWords } from './world-findings.ts';
import { geometryBetween } from './world-marks.ts';
import { claimOpenings, customers, makers } from './world-words.ts';

export type WorldPhoto = {
  readonly id: PhotoId;
  readonly name: string;
  /** Draws the picture's pixels: no two photos of a world show the same. */
  readonly pictureSeed: number;
  readonly width: number;
  readonly height: number;
  readonly fields: PhotoFields;
};

export type WorldCase = {
  readonly id: CaseId;
  readonly openedAt: Instant;
  readonly draft: CaseDraft;
  readonly outcome: Outcome;
  readonly conclusion: string;
  readonly photos: readonly WorldPhoto[];
  readonly findings: readonly { readonly id: FindingId; readonly fields: FindingFields }[];
  readonly marks: readonly MarkFields[];
};

export type World = { readonly analyst: AnalystDraft; readonly cases: readonly WorldCase[] };

type Range = readonly [least: number, most: number];
/** How many of each: cases in the world, the rest in every case. */
export type WorldSize = {
  readonly cases: number;
  readonly findings: Range;
  readonly photos: Range;
  readonly marks: Range;
};

/** The machine kind that the program ships, as the engine loads it. */
export function turbochargerPack(): KnowledgePack {
  const file = shippedPath('analysis', 'knowledge', 'packs', 'turbocharger.json');
  return loadPack(readFileSync(file, 'utf8'), 'turbocharger.json');
}

export function makeWorld(seed: number, size: WorldSize, pack = turbochargerPack()): World {
  const chance = chanceFrom(seed);
  return {
    analyst: { name: 'M. Sundgren', qualification: 'marine engineer' },
    cases: Array.from({ length: size.cases }, (_, index) => drawCase(chance.branch(), index, size, pack)),
  };
}

function drawCase(chance: Chance, index: number, size: WorldSize, pack: KnowledgePack): WorldCase {
  const findings = Array.from({ length: chance.between(size.findings) }, () => ({
    id: chance.uuid() as FindingId,
    fields: drawFinding(pack, chance),
  }));
  const photos = Array.from({ length: chance.between(size.photos) }, (_, place) =>
    drawPhoto(chance, index * 10_000 + place, pack),
  );
  const markCount = photos.length === 0 ? 0 : chance.between(size.marks);
  return {
    id: chance.uuid() as CaseId,
    // One case a day: later cases are opened later.
    openedAt: new Date(Date.UTC(2024, 0, 8 + index, 7, chance.integer(60))).toISOString() as Instant,
    draft: drawDraft(chance, index, pack.id),
    outcome: chance.pick(outcomes),
    conclusion: drawWords(chance, [0, 4]),
    photos,
    findings,
    marks: Array.from({ length: markCount }, (_, order) =>
      drawMark(
        chance,
        order,
        chance.pick(photos),
        findings.map(({ id }) => id),
      ),
    ),
  };
}

function drawDraft(chance: Chance, index: number, machineKind: string): CaseDraft {
  const model = `R${String(20 + chance.integer(60))}`;
  return {
    number: `${String(24 + Math.floor(index / 1_000))}-${String(index % 1_000).padStart(4, '0')}`,
    unit: {
      maker: chance.pick(makers),
      model,
      serial: `SN-${String(10_000 + chance.integer(90_000))}`,
      partNumber: chance.happens(0.8) ? `${model}-${String(1_000 + chance.integer(900))}` : '',
    },
    customer: chance.pick(customers),
    claim: `${chance.pick(claimOpenings)} ${drawWords(chance, [0, 2])}`.trim(),
    machineKind,
  };
}

function drawPhoto(chance: Chance, pictureSeed: number, pack: KnowledgePack): WorldPhoto {
  const parts = Array.from({ length: chance.between([0, 2]) }, () => {
    const component = chance.pick(pack.components);
    const placed = component.positions.length > 0 && chance.happens(0.5);
    return { component: component.id, position: placed ? chance.pick(component.positions) : null };
  });
  return {
    id: chance.uuid() as PhotoId,
    name: `IMG_${String(pictureSeed).padStart(8, '0')}.jpg`,
    pictureSeed,
    width: 64 + 8 * chance.integer(8),
    height: 48 + 8 * chance.integer(8),
    fields: {
      caption: drawWords(chance, [0, 1]),
      stage: chance.happens(0.7) ? chance.pick(stages) : null,
      seenFrom: chance.happens(0.5) ? chance.pick(pack.sides).id : null,
      parts,
    },
  };
}

function drawMark(
  chance: Chance,
  order: number,
  photo: WorldPhoto,
  findingIds: readonly FindingId[],
): MarkFields {
  const point = () =>
    imagePointSchema.parse({
      x: chance.integer(photo.width * 4) / 4,
      y: chance.integer(photo.height * 4) / 4,
    });
  return {
    id: chance.uuid() as MarkId,
    photoId: photo.id,
    findingId: findingIds.length > 0 && chance.happens(0.8) ? chance.pick(findingIds) : null,
    geometry: geometryBetween(order, point(), point()),
    order,
  };
}
