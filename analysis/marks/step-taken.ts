/** What one step of the bench's history did, for whoever takes it back or does it again. Pure. */
import type { FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { MarkKind } from '#shared-types/mark.ts';
import type { Patches } from './bench-deeds.ts';
import type { BenchState, HeldFinding, HeldMark } from './bench-state.ts';
import { sameGeometry } from './mark-handles.ts';

export type StepTaken = {
  readonly did:
    | 'drawn'
    | 'deleted'
    | 'given'
    | 'taken-from-finding'
    | 'reshaped'
    | 'stacked'
    | 'finding-entered'
    | 'finding-deleted'
    | 'finding-changed';
  readonly marks: {
    readonly count: number;
    /** Null where they are of several kinds, or none. */
    readonly kind: MarkKind | null;
    /** Null where there is none. */
    readonly photoId: PhotoId | null;
  };
  /** Of the finding that the step is about; null where it is about none. */
  readonly findingNumber: number | null;
};

/**
 * `earlier` and `later` are the bench before and after the step as it was done at first; `patches` name what it touched,
 * in either direction. Null where they touch nothing.
 */
export function stepTaken(earlier: BenchState, later: BenchState, patches: Patches): StepTaken | null {
  const marks = touchedIds<MarkId>(patches, (patch) =>
    patch.patch === 'put-mark' ? patch.mark.id : patch.patch === 'remove-mark' ? patch.markId : null,
  ).map((id) => ({ before: earlier.marks.get(id), after: later.marks.get(id) }));
  const [finding] = touchedIds<FindingId>(patches, (patch) =>
    'findingId' in patch ? patch.findingId : null,
  ).map((id) => ({ before: earlier.findings.get(id), after: later.findings.get(id) }));
  const given = marks.filter(({ before, after }) => before && after && before.findingId !== after.findingId);

  if (finding !== undefined) {
    const { before, after } = finding;
    const did =
      before === undefined ? 'finding-entered' : after === undefined ? 'finding-deleted' : 'finding-changed';
    return { did, marks: aboutMarks(marks), findingNumber: (after ?? before)?.number ?? null };
  }
  const drawn = marks.filter(({ before }) => before === undefined);
  if (drawn.length > 0) return aboutThese('drawn', drawn, null);
  const deleted = marks.filter(({ after }) => after === undefined);
  if (deleted.length > 0) return aboutThese('deleted', deleted, null);
  if (given.length > 0) {
    const to = given[0]?.after?.findingId ?? null;
    const now: HeldFinding | undefined = to === null ? undefined : later.findings.get(to);
    return aboutThese(now === undefined ? 'taken-from-finding' : 'given', given, now?.number ?? null);
  }
  const reshaped = marks.filter(
    ({ before, after }) => before && after && !sameGeometry(before.geometry, after.geometry),
  );
  if (reshaped.length > 0) return aboutThese('reshaped', reshaped, null);
  return marks.length > 0 ? aboutThese('stacked', marks, null) : null;
}

type Touched = { readonly before: HeldMark | undefined; readonly after: HeldMark | undefined };

function touchedIds<Id>(patches: Patches, idOf: (patch: Patches[number]) => Id | null): readonly Id[] {
  return [...new Set(patches.map(idOf).filter((id) => id !== null))];
}

function aboutThese(
  did: StepTaken['did'],
  marks: readonly Touched[],
  findingNumber: number | null,
): StepTaken {
  return { did, marks: aboutMarks(marks), findingNumber };
}

function aboutMarks(marks: readonly Touched[]): StepTaken['marks'] {
  const held = marks.map(({ before, after }) => after ?? before).filter((mark) => mark !== undefined);
  const kinds = new Set(held.map(({ geometry }) => geometry.kind));
  const [kind = null] = kinds;
  return { count: held.length, kind: kinds.size === 1 ? kind : null, photoId: held[0]?.photoId ?? null };
}
