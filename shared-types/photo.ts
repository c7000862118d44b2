import { packTermIdSchema, photoIdSchema, revisionSchema, type BlobId, type PhotoId } from './ids.ts';
import { z } from './schema.ts';
import type { Instant, WallTime } from './times.ts';

/** What had been done to the part when the photo was taken. */
export const stages = ['as-received', 'stripped', 'cleaned', 'sectioned'] as const;
export const stageSchema = z.enum(stages);
export type Stage = z.infer<typeof stageSchema>;

export const partShownSchema = z.strictObject({
  component: packTermIdSchema,
  position: packTermIdSchema.nullable(),
});
export type PartShown = z.infer<typeof partShownSchema>;

export const photoFieldsSchema = z.strictObject({
  caption: z.string().max(2_000),
  stage: stageSchema.nullable(),
  /** One of the machine kind's sides: which way the camera looked. */
  seenFrom: packTermIdSchema.nullable(),
  parts: z.array(partShownSchema).max(20),
});
export type PhotoFields = z.infer<typeof photoFieldsSchema>;

export const photoChangeSchema = z.strictObject({
  photoId: photoIdSchema,
  revision: revisionSchema,
  fields: photoFieldsSchema.partial(),
});
export type PhotoChange = z.infer<typeof photoChangeSchema>;

/** A photo in a case. The picture itself is a blob, kept once by its hash whatever cases show it. */
export type Photo = PhotoFields & {
  readonly id: PhotoId;
  readonly revision: number;
  readonly blobId: BlobId;
  /** 64 lower-case hex digits: SHA-256 of the original file. */
  readonly sha256: string;
  readonly bytes: number;
  /** Upright size in pixels. */
  readonly width: number;
  readonly height: number;
  readonly mediaType: string;
  readonly sourceName: string;
  readonly takenAt: WallTime | null;
  readonly camera: string;
  readonly addedAt: Instant;
  readonly addedBy: string;
  readonly derivatives: { readonly thumbnail: string; readonly display: string };
  /** Size of the display copy in pixels; marks are scaled to it from the upright size. */
  readonly displayWidth: number;
  readonly displayHeight: number;
};
