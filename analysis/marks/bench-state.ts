/**
 * Marks and findings of one case as the bench works on them: immutable, by id. Patches say what shall be; they carry
 * no revisions, so that undo can bring a thing back whatever was saved in between. toChanges fills the revisions in.
 */
import type { BenchChange, BenchOutcome } from '#shared-types/bench-change.ts';
import type { Finding, FindingFields } from '#shared-types/finding.ts';
import type { FindingId, MarkId } from '#shared-types/ids.ts';
import type { Mark, MarkFields } from '#shared-types/mark.ts';
import { likelyRevisions } from '../history/likely-revisions.ts';
import { sameRevisionsOf } from '../history/same-revisions.ts';

/** `revision` is null until the library has it. */
export type HeldMark = MarkFields & { readonly revision: number | null };
/** `number` is the one the library will most likely give while `revision` is null. */
export type HeldFinding = FindingFields & {
  readonly id: FindingId;
  readonly number: number;
  readonly revision: number | null;
};

export type BenchState = {
  readonly marks: ReadonlyMap<MarkId, HeldMark>;
  readonly findings: ReadonlyMap<FindingId, HeldFinding>;
};

export type BenchPatch =
  | { readonly patch: 'put-mark'; readonly mark: MarkFields }
  | { readonly patch: 'remove-mark'; readonly markId: MarkId }
  | { readonly patch: 'put-finding'; readonly findingId: FindingId; readonly fields: FindingFields }
  | { readonly patch: 'remove-finding'; readonly findingId: FindingId };

export const emptyBench: BenchState = { marks: new Map(), findings: new Map() };

/** The state as the library answered it. */
export function benchOf(read: {
  readonly marks: readonly Mark[];
  readonly findings: readonly Finding[];
}): BenchState {
  return {
    marks: new Map(read.marks.map((mark) => [mark.id, mark])),
    findings: new Map(read.findings.map((finding) => [finding.id, finding])),
  };
}

/**
 * The state after the patches, in their order. A finding that is there keeps its class: a class is changed with its
 * reason, by a request of its own, and that is never undone.
 */
export function applyPatches(state: BenchState, patches: readonly BenchPatch[]): BenchState {
  if (patches.length === 0) return state;
  const marks = new Map(state.marks);
  const findings = new Map(state.findings);
  for (const patch of patches) {
    switch (patch.patch) {
      case 'put-mark':
        marks.set(patch.mark.id, { ...patch.mark, revision: marks.get(patch.mark.id)?.revision ?? null });
        break;
      case 'remove-mark':
        marks.delete(patch.markId);
        break;
      case 'put-finding': {
        const held = findings.get(patch.findingId);
        findings.set(patch.findingId, {
          ...patch.fields,
          class: held?.class ?? patch.fields.class,
          id: patch.findingId,
          number: held?.number ?? nextNumber(findings.values()),
          revision: held?.revision ?? null,
        });
        break;
      }
      case 'remove-finding':
        findings.delete(patch.findingId);
        break;
    }
  }
  return { marks, findings };
}

function nextNumber(findings: Iterable<HeldFinding>): number {
  let highest = 0;
  for (const finding of findings) highest = Math.max(highest, finding.number);
  return highest + 1;
}

/** Patches that bring back, in this order, what `patches` changed when applied to `state`. */
export function inversePatches(state: BenchState, patches: readonly BenchPatch[]): readonly BenchPatch[] {
  const inverse: BenchPatch[] = [];
  let at = state;
  for (const patch of patches) {
    inverse.unshift(...inverseOf(at, patch));
    at = applyPatches(at, [patch]);
  }
  return inverse;
}

function inverseOf(state: BenchState, patch: BenchPatch): readonly BenchPatch[] {
  if (patch.patch === 'put-mark' || patch.patch === 'remove-mark') {
    const id = patch.patch === 'put-mark' ? patch.mark.id : patch.markId;
    const held = state.marks.get(id);
    if (held !== undefined) return [{ patch: 'put-mark', mark: markFieldsOf(held) }];
    return patch.patch === 'put-mark' ? [{ patch: 'remove-mark', markId: id }] : [];
  }
  const held = state.findings.get(patch.findingId);
  if (held !== undefined) {
    return [{ patch: 'put-finding', findingId: patch.findingId, fields: findingFieldsOf(held) }];
  }
  return patch.patch === 'put-finding' ? [{ patch: 'remove-finding', findingId: patch.findingId }] : [];
}

export function markFieldsOf(mark: HeldMark): MarkFields {
  const { id, photoId, findingId, geometry, order } = mark;
  return { id, photoId, findingId, geometry, order };
}

export function findingFieldsOf(finding: FindingFields): FindingFields {
  const { component, position, zone, kind, presence, severity, extent, bend, note } = finding;
  return { component, position, zone, kind, class: finding.class, presence, severity, extent, bend, note };
}

/**
 * What to ask of the library so that `confirmed` (as the library last answered) becomes what it is after the patches.
 * A thing touched twice is asked for once. Order: findings put, marks put, marks removed, findings removed, so that a
 * mark never names a finding that is not there. Removing what the library never had asks for nothing.
 */
export function toChanges(confirmed: BenchState, patches: readonly BenchPatch[]): BenchChange[] {
  const after = applyPatches(confirmed, patches);
  const markIds = new Set<MarkId>();
  const findingIds = new Set<FindingId>();
  for (const patch of patches) {
    if (patch.patch === 'put-mark') markIds.add(patch.mark.id);
    else if (patch.patch === 'remove-mark') markIds.add(patch.markId);
    else findingIds.add(patch.findingId);
  }
  const puts: BenchChange[] = [];
  const removals: BenchChange[] = [];
  const findingRemovals: BenchChange[] = [];
  for (const findingId of findingIds) {
    const finding = after.findings.get(findingId);
    const revision = confirmed.findings.get(findingId)?.revision ?? null;
    if (finding !== undefined) {
      puts.push({ change: 'put-finding', findingId, fields: findingFieldsOf(finding), revision });
    } else if (revision !== null) {
      findingRemovals.push({ change: 'remove-finding', findingId, revision });
    }
  }
  for (const markId of markIds) {
    const mark = after.marks.get(markId);
    const revision = confirmed.marks.get(markId)?.revision ?? null;
    if (mark !== undefined) puts.push({ change: 'put-mark', mark: markFieldsOf(mark), revision });
    else if (revision !== null) removals.push({ change: 'remove-mark', markId, revision });
  }
  return [...puts, ...removals, ...findingRemovals];
}

/** The state with the library's answer to a commit taken in. */
export function foldOutcome(state: BenchState, outcome: BenchOutcome): BenchState {
  const marks = new Map(state.marks);
  const findings = new Map(state.findings);
  for (const mark of outcome.marks) marks.set(mark.id, mark);
  for (const finding of outcome.findings) findings.set(finding.id, finding);
  for (const id of outcome.removedMarkIds) marks.delete(id);
  for (const id of outcome.removedFindingIds) findings.delete(id);
  return { marks, findings };
}

/** `after` as the library will most likely hold it once it has saved it. */
export function likelySaved(before: BenchState, after: BenchState): BenchState {
  return {
    marks: likelyRevisions(before.marks, after.marks),
    findings: likelyRevisions(before.findings, after.findings),
  };
}

/** Whether both hold the same things at the same revisions. */
export function sameRevisions(one: BenchState, other: BenchState): boolean {
  return sameRevisionsOf(one.marks, other.marks) && sameRevisionsOf(one.findings, other.findings);
}
