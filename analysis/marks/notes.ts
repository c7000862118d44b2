/**
 * Whether a mark has to be given to a finding. An arrow, a ring, an outline or a line points at damage, and damage is a
 * finding. Words written on the photo may be no more than a note ("oil side", "as received"), and a length may be measured
 * of a sound part: without a finding they lack nothing, and they carry no label and no class. They can be given to a
 * finding like any other mark; then they are labelled with it. A scale never shows damage: it belongs to the photo. This is
 * the only place where that is decided.
 */
import type { FindingId } from '#shared-types/ids.ts';
import type { MarkKind } from '#shared-types/mark.ts';

/** Only what the question looks at. */
export type GivenOrNot = {
  readonly findingId: FindingId | null;
  readonly geometry: { readonly kind: MarkKind };
};

const withoutFinding: ReadonlySet<MarkKind> = new Set(['text', 'dimension', 'scale', 'rectangle']);
const scales: ReadonlySet<MarkKind> = new Set(['scale', 'rectangle']);

/** Words, a length or a scale that belong to no finding. */
export function isNote(mark: GivenOrNot): boolean {
  return mark.findingId === null && withoutFinding.has(mark.geometry.kind);
}

/** What makes pixels millimetres: nothing to be given to a finding. */
export function isScale(kind: MarkKind): boolean {
  return scales.has(kind);
}

/** Whether a mark that has just been drawn is asked what it shows. */
export function asksForFinding(kind: MarkKind): boolean {
  return !withoutFinding.has(kind);
}

/** Still to be given to a finding: the marks are not done before none of them is. */
export function awaitsFinding(mark: GivenOrNot): boolean {
  return mark.findingId === null && !isNote(mark);
}
