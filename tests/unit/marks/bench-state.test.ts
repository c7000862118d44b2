import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  applyPatches,
  benchOf,
  emptyBench,
  findingFieldsOf,
  foldOutcome,
  markFieldsOf,
  sameRevisions,
  toChanges,
  type BenchState,
} from '#analysis/marks/bench-state.ts';
import { benchCommitSchema, type BenchChange, type BenchOutcome } from '#shared-types/bench-change.ts';
import type { Finding } from '#shared-types/finding.ts';
import type { Mark } from '#shared-types/mark.ts';
import {
  contentOf,
  findingFields,
  findingId,
  gestures,
  markFields,
  markId,
  patchesOf,
} from './bench-gestures.ts';

const mark: Mark = { ...markFields(markId(1), 100, findingId(1)), revision: 4 };
const finding: Finding = { ...findingFields(), id: findingId(1), number: 7, revision: 9 };
const read = benchOf({ marks: [mark], findings: [finding] });

/** Carries changes out on rows as the contract of bench-change.ts says: revisions checked, new things at revision 1. */
function carriedOut(library: BenchState, changes: readonly BenchChange[]): BenchOutcome {
  const marks: Mark[] = [];
  const findings: Finding[] = [];
  const removedMarkIds: Mark['id'][] = [];
  const removedFindingIds: Finding['id'][] = [];
  for (const change of changes) {
    if (change.change === 'put-mark') {
      const row = library.marks.get(change.mark.id);
      expect(change.revision).toBe(row?.revision ?? null);
      marks.push({ ...change.mark, revision: (change.revision ?? 0) + 1 });
    } else if (change.change === 'remove-mark') {
      expect(library.marks.get(change.markId)?.revision).toBe(change.revision);
      removedMarkIds.push(change.markId);
    } else if (change.change === 'put-finding') {
      const row = library.findings.get(change.findingId);
      expect(change.revision).toBe(row?.revision ?? null);
      findings.push({
        ...change.fields,
        id: change.findingId,
        number: row?.number ?? library.findings.size + findings.length + 1,
        revision: (change.revision ?? 0) + 1,
      });
    } else {
      expect(library.findings.get(change.findingId)?.revision).toBe(change.revision);
      removedFindingIds.push(change.findingId);
    }
  }
  return { marks, findings, removedMarkIds, removedFindingIds };
}

describe('changes asked of the library', () => {
  it('carry the revision the page last saw, and null for a new thing', () => {
    const changes = toChanges(read, [
      { patch: 'put-mark', mark: markFields(markId(1), 200, findingId(2)) },
      { patch: 'put-finding', findingId: findingId(2), fields: findingFields({ note: 'new' }) },
    ]);
    expect(changes).toEqual([
      {
        change: 'put-finding',
        findingId: findingId(2),
        fields: findingFields({ note: 'new' }),
        revision: null,
      },
      { change: 'put-mark', mark: markFields(markId(1), 200, findingId(2)), revision: 4 },
    ]);
    expect(benchCommitSchema.shape.changes.safeParse(changes).success).toBe(true);
  });

  it('remove a mark before the finding it showed', () => {
    const changes = toChanges(read, [
      { patch: 'remove-finding', findingId: findingId(1) },
      { patch: 'remove-mark', markId: markId(1) },
    ]);
    expect(changes).toEqual([
      { change: 'remove-mark', markId: markId(1), revision: 4 },
      { change: 'remove-finding', findingId: findingId(1), revision: 9 },
    ]);
  });

  it('name a thing once, and not at all when it came and went', () => {
    const changes = toChanges(read, [
      { patch: 'put-mark', mark: markFields(markId(1), 200, null) },
      { patch: 'put-mark', mark: markFields(markId(1), 300, null) },
      { patch: 'put-mark', mark: markFields(markId(5), 300, null) },
      { patch: 'remove-mark', markId: markId(5) },
    ]);
    expect(changes).toEqual([{ change: 'put-mark', mark: markFields(markId(1), 300, null), revision: 4 }]);
  });

  it('never change the class of a finding that is there', () => {
    const [change] = toChanges(read, [
      {
        patch: 'put-finding',
        findingId: findingId(1),
        fields: findingFields({ class: 'secondary', note: 'other' }),
      },
    ]);
    expect(change).toMatchObject({ fields: { class: 'primary', note: 'other' }, revision: 9 });
  });

  it('bring the library to the state on screen, gesture after gesture', () => {
    fc.assert(
      fc.property(gestures, (sequence) => {
        let library = emptyBench;
        let onScreen = emptyBench;
        for (const gesture of sequence) {
          const patches = patchesOf(gesture, onScreen);
          onScreen = applyPatches(onScreen, patches);
          library = foldOutcome(library, carriedOut(library, toChanges(library, patches)));
          expect(contentOf(library)).toEqual(contentOf(onScreen));
        }
      }),
    );
  });
});

describe('the state', () => {
  it('is never changed in place', () => {
    const before = contentOf(read);
    applyPatches(read, [
      { patch: 'remove-mark', markId: markId(1) },
      { patch: 'put-finding', findingId: findingId(1), fields: findingFields({ note: 'x' }) },
    ]);
    expect(contentOf(read)).toEqual(before);
  });

  it('gives a new finding the number after the highest until the library answers', () => {
    const after = applyPatches(read, [
      { patch: 'put-finding', findingId: findingId(2), fields: findingFields() },
    ]);
    expect(after.findings.get(findingId(2))).toMatchObject({ number: 8, revision: null });
    const answered = foldOutcome(after, {
      marks: [],
      findings: [{ ...findingFields(), id: findingId(2), number: 12, revision: 1 }],
      removedMarkIds: [],
      removedFindingIds: [],
    });
    expect(answered.findings.get(findingId(2))).toMatchObject({ number: 12, revision: 1 });
  });

  it('gives fields without ids, numbers and revisions', () => {
    expect(findingFieldsOf(finding)).toEqual(findingFields());
    expect(markFieldsOf(mark)).toEqual(markFields(markId(1), 100, findingId(1)));
  });

  it('tells whether another reading of the library brought anything new', () => {
    expect(sameRevisions(read, benchOf({ marks: [mark], findings: [finding] }))).toBe(true);
    expect(sameRevisions(read, benchOf({ marks: [{ ...mark, revision: 5 }], findings: [finding] }))).toBe(
      false,
    );
    expect(sameRevisions(read, benchOf({ marks: [], findings: [finding] }))).toBe(false);
  });
});
