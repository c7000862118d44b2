/** The case's marks as screen and paper label them. */
import { markLabels, marksOnPhoto } from '#analysis/report/mark-labels.ts';
import { isNote } from '#analysis/marks/notes.ts';
import type { BenchState, HeldFinding, HeldMark } from '#analysis/marks/bench-state.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { MarkId, PhotoId } from '#shared-types/ids.ts';
import type { Photo } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';

export type LabelledMark = {
  readonly mark: HeldMark;
  readonly label: string;
  /** What it is called in words: its label; a note by what it says. */
  readonly name: string;
  readonly note: boolean;
  readonly damageClass: DamageClass;
  readonly finding: HeldFinding | null;
  /** What is written on a mark that measures, or on a scale; empty on any other. */
  readonly reading: string;
};

export function labelsOf(photos: readonly Photo[], state: BenchState): ReadonlyMap<MarkId, string> {
  return markLabels(photos, [...state.marks.values()], [...state.findings.values()]);
}

/** The marks of one photo in drawing order, the topmost last. */
export function labelledMarks(
  photoId: PhotoId,
  state: BenchState,
  labels: ReadonlyMap<MarkId, string>,
  /** What is written on marks that measure, and on scales. */
  readings: ReadonlyMap<MarkId, string>,
): LabelledMark[] {
  return marksOnPhoto([...state.marks.values()], photoId).map((mark) => {
    const finding = mark.findingId === null ? null : (state.findings.get(mark.findingId) ?? null);
    const label = labels.get(mark.id) ?? '';
    const reading = readings.get(mark.id) ?? '';
    return {
      mark,
      label,
      name: nameOf(mark, label, reading),
      reading,
      note: isNote(mark),
      damageClass: finding?.class ?? 'undecided',
      finding,
    };
  });
}

function nameOf({ geometry }: HeldMark, label: string, reading: string): string {
  if (geometry.kind === 'scale' || geometry.kind === 'rectangle') return marksTexts.scaleName(reading);
  if (label !== '') return label;
  if (geometry.kind === 'dimension') return marksTexts.lengthName(reading);
  return geometry.kind === 'text' ? marksTexts.noteName(geometry.words) : '';
}
