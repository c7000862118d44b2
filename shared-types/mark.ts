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

export const markGeometrySchema = z.discriminatedUnion('kind', [
  arrowGeometrySchema,
  ringGeometrySchema,
  outlineGeometrySchema,
  lineGeometrySchema,
  textGeometrySchema,
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
