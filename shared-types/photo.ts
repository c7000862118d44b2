import {
  caseIdSchema,
  packTermIdSchema,
  photoIdSchema,
  revisionSchema,
  type BlobId,
  type PhotoId,
} from './ids.ts';
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

/** The photos that a request is about, each with the revision the page last saw. */
const photosAtRevision = z
  .array(z.strictObject({ photoId: photoIdSchema, revision: revisionSchema }))
  .min(1)
  .max(2_000);

/** The same said of many photos at once: carried out whole or not at all. */
export const photosAssignSchema = z.strictObject({
  caseId: caseIdSchema,
  photos: photosAtRevision,
  /** What is left out stays as it is. */
  fields: photoFieldsSchema.pick({ stage: true, seenFrom: true }).partial(),
  addParts: z.array(partShownSchema).max(20),
  removeParts: z.array(partShownSchema).max(20),
});
export type PhotosAssign = z.infer<typeof photosAssignSchema>;

/** Moves photos, in the order given, before another one; to the end where `before` is null. */
export const photosReorderSchema = z.strictObject({
  caseId: caseIdSchema,
  photoIds: z.array(photoIdSchema).min(1).max(2_000),
  before: photoIdSchema.nullable(),
});
export type PhotosReorder = z.infer<typeof photosReorderSchema>;

/** Takes photos out of the case; each keeps its line in the register, with the reason. */
export const photosTakeOutSchema = z.strictObject({
  caseId: caseIdSchema,
  photos: photosAtRevision,
  reason: z.string().trim().min(1).max(2_000),
});
export type PhotosTakeOut = z.infer<typeof photosTakeOutSchema>;

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
  /** The code or the words by which the file says of itself that no camera took it; null where it does not. */
  readonly declaredSynthetic: string | null;
  readonly addedAt: Instant;
  readonly addedBy: string;
  readonly derivatives: { readonly thumbnail: string; readonly display: string };
  /** Size of the display copy in pixels; marks are scaled to it from the upright size. */
  readonly displayWidth: number;
  readonly displayHeight: number;
};

/** Where a camera says it stood: kept, but shown in the register only. Degrees, WGS 84; metres above the sea. */
export type CameraPlace = {
  readonly latitude: number;
  readonly longitude: number;
  readonly altitude: number | null;
};

export type Removal = { readonly at: Instant; readonly by: string; readonly reason: string };

/** Every photo there ever was in a case, in the order in which they came in. */
export type RegisterEntry = {
  readonly photo: Photo;
  readonly cameraPlace: CameraPlace | null;
  readonly takenOut: Removal | null;
  /** The times it was out and came back, oldest first. */
  readonly absences: readonly (Removal & { readonly backAt: Instant; readonly backBy: string })[];
};
