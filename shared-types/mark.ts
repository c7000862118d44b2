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

export const markGeometrySchema = z.discriminatedUnion('kind', [arrowGeometrySchema]);
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
