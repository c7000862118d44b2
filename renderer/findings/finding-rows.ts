/** Findings as the table and the panel show them: each with its marks and what it is in conflict with. */
import type { Conflict } from '#analysis/findings/conflicts.ts';
import type { BenchState, HeldFinding } from '#analysis/marks/bench-state.ts';
import { marksOnPhoto } from '#analysis/report/mark-labels.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { FindingId, MarkId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { Photo } from '#shared-types/photo.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';

export type FindingMark = {
  readonly id: MarkId;
  readonly label: string;
  readonly geometry: MarkGeometry;
  readonly damageClass: DamageClass;
  readonly photo: Photo;
  /** Counts through the case's photos from 1. */
  readonly photoNumber: number;
};

export type FindingRow = {
  readonly finding: HeldFinding;
  /** In the order in which they are numbered. */
  readonly marks: readonly FindingMark[];
  readonly conflicts: readonly Conflict[];
};

export function rowsOf(
  photos: readonly Photo[],
  state: BenchState,
  labels: ReadonlyMap<MarkId, string>,
  conflicts: readonly Conflict[],
): readonly FindingRow[] {
  const marksOf = new Map<FindingId, FindingMark[]>();
  const marks = [...state.marks.values()];
  photos.forEach((photo, at) => {
    for (const { id, findingId, geometry } of marksOnPhoto(marks, photo.id)) {
      const finding = findingId === null ? undefined : state.findings.get(findingId);
      if (finding === undefined) continue;
      push(marksOf, finding.id, {
        id,
        label: labels.get(id) ?? '',
        geometry,
        damageClass: finding.class,
        photo,
        photoNumber: at + 1,
      });
    }
  });
  const conflictsOf = new Map<FindingId, Conflict[]>();
  for (const conflict of conflicts) {
    for (const { id } of conflict.findings) push(conflictsOf, id, conflict);
  }
  return [...state.findings.values()].map((finding) => ({
    finding,
    marks: marksOf.get(finding.id) ?? [],
    conflicts: conflictsOf.get(finding.id) ?? [],
  }));
}

/** What a finding is to be settled with, in words; null where there is nothing. */
export function conflictWords({ finding, conflicts }: FindingRow): string | null {
  const { withOthers, possiblyWith, alone } = findingsTexts.conflicts;
  const others = (certain: boolean) =>
    [
      ...new Set(
        conflicts
          .filter((conflict) => conflict.certain === certain)
          .flatMap((conflict) => conflict.findings)
          .filter(({ id }) => id !== finding.id)
          .map(({ number }) => number),
      ),
    ].sort((a, b) => a - b);
  const certain = others(true);
  const possible = others(false).filter((number) => !certain.includes(number));
  const words = [
    ...(['marks-of-absent', 'bend-otherwise'] as const)
      .filter((one) => conflicts.some(({ conflict }) => conflict === one))
      .map((one) => alone[one]),
    ...(certain.length === 0 ? [] : [withOthers(certain)]),
    ...(possible.length === 0 ? [] : [possiblyWith(possible)]),
  ];
  return words.length === 0 ? null : words.join('; ');
}

function push<Key, Value>(lists: Map<Key, Value[]>, key: Key, value: Value): void {
  const known = lists.get(key);
  if (known === undefined) lists.set(key, [value]);
  else known.push(value);
}
