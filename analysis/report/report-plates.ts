/** Plates: each photo with its marks, numbered, captioned, with what its marks show. */
import { isNote } from '#analysis/marks/notes.ts';
import { markToDrawing } from '#analysis/marks/mark-to-drawing.ts';
import type { Drawing } from '#shared-types/drawing.ts';
import type { DamageClass, Finding } from '#shared-types/finding.ts';
import type { BlobId, MarkId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Mark } from '#shared-types/mark.ts';
import type { Photo } from '#shared-types/photo.ts';
import type { PaperSize } from '#shared-types/settings.ts';
import { measureTexts } from '#shared-types/texts/measure.ts';
import { reportTexts } from '#shared-types/texts/report.ts';

import { photoReadings, type PhotoReadings } from '../measure/photo-readings.ts';
import { classKey, type SizedDrawing } from './class-key.ts';
import { findingWords } from './finding-rows.ts';
import { labelRange } from './label-range.ts';
import { marksOnPhoto } from './mark-labels.ts';
import { destinations } from './destinations.ts';
import { pageGeometry, plateSize, printedPixels, type PlatesAPage } from './page-geometry.ts';
import { platesInOrder } from './report-outline.ts';
import { syntheticStamp } from './synthetic-stamp.ts';
import { numberInWords } from './told-words.ts';
import { capitalised, partLabel, placeLabelAtStart, sideLabel } from './term-labels.ts';

export type PlateMark = {
  readonly label: string;
  readonly class: DamageClass;
  /** Null for a mark that is given to no finding. */
  readonly findingNumber: number | null;
  /** Words that need none: they have no label and no line below the plate. */
  readonly isNote: boolean;
  /** "12.4 ± 0.3 mm" where it is a measured length; else empty. */
  readonly reading: string;
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
  readonly destination: string;
  readonly photoNumber: number;
  readonly blobId: BlobId;
  /** Upright size in pixels: the space of the drawings. */
  readonly picture: { readonly width: number; readonly height: number };
  /** Printed size in points. */
  readonly printed: { readonly width: number; readonly height: number };
  /** Size in pixels of the picture that is put on the page. */
  readonly pixels: { readonly width: number; readonly height: number };
  readonly marks: readonly PlateMark[];
  /** Across a picture whose file says that no camera took it; empty for any other. In upright image pixels. */
  readonly stamp: Drawing;
  readonly key: SizedDrawing | null;
  readonly legend: readonly PlateLegendLine[];
};

export type PlatesInput = {
  readonly photos: readonly Photo[];
  readonly marks: readonly Mark[];
  readonly findings: readonly Finding[];
  readonly pack: KnowledgePack;
  readonly paper: PaperSize;
  readonly platesAPage: PlatesAPage;
  readonly labels: ReadonlyMap<MarkId, string>;
};

/** A drawing point of a mark is a CSS pixel on screen; on paper it is as large as one: 1/96 inch. */
const pagePointsPerDrawingPoint = 72 / 96;

/** In the order of platesInOrder; plates count from 1. */
export function reportPlates(input: PlatesInput): ReportPlate[] {
  const { platesAPage } = input;
  const page = pageGeometry(input.paper);
  const findingOf = new Map(input.findings.map((finding) => [finding.id, finding]));
  const numberOf = new Map(input.photos.map((photo, index) => [photo.id, index + 1]));
  return platesInOrder(input.photos, input.marks).map((photo, index) => {
    const photoNumber = numberOf.get(photo.id) ?? 0;
    const marks = marksOnPhoto(input.marks, photo.id);
    const picture = { width: photo.width, height: photo.height };
    const labelled = marks.filter((mark) => !isNote(mark));
    const legendLines = labelled.length === 0 ? null : new Set(labelled.map((mark) => mark.findingId)).size;
    const printed = plateSize(picture, page, { platesAPage, legendLines });
    const unit = (picture.width / printed.width) * pagePointsPerDrawingPoint;
    const readings = photoReadings(marks, picture);
    const plateMarks = marks.map((mark): PlateMark => {
      const finding = mark.findingId === null ? undefined : findingOf.get(mark.findingId);
      const label = input.labels.get(mark.id) ?? '';
      const damageClass = finding?.class ?? 'undecided';
      const note = isNote(mark);
      return {
        label,
        class: damageClass,
        findingNumber: finding?.number ?? null,
        isNote: note,
        reading: mark.geometry.kind === 'dimension' ? (readings.words.get(mark.id) ?? '') : '',
        drawing: markToDrawing(mark.geometry, {
          class: damageClass,
          label,
          note,
          reading: readings.words.get(mark.id) ?? '',
          unit,
          within: picture,
        }),
      };
    });
    return {
      number: index + 1,
      name: reportTexts.plates.name(index + 1),
      caption: [captionOf(photo, photoNumber, input.photos.length, input.pack), ...measuredBy(readings)].join(
        ' ',
      ),
      destination: destinations.plate(photo.id),
      photoNumber,
      blobId: photo.blobId,
      picture,
      printed,
      pixels: printedPixels(picture, printed),
      marks: plateMarks,
      stamp: photo.declaredSynthetic === null ? [] : syntheticStamp(unit, picture),
      key: classKey(new Set(plateMarks.flatMap((mark) => (mark.isNote ? [] : mark.class)))),
      legend: legendOf(plateMarks, input.findings, input.pack),
    };
  });
}

/** The analyst's caption, then what the photo is known to show and how, then which of how many it is. */
function captionOf(photo: Photo, photoNumber: number, photoCount: number, pack: KnowledgePack): string {
  const written = photo.caption.replace(/\s+/g, ' ').trim();
  const facts = [
    ...photo.parts.map((part) => partLabel(pack, part)).filter((label) => !isSaidIn(written, label)),
    ...(photo.stage === null ? [] : [reportTexts.stages[photo.stage]]),
    ...(photo.seenFrom === null ? [] : [reportTexts.plates.seenFrom(sideLabel(pack, photo.seenFrom))]),
    reportTexts.plates.photo(photoNumber, photoCount),
  ];
  const declared = photo.declaredSynthetic;
  const origin = declared === null ? '' : ` ${reportTexts.synthetic.caption(declared)}`;
  const known = `${capitalised(facts.join('; '))}.${origin}`;
  if (written === '') return known;
  return `${written}${/[.!?…]$/.test(written) ? '' : '.'} ${known}`;
}

/** How the lengths on the plate were come by; nothing where none is measured in millimetres. */
function measuredBy({ scale, measurements }: PhotoReadings): string[] {
  if (scale === null || measurements.size === 0) return [];
  const words = measureTexts.plate;
  return scale.scale.kind === 'length'
    ? [words.byScale(scale.words, numberInWords(scale.scale.greatestTilt))]
    : [words.byRectangle(scale.words)];
}

/** A part that the caption names need not be named twice. */
function isSaidIn(caption: string, label: string): boolean {
  return caption.toLowerCase().includes(label.toLowerCase());
}

function measuredWords({ label, reading }: PlateMark): string {
  return `${label} ${measureTexts.plate.measures(reading)}`;
}

/** Marks of one finding share a line; those not given to the finding they need come last. */
function legendOf(
  marks: readonly PlateMark[],
  findings: readonly Finding[],
  pack: KnowledgePack,
): PlateLegendLine[] {
  const lines: PlateLegendLine[] = [];
  for (const finding of findings) {
    const ofFinding = marks.filter((mark) => mark.findingNumber === finding.number);
    const labels = ofFinding.map((mark) => mark.label);
    if (labels.length === 0) continue;
    const measured = ofFinding.filter(({ reading }) => reading !== '').map(measuredWords);
    const words = [`${placeLabelAtStart(pack, finding)}: ${findingWords(finding, pack)}`, ...measured].join(
      '; ',
    );
    lines.push({ marks: labelRange(labels), words });
  }
  const unassigned = marks.find((mark) => mark.findingNumber === null && !mark.isNote);
  if (unassigned !== undefined) {
    lines.push({ marks: unassigned.label, words: reportTexts.plates.unassigned });
  }
  return lines;
}
