/** What is said between the pool and a decoder process. JSON values only. */
import { errorSentences } from '#shared-types/texts/errors.ts';
import type { ErrorCode } from '#shared-types/errors.ts';
import { z } from '#shared-types/schema.ts';
import { wallTimeSchema } from '#shared-types/times.ts';
import type { JsonValue } from './exif.ts';

/** One picture to decode. `thumbnail` and `display` are the files to write; nobody else uses them meanwhile. */
export type DecodeOrder = {
  readonly sha256: string;
  /** What errors call the picture. */
  readonly sourceName: string;
  readonly path: string;
  readonly thumbnail: string;
  readonly display: string;
};

/** One picture to bring to the size in which it is printed. `plate` is the file to write. */
export type PlateOrder = {
  readonly sha256: string;
  readonly sourceName: string;
  readonly path: string;
  readonly plate: string;
  /** Upright, in pixels: within these, and never larger than the original. */
  readonly width: number;
  readonly height: number;
};

const pixels = z.int().min(1).max(1_000_000);
const picture = { sha256: z.string(), sourceName: z.string(), path: z.string() };

export const decodeOrderMessageSchema = z.strictObject({
  id: z.int(),
  order: z.union([
    z.strictObject({ ...picture, thumbnail: z.string(), display: z.string() }),
    z.strictObject({ ...picture, plate: z.string(), width: pixels, height: pixels }),
  ]),
});
export type DecodeOrderMessage = z.infer<typeof decodeOrderMessageSchema>;

export function isPlateOrder(order: DecodeOrder | PlateOrder): order is PlateOrder {
  return 'plate' in order;
}

const jsonValueSchema: z.ZodType<JsonValue> = z.json();

export const decodedPictureSchema = z.strictObject({
  /** Upright size of the original in pixels: after its EXIF orientation. */
  width: pixels,
  height: pixels,
  displayWidth: pixels,
  displayHeight: pixels,
  thumbnailWidth: pixels,
  thumbnailHeight: pixels,
  mediaType: z.enum(['image/jpeg', 'image/png']),
  /** EXIF 0x0112 as found in the file, 1 where it says nothing usable. The derived pictures are upright already. */
  orientation: z.int().min(1).max(8),
  takenAt: wallTimeSchema.nullable(),
  camera: z.string().max(201),
  /** The code or the words by which the file says that no camera took it. */
  declaredSynthetic: z.string().min(1).max(200).nullable(),
  gps: z.record(z.string(), jsonValueSchema).nullable(),
});
export type DecodedPicture = z.infer<typeof decodedPictureSchema>;

export const plateMadeSchema = z.strictObject({ width: pixels, height: pixels });
/** Size in pixels of the picture that was written. */
export type PlateMade = z.infer<typeof plateMadeSchema>;

const errorShapeSchema = z.strictObject({
  code: z.custom<ErrorCode>((code) => typeof code === 'string' && Object.hasOwn(errorSentences, code)),
  message: z.string(),
  details: z.record(z.string(), z.union([z.string(), z.number(), z.null()])),
  retryable: z.boolean(),
});

/** A decoder first says that it is ready, then answers each order it is sent. */
export const decoderMessageSchema = z.discriminatedUnion('say', [
  z.strictObject({ say: z.literal('ready') }),
  z.strictObject({ say: z.literal('decoded'), id: z.int(), picture: decodedPictureSchema }),
  z.strictObject({ say: z.literal('plate-made'), id: z.int(), plate: plateMadeSchema }),
  z.strictObject({ say: z.literal('failed'), id: z.int(), error: errorShapeSchema }),
]);
export type DecoderMessage = z.infer<typeof decoderMessageSchema>;
