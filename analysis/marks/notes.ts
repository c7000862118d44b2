/**
 * Whether a mark has to be given to a finding. An arrow, a ring, an outline or a line points at damage, and damage is a
 * finding. Words written on the photo may be no more than a note ("oil side", "as received"): without a finding they are
 * one, they lack nothing, and they carry no label and no class. Words can be given to a finding like any other mark; then
 * they are labelled with it. This is the only place where that is decided.
 */
import type { FindingId } from '#shared-types/ids.ts';
import type { MarkKind } from '#shared-types/mark.ts';

/** Only what the question looks at. */
export type GivenOrNot = {
  readonly findingId: FindingId | null;
  readonly geometry: { readonly kind: MarkKind };
};

/** Words that belong to no finding. */
export function isNote(mark: GivenOrNot): boolean {
  return mark.findingId === null && mark.geometry.kind === 'text';
}

/** Still to be given to a finding: the marks are not done before none of them is. */
export function awaitsFinding(mark: GivenOrNot): boolean {
  return mark.findingId === null && !isNote(mark);
}
