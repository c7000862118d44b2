/** The table of findings, and what was written about each. */
import type { DamageClass, Finding } from '#shared-types/finding.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { reportTexts } from '#shared-types/texts/report.ts';

import { classChip, type SizedDrawing } from './class-key.ts';
import { labelRange } from './label-range.ts';
import type { ReportPlate } from './report-plates.ts';
import { bendLabel, extentLabel, kindLabel, placeLabelAtStart } from './term-labels.ts';

export type FindingRow = {
  readonly number: number;
  /** Null for what is not there or could not be examined: only damage that is there has a class. */
  readonly class: DamageClass | null;
  readonly chip: SizedDrawing | null;
  readonly part: string;
  readonly finding: string;
  readonly presence: string;
  readonly extent: string;
  /** "Plate 1, P 2.1", one entry a plate. */
  readonly plates: readonly string[];
};

export type FindingNote = { readonly name: string; readonly words: string };

/** In the order of `findings`. */
export function findingRows(
  findings: readonly Finding[],
  plates: readonly Pick<ReportPlate, 'number' | 'marks'>[],
  pack: KnowledgePack,
): FindingRow[] {
  return findings.map((finding) => ({
    number: finding.number,
    class: finding.presence === 'present' ? finding.class : null,
    chip: finding.presence === 'present' ? classChip(finding.class) : null,
    part: placeLabelAtStart(pack, finding),
    finding: damageWords(finding, pack),
    presence: commonTexts.presences[finding.presence],
    extent:
      finding.extent === null ? reportTexts.findings.nowhere : extentLabel(pack, finding, finding.extent),
    plates: plates.flatMap((plate) => {
      const labels = plate.marks
        .filter((mark) => mark.findingNumber === finding.number)
        .map((mark) => mark.label);
      return labels.length === 0 ? [] : [reportTexts.plates.reference(plate.number, labelRange(labels))];
    }),
  }));
}

export function findingNotes(findings: readonly Finding[]): FindingNote[] {
  return findings
    .filter((finding) => finding.note.trim() !== '')
    .map((finding) => ({ name: reportTexts.findings.note(finding.number), words: finding.note }));
}

/** Kind of damage, how bad and which way bent: "bent over, severe, anticlockwise seen from the air inlet". */
function damageWords(finding: Finding, pack: KnowledgePack): string {
  const isThere = finding.presence === 'present';
  return [
    kindLabel(pack, finding.kind),
    ...(finding.severity === null || !isThere ? [] : [reportTexts.severities[finding.severity]]),
    ...(finding.bend === null || !isThere ? [] : [bendLabel(pack, finding.bend)]),
  ].join(', ');
}

/** The whole finding in a line; that it is present goes without saying. */
export function findingWords(finding: Finding, pack: KnowledgePack): string {
  return [
    damageWords(finding, pack),
    ...(finding.presence === 'present' ? [] : [commonTexts.presences[finding.presence]]),
    ...(finding.extent === null ? [] : [extentLabel(pack, finding, finding.extent)]),
  ].join(', ');
}
