/** What stands in a mark's label, on screen and on paper alike. */
import { classStyles } from '#shared-types/class-style.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import { isNote, type GivenOrNot } from '../marks/notes.ts';

/** Only what the numbering looks at, so that a case that is being edited can be numbered too. */
export type LabelledPhoto = { readonly id: PhotoId };
export type LabelledMark = GivenOrNot & {
  readonly id: MarkId;
  readonly photoId: PhotoId;
  /** Drawing order on its photo. */
  readonly order: number;
};
export type LabelledFinding = {
  readonly id: FindingId;
  readonly number: number;
  readonly class: DamageClass;
};

/**
 * `<class letter> <finding number>.<ordinal>`, "P 7.1" say; the ordinal counts the finding's marks through the case
 * from 1, in the order of `photos` and on each photo in drawing order. A mark that is given to no finding (or to one
 * that is not in `findings`) is labelled with the letter of the undecided alone, a note (../marks/notes.ts) with nothing.
 * Marks of photos that are not in `photos` get no label.
 */
export function markLabels(
  photos: readonly LabelledPhoto[],
  marks: readonly LabelledMark[],
  findings: readonly LabelledFinding[],
): Map<MarkId, string> {
  const findingOf = new Map(findings.map((finding) => [finding.id, finding]));
  const counts = new Map<FindingId, number>();
  const labels = new Map<MarkId, string>();
  for (const photo of photos) {
    for (const mark of marksOnPhoto(marks, photo.id)) {
      const finding = mark.findingId === null ? undefined : findingOf.get(mark.findingId);
      if (finding === undefined) {
        labels.set(mark.id, isNote(mark) ? '' : classStyles.undecided.letter);
        continue;
      }
      const ordinal = (counts.get(finding.id) ?? 0) + 1;
      counts.set(finding.id, ordinal);
      labels.set(mark.id, `${classStyles[finding.class].letter} ${finding.number}.${ordinal}`);
    }
  }
  return labels;
}

/** The photo's marks in drawing order; marks of equal order in the order of their ids, so that it never varies. */
export function marksOnPhoto<M extends LabelledMark>(marks: readonly M[], photoId: PhotoId): M[] {
  return marks
    .filter((mark) => mark.photoId === photoId)
    .sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1));
}
