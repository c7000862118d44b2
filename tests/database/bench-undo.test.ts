/** Undo and redo down to the disk: what the library holds after saving is what was shown, whatever was done before. */
import fc from 'fast-check';
import { expect, test } from 'vitest';

import {
  accepted,
  deskOf,
  nextChanges,
  perform,
  redoAt,
  undoAt,
  type BenchDesk,
} from '#analysis/marks/bench-desk.ts';
import { benchOf, type BenchState } from '#analysis/marks/bench-state.ts';
import type { CaseId } from '#shared-types/ids.ts';

import { onePropertyLibrary } from '../support/property-library.ts';
import { chanceFrom } from '../support/world-chance.ts';
import { drawDeed } from '../support/world-deeds.ts';
import type { EngineHere } from '../support/world-engine.ts';
import { turbochargerPack } from '../support/world.ts';

const size = { cases: 1, findings: [2, 4], photos: [2, 3], marks: [4, 8] } as const;

const walks = fc.array(
  fc.oneof(
    { weight: 5, arbitrary: fc.nat() },
    { weight: 2, arbitrary: fc.constantFrom('undo' as const, 'redo' as const) },
    { weight: 2, arbitrary: fc.constantFrom('save one' as const, 'save all' as const) },
  ),
  { minLength: 5, maxLength: 30 },
);

async function savedOne(engine: EngineHere, caseId: CaseId, desk: BenchDesk): Promise<BenchDesk> {
  const changes = nextChanges(desk);
  if (changes === null) return desk;
  return accepted(desk, changes.length === 0 ? null : await engine.ask('bench.commit', { caseId, changes }));
}

async function savedAll(engine: EngineHere, caseId: CaseId, desk: BenchDesk): Promise<BenchDesk> {
  let at = desk;
  while (at.pending.length > 0) at = await savedOne(engine, caseId, at);
  return at;
}

const byId = (one: { readonly id: string }, other: { readonly id: string }) => (one.id < other.id ? -1 : 1);

/** Numbers and revisions too: what the page shows is what the library says. */
const whole = ({ marks, findings }: BenchState) => ({
  marks: [...marks.values()].sort(byId),
  findings: [...findings.values()].sort(byId),
});
const apartFromRevisions = (state: BenchState) => {
  const { marks, findings } = whole(state);
  return {
    marks: marks.map((mark) => ({ ...mark, revision: 0 })),
    findings: findings.map((finding) => ({ ...finding, revision: 0 })),
  };
};

test('the library holds what is shown after any deeds, undone, redone and saved in any order, and all can be undone', async () => {
  const pack = turbochargerPack();
  await fc.assert(
    fc.asyncProperty(fc.nat(1_000_000), walks, async (seed, moves) => {
      await using library = await onePropertyLibrary(seed, size);
      const { engine, world } = library;
      const [here] = world.cases;
      if (here === undefined) throw new Error('the world has a case');
      const caseId = here.id;
      const read = async () => benchOf(await engine.ask('bench.read', { caseId }));
      const ground = { photos: here.photos, pack };

      const before = await read();
      let desk = deskOf(before);
      for (const move of moves) {
        if (move === 'save one') desk = await savedOne(engine, caseId, desk);
        else if (move === 'save all') desk = await savedAll(engine, caseId, desk);
        else if (move === 'undo') desk = undoAt(desk) ?? desk;
        else if (move === 'redo') desk = redoAt(desk) ?? desk;
        else desk = perform(desk, drawDeed(chanceFrom(move), desk.shown, ground));
      }
      desk = await savedAll(engine, caseId, desk);
      expect(whole(desk.shown)).toEqual(whole(await read()));

      for (let back = undoAt(desk); back !== null; back = undoAt(desk)) desk = back;
      desk = await savedAll(engine, caseId, desk);
      const after = await read();
      expect(whole(desk.shown)).toEqual(whole(after));
      expect(apartFromRevisions(after)).toEqual(apartFromRevisions(before));
    }),
    { numRuns: 25 },
  );
}, 120_000);
