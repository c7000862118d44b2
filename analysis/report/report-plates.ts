/** Plates: each photo with its marks, numbered, captioned, with what its marks show. */
import { markToDrawing } from '#analysis/marks/mark-to-drawing.ts';
import type { Drawing } from '#shared-types/drawing.ts';
import type { DamageClass, Finding } from '#shared-types/finding.ts';
import type { BlobId, MarkId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Mark } from '#shared-types/mark.ts';
import type { Photo } from '#shared-types/photo.ts';
import type { PaperSize } from '#shared-types/settings.ts';
import { reportTexts } from '#shared-types/texts/report.ts';

import { classKey, type SizedDrawing } from './class-key.ts';
import { findingWords } from './finding-rows.ts';
import { labelRange } from './label-range.ts';
import { marksOnPhoto } from './mark-labels.ts';
import { pageGeometry, plateSize } from './page-geometry.ts';
import { partLabel, placeLabel, sideLabel } from './term-labels.ts';

export type PlateMark = {
  readonly label: string;
  readonly class: DamageClass;
  /** Null for a mark that is given to no finding. */
  readonly findingNumber: number | null;
  /** In upright image pixels. */
  readonly drawing: Drawing;
};

/** One line below a plate: which marks, and what they show. */
export type PlateLegendLine = { readonly marks: string; readonly words: string };

export type ReportPlate = {
  readonly number: number;
  /** "Plate 1." */
  readonly name: string;
  readonly caption: string;
  readonly photoNumber: number;
  readonly blobId: BlobId;
  /** Upright size in pixels: the space of the drawings. */
  readonly picture: { readonly width: number; readonly height: number };
  /** Printed size in points. */
  readonly printed: { readonly width: number; readonly height: number };
  readonly marks: readonly PlateMark[];
  readonly key: SizedDrawing | null;
  readonly legend: readonly PlateLegendLine[];
};

export type PlatesInput = {
  readonly photos: readonly Photo[];
  readonly marks: readonly Mark[];
  readonly findings: readonly Finding[];
  readonly pack: KnowledgePack;
  readonly paper: PaperSize;
  readonly labels: ReadonlyMap<MarkId, string>;
};

/** A drawing point of a mark is a CSS pixel on screen; on paper it is as large as one: 1/96 inch. */
const pagePointsPerDrawingPoint = 72 / 96;

/** Photos with marks first, then those without, each in the case's order; plates count from 1. */
export function reportPlates(input: PlatesInput): ReportPlate[] {
  const findingOf = new Map(input.findings.map((finding) => [finding.id, finding]));
  const numbered = input.photos.map((photo, index) => ({
    photo,
    photoNumber: index + 1,
    marks: marksOnPhoto(input.marks, photo.id),
  }));
  const ordered = [
    ...numbered.filter(({ marks }) => marks.length > 0),
    ...numbered.filter(({ marks }) => marks.length === 0),
  ];
  return ordered.map(({ photo, photoNumber, marks }, index) => {
    const picture = { width: photo.width, height: photo.height };
    const printed = plateSize(picture, pageGeometry(input.paper), marks.length > 0);
    const unit = (picture.width / printed.width) * pagePointsPerDrawingPoint;
    const plateMarks = marks.map((mark): PlateMark => {
      const finding = mark.findingId === null ? undefined : findingOf.get(mark.findingId);
      const label = input.labels.get(mark.id) ?? '';
      const damageClass = finding?.class ?? 'undecided';
      return {
        label,
        class: damageClass,
        findingNumber: finding?.number ?? null,
        drawing: markToDrawing(mark.geometry, { class: damageClass, label, unit, within: picture }),
      };
    });
    return {
      number: index + 1,
      name: reportTexts.plates.name(index + 1),
      caption: captionOf(photo, photoNumber, input.photos.length, input.pack),
      photoNumber,
      blobId: photo.blobId,
      picture,
      printed,
      marks: plateMarks,
      key: classKey(new Set(plateMarks.map((mark) => mark.class))),
      legend: legendOf(plateMarks, input.findings, input.pack),
    };
  });
}

/** The analyst's caption, then what the photo is known to show and how, then which of how many it is. */
function captionOf(photo: Photo, photoNumber: number, photoCount: number, pack: KnowledgePack): string {
  const written = photo.caption.replace(/\s+/g, ' ').trim();
  const facts = [
    ...photo.parts.map((part) => partLabel(pack, part)),
    ...(photo.stage === null ? [] : [reportTexts.stages[photo.stage]]),
    ...(photo.seenFrom === null ? [] : [reportTexts.plates.seenFrom(sideLabel(pack, photo.seenFrom))]),
    reportTexts.plates.photo(photoNumber, photoCount),
  ];
  const known = `${capitalised(facts.join('; '))}.`;
  if (written === '') return known;
  return `${written}${/[.!?…]$/.test(written) ? '' : '.'} ${known}`;
}

function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Marks of one finding share a line; those given to no finding come last. */
function legendOf(
  marks: readonly PlateMark[],
  findings: readonly Finding[],
  pack: KnowledgePack,
): PlateLegendLine[] {
  const lines: PlateLegendLine[] = [];
  for (const finding of findings) {
    const labels = marks.filter((mark) => mark.findingNumber === finding.number).map((mark) => mark.label);
    if (labels.length === 0) continue;
    const words = `${placeLabel(pack, finding)}: ${findingWords(finding, pack)}`;
    lines.push({ marks: labelRange(labels), words });
  }
  const unassigned = marks.find((mark) => mark.findingNumber === null);
  if (unassigned !== undefined) {
    lines.push({ marks: unassigned.label, words: reportTexts.plates.unassigned });
  }
  return lines;
}
