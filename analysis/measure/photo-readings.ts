/** What the marks of one photo measure by the photo's own scale, and how that is written on it. */
import type { MarkId } from '#shared-types/ids.ts';
import type { MarkGeometry, RectangleGeometry, ScaleGeometry } from '#shared-types/mark.ts';
import { measureTexts } from '#shared-types/texts/measure.ts';
import { numberInWords } from '../report/told-words.ts';
import type { Size } from '../marks/planes.ts';
import { cameraByLens, usualFocalLength } from './camera-by-lens.ts';
import { lengthBetween } from './length-between.ts';
import { areaWithin } from './outline-area.ts';
import type { Measurement } from './measured.ts';
import { scaleFault, usualClickUncertainty, type PhotoScale, type ScaleFault } from './photo-scale.ts';
import { roundedResult } from './rounded-result.ts';

/** Only what is looked at, of a mark on the photo. */
export type MeasuringMark = { readonly id: MarkId; readonly geometry: MarkGeometry };

export type ScaleOfPhoto = { readonly id: MarkId; readonly scale: PhotoScale; readonly words: string };

export type PhotoReadings = {
  /** The one that lengths are measured by; null where the photo has none that will do. */
  readonly scale: ScaleOfPhoto | null;
  /** What is written on marks that measure, and on scales: "12.4 ± 0.3 mm", "50 mm". Empty for a scale not entered yet. */
  readonly words: ReadonlyMap<MarkId, string>;
  /** Of lengths alone: what else can be measured is asked for mark by mark. */
  readonly measurements: ReadonlyMap<MarkId, Measurement>;
  /** Why a scale that was entered will not do. */
  readonly faults: ReadonlyMap<MarkId, ScaleFault>;
};

/**
 * `marks`: those of one photo in drawing order, the topmost last; `picture`: its upright size in pixels. Of several scales the topmost that will do is used, a
 * rectangle before a length, since it takes the tilt out.
 */
export function photoReadings(marks: readonly MeasuringMark[], picture: Size): PhotoReadings {
  const words = new Map<MarkId, string>();
  const measurements = new Map<MarkId, Measurement>();
  const faults = new Map<MarkId, ScaleFault>();
  const usable: ScaleOfPhoto[] = [];
  for (const { id, geometry } of marks) {
    if (geometry.kind !== 'scale' && geometry.kind !== 'rectangle') continue;
    const said = knownWords(geometry);
    words.set(id, said);
    const scale = scaleOf(geometry, picture);
    if (scale === null) continue;
    const fault = scaleFault(scale);
    if (fault === null) usable.push({ id, scale, words: said });
    else faults.set(id, fault);
  }
  const used = usable.findLast(({ scale }) => scale.kind === 'rectangle') ?? usable.at(-1) ?? null;
  for (const { id, geometry } of marks) {
    const measured = geometry.kind === 'dimension' ? measurementOf(geometry, used) : null;
    if (measured === null) continue;
    measurements.set(id, measured);
    words.set(id, readingWords(measured));
  }
  return { scale: used, words, measurements, faults };
}

/** A length, or the area of an outline where the photo has a scale; null for a mark that measures nothing. */
export function measurementOf(geometry: MarkGeometry, used: ScaleOfPhoto | null): Measurement | null {
  const basis = { clickUncertainty: usualClickUncertainty, scale: used?.scale ?? null };
  if (geometry.kind === 'dimension') return lengthBetween(geometry.from, geometry.to, basis);
  return geometry.kind === 'outline' && used !== null ? areaWithin(geometry.corners, basis) : null;
}

/**
 * Null while the known lengths are not entered. The camera's distance, which says what a tilt does, is taken from the
 * widest lens that is usual: a longer one stood further away, and the tilt did less.
 */
export function scaleOf(geometry: ScaleGeometry | RectangleGeometry, picture: Size): PhotoScale | null {
  const ofAny = { clickUncertainty: usualClickUncertainty, offsetMm: 0 };
  if (geometry.kind === 'scale') {
    const { from, to, known: length, greatestTilt } = geometry;
    if (length === null) return null;
    const ends = [from, to] as const;
    const apart = from.x !== to.x || from.y !== to.y;
    const camera = apart ? cameraByLens(picture, usualFocalLength, { ends, length }) : null;
    return { ...ofAny, kind: 'length', ends, length, greatestTilt, camera };
  }
  const { corners, sides } = geometry;
  const [a, b, c, d] = corners;
  if (sides === null || a === undefined || b === undefined || c === undefined || d === undefined) return null;
  return { ...ofAny, kind: 'rectangle', corners: [a, b, c, d], sides, camera: null };
}

export function readingWords(measured: Measurement): string {
  if (measured.kind === 'refused') return measureTexts.notMeasured;
  if (measured.unit === 'px') return measureTexts.pixels(measured.value.toFixed(0));
  const { value, expanded } = roundedResult(measured.value, measured.expanded);
  return measureTexts.result(value, expanded, measureTexts.units[measured.unit]);
}

function knownWords(geometry: ScaleGeometry | RectangleGeometry): string {
  if (geometry.kind === 'scale') {
    return geometry.known === null ? '' : measureTexts.known(numberInWords(geometry.known.mm));
  }
  if (geometry.sides === null) return '';
  const [along, across] = geometry.sides;
  return measureTexts.sides(numberInWords(along.mm), numberInWords(across.mm));
}
