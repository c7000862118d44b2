/**
 * What the analyst draws on a photo. Coordinates are upright image pixels of the original, whatever copy is on screen.
 * `v` is the version of the geometry: analysis/marks/upgrade-mark.ts brings older ones up to date.
 */
import { findingIdSchema, markIdSchema, photoIdSchema, revisionSchema } from './ids.ts';
import { imagePointSchema } from './points.ts';
import { z } from './schema.ts';

export const arrowGeometrySchema = z.strictObject({
  kind: z.literal('arrow'),
  v: z.literal(1),
  tail: imagePointSchema,
  /** What the arrow points at. */
  tip: imagePointSchema,
});
export type ArrowGeometry = z.infer<typeof arrowGeometrySchema>;

/** An ellipse; a circle where both radii are alike. */
export const ringGeometrySchema = z.strictObject({
  kind: z.literal('ring'),
  v: z.literal(1),
  centre: imagePointSchema,
  /** Half axes in image pixels. */
  radiusX: z.number().positive().max(1e6),
  radiusY: z.number().positive().max(1e6),
  /** Radians from the picture's x axis to the first half axis, clockwise as seen (y runs down). */
  rotation: z.number().min(-Math.PI).max(Math.PI),
});
export type RingGeometry = z.infer<typeof ringGeometrySchema>;

/** A closed polygon through its corners. */
export const outlineGeometrySchema = z.strictObject({
  kind: z.literal('outline'),
  v: z.literal(1),
  corners: z.array(imagePointSchema).min(3).max(400),
});
export type OutlineGeometry = z.infer<typeof outlineGeometrySchema>;

export const lineGeometrySchema = z.strictObject({
  kind: z.literal('line'),
  v: z.literal(1),
  from: imagePointSchema,
  to: imagePointSchema,
});
export type LineGeometry = z.infer<typeof lineGeometrySchema>;

/** Words on the picture itself, begun at `at`, the left end of the first baseline. */
export const textGeometrySchema = z.strictObject({
  kind: z.literal('text'),
  v: z.literal(1),
  at: imagePointSchema,
  words: z.string().trim().min(1).max(200),
});
export type TextGeometry = z.infer<typeof textGeometrySchema>;

/** A length between two points, measured where the photo has a scale. */
export const dimensionGeometrySchema = z.strictObject({
  kind: z.literal('dimension'),
  v: z.literal(1),
  from: imagePointSchema,
  to: imagePointSchema,
});
export type DimensionGeometry = z.infer<typeof dimensionGeometrySchema>;

/** Millimetres, with the expanded uncertainty (k = 2) of whatever they were read from. */
export const knownLengthSchema = z.strictObject({
  mm: z.number().positive().max(1e5),
  expandedMm: z.number().min(0).max(1e4),
});
export type KnownLength = z.infer<typeof knownLengthSchema>;

/** Two points a known length apart: what makes pixels millimetres on this photo, as long as it was not tilted. */
export const scaleGeometrySchema = z.strictObject({
  kind: z.literal('scale'),
  v: z.literal(1),
  from: imagePointSchema,
  to: imagePointSchema,
  /** Null until it is entered: then it measures nothing. */
  known: knownLengthSchema.nullable(),
  /** Degrees by which the photo may have been taken from square to the plane. */
  greatestTilt: z.number().min(0).max(45),
});
export type ScaleGeometry = z.infer<typeof scaleGeometrySchema>;

/** Four corners of a rectangle of known sides: what makes pixels millimetres in its plane, tilted or not. */
export const rectangleGeometrySchema = z.strictObject({
  kind: z.literal('rectangle'),
  v: z.literal(1),
  /** One after the other round it, from any corner and either way round. */
  corners: z.array(imagePointSchema).length(4),
  /** From the first corner to the second, and from the second to the third; null until they are entered. */
  sides: z.tuple([knownLengthSchema, knownLengthSchema]).nullable(),
});
export type RectangleGeometry = z.infer<typeof rectangleGeometrySchema>;

export const markGeometrySchema = z.discriminatedUnion('kind', [
  arrowGeometrySchema,
  ringGeometrySchema,
  outlineGeometrySchema,
  lineGeometrySchema,
  textGeometrySchema,
  dimensionGeometrySchema,
  scaleGeometrySchema,
  rectangleGeometrySchema,
]);
export type MarkGeometry = z.infer<typeof markGeometrySchema>;
export type MarkKind = MarkGeometry['kind'];

export const markFieldsSchema = z.strictObject({
  id: markIdSchema,
  photoId: photoIdSchema,
  /** The finding it shows; null while it is drawn but not yet given to one. */
  findingId: findingIdSchema.nullable(),
  geometry: markGeometrySchema,
  /** Drawing order on its photo, lowest first. */
  order: z.int().min(0).max(1_000_000),
});
export type MarkFields = z.infer<typeof markFieldsSchema>;

export const markSchema = z.strictObject({ ...markFieldsSchema.shape, revision: revisionSchema });
export type Mark = z.infer<typeof markSchema>;
