/** Deeds at the bench as an analyst might do them one after the other, drawn by chance against the state they meet. */
import {
  changedFinding,
  drawnMark,
  duplicatedMarks,
  givenMarks,
  givenToNewFinding,
  movedMarks,
  removedFinding,
  removedMarks,
  reshapedMarks,
  type Patches,
} from '#analysis/marks/bench-deeds.ts';
import type { BenchState } from '#analysis/marks/bench-state.ts';
import { handlesOf, moveHandle } from '#analysis/marks/mark-handles.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { toBack, toFront } from '#analysis/marks/stacking.ts';
import { severities } from '#shared-types/finding.ts';
import type { FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';

import type { Chance } from './world-chance.ts';
import { drawFinding, drawWords } from './world-findings.ts';
import { geometryBetween } from './world-marks.ts';

export const deeds = [
  'draw',
  'draw another',
  'reshape',
  'move several',
  'duplicate',
  'to front',
  'to back',
  'give',
  'give to a new one',
  'delete',
  'write of a finding',
  'remove a finding',
] as const;

export type DeedPhoto = { readonly id: PhotoId; readonly width: number; readonly height: number };
export type DeedGround = { readonly photos: readonly DeedPhoto[]; readonly pack: KnowledgePack };

/** What one deed changes; nothing where there is nothing to do it to. */
export function drawDeed(chance: Chance, state: BenchState, { photos, pack }: DeedGround): Patches {
  const deed = chance.pick(deeds);
  const photo = chance.pick(photos);
  const here = [...state.marks.values()].filter((mark) => mark.photoId === photo.id);
  const findings = [...state.findings.keys()];
  const several = new Set(here.filter(() => chance.happens(0.5)).map(({ id }) => id));
  const point = () => imagePoint(chance.integer(photo.width * 4) / 4, chance.integer(photo.height * 4) / 4);
  const newIds = () => here.map(() => chance.uuid() as MarkId);
  switch (deed) {
    case 'draw':
    case 'draw another':
      return drawnMark(
        state,
        chance.uuid() as MarkId,
        photo.id,
        geometryBetween(chance.integer(35), point(), point()),
      );
    case 'reshape': {
      if (here.length === 0) return [];
      const { id, geometry } = chance.pick(here);
      const ground = { image: photo, unit: 0.25 };
      const handles = handlesOf(geometry, ground);
      if (handles.length === 0) return [];
      return reshapedMarks(state, [
        { id, geometry: moveHandle(geometry, chance.pick(handles).name, point(), ground) },
      ]);
    }
    case 'move several':
      return movedMarks(state, several, chance.between([-30, 30]), chance.between([-30, 30]), photo);
    case 'duplicate':
      return duplicatedMarks(state, several, newIds(), 4, photo).patches;
    case 'to front':
      return toFront(state, several);
    case 'to back':
      return toBack(state, several);
    case 'give':
      return findings.length === 0 ? [] : givenMarks(state, several, chance.pick(findings));
    case 'give to a new one': {
      const fields = { ...drawFinding(pack, chance), presence: 'present' as const };
      return givenToNewFinding(state, several, chance.uuid() as FindingId, fields);
    }
    case 'delete':
      return removedMarks(state, several);
    case 'write of a finding': {
      if (findings.length === 0) return [];
      const id = chance.pick(findings);
      const note = drawWords(chance, [0, 3]);
      return changedFinding(state, id, { note, severity: chance.pick(severities) });
    }
    case 'remove a finding':
      return findings.length === 0 || chance.happens(0.5) ? [] : removedFinding(state, chance.pick(findings));
  }
}
