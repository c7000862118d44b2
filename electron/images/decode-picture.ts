/**
 * Decodes one picture and writes the pictures derived from it. Runs in a decoder process only: the picture is hostile
 * until proven otherwise, and native code cannot be stopped from within.
 */
import { dirname } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { AppError } from '#shared-types/errors.ts';
import { brokenPictureReasons } from '#shared-types/texts/pictures.ts';
import type { DurableFiles } from '../files/durable-files.ts';
import { declaredSynthetic } from './declared-source.ts';
import type { DecodedPicture, DecodeOrder } from './decoder-messages.ts';
import { derivativeKinds, type DerivativeKind } from './derivative-kinds.ts';
import { readExif } from './exif.ts';
import { megapixelLimit, sniffPicture, type SniffedPicture } from './sniff.ts';

/** Leaves the image library nothing but the two formats that are accepted, one thread and no memory of old pictures. */
export function restrainImageLibrary(): void {
  sharp.block({ operation: ['VipsForeignLoad'] });
  sharp.unblock({ operation: ['VipsForeignLoadJpegFile', 'VipsForeignLoadPngFile'] });
  sharp.cache(false);
  sharp.concurrency(1);
}

/** Rows of 8-bit sRGB, three bytes a pixel. */
type Pixels = { readonly data: Buffer; readonly width: number; readonly height: number };

/** Errors: those of sniffPicture(), `picture-broken`, `disk-full`, `disk-refused`. */
export async function decodePicture(order: DecodeOrder, files: DurableFiles): Promise<DecodedPicture> {
  const sniffed = await sniffPicture(order.path, order.sourceName);
  const { upright, display, orientation, exifBlock, xmp } = await decodeOnce(order, sniffed);
  const thumbnail = await writeDerivative(display, 'thumbnail', order.thumbnail, order.sourceName, files);
  const displayCopy = await writeDerivative(display, 'display', order.display, order.sourceName, files);
  const exif = await readExif(exifBlock);
  return {
    width: upright.width,
    height: upright.height,
    displayWidth: displayCopy.width,
    displayHeight: displayCopy.height,
    thumbnailWidth: thumbnail.width,
    thumbnailHeight: thumbnail.height,
    mediaType: sniffed.mediaType,
    orientation,
    takenAt: exif.takenAt,
    camera: exif.camera,
    declaredSynthetic: declaredSynthetic(exif.description, xmp),
    gps: exif.gps,
  };
}

/** Opens an original that is not trusted. */
export function openOriginal(path: string, sniffed: SniffedPicture): Sharp {
  return sharp(path, {
    // A file that ends early is an error too, at this level.
    failOn: 'error',
    limitInputPixels: megapixelLimit(sniffed) * 1e6,
    sequentialRead: true,
  });
}

/** Set upright, no larger than `width` x `height` nor than it is, transparent parts white, in sRGB. */
export function uprightWithin(original: Sharp, width: number, height: number): Sharp {
  return original
    .autoOrient()
    .resize({ width, height, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb');
}

/** Reads the original once, sets it upright once, and scales it to the display copy's size. */
async function decodeOnce(order: DecodeOrder, sniffed: SniffedPicture) {
  try {
    const found = await openOriginal(order.path, sniffed).metadata();
    const side = derivativeKinds.display.longSide;
    const { data, info } = await uprightWithin(openOriginal(order.path, sniffed), side, side)
      .raw()
      .toBuffer({ resolveWithObject: true });
    if (info.channels !== 3) throw new Error(`${info.channels} channels after conversion to sRGB`);
    const display: Pixels = { data, width: info.width, height: info.height };
    const orientation = exifOrientation(found.orientation);
    return {
      upright: uprightSize(found.width, found.height, orientation),
      display,
      orientation,
      exifBlock: found.exif,
      xmp: found.xmp,
    };
  } catch (error) {
    throw brokenPicture(error, order.sourceName);
  }
}

export function brokenPicture(error: unknown, sourceName: string): AppError {
  return new AppError('picture-broken', { name: sourceName, reason: brokenReason(error) }, { cause: error });
}

/** The standard knows 1 to 8; anything else, and nothing, is 1. */
function exifOrientation(found: number | undefined): number {
  return found !== undefined && Number.isInteger(found) && found >= 1 && found <= 8 ? found : 1;
}

/** EXIF 0x0112: 5 to 8 swap width and height. */
function uprightSize(width: number, height: number, orientation: number) {
  return orientation >= 5 ? { width: height, height: width } : { width, height };
}

function brokenReason(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  if (/premature end|read error|end of stream|unexpected end/i.test(message)) {
    return brokenPictureReasons.cutShort;
  }
  const [firstLine = ''] = message.split('\n');
  return brokenPictureReasons.decoder(firstLine.slice(0, 160));
}

async function writeDerivative(
  display: Pixels,
  kind: DerivativeKind,
  path: string,
  sourceName: string,
  files: DurableFiles,
): Promise<{ readonly width: number; readonly height: number }> {
  const { longSide, quality } = derivativeKinds[kind];
  const scaled: Sharp = sharp(display.data, {
    raw: { width: display.width, height: display.height, channels: 3 },
  }).resize({ width: longSide, height: longSide, fit: 'inside', withoutEnlargement: true });
  // No metadata is asked for, so none is written: neither place nor camera leaves with a derived picture.
  const { data, info } = await scaled.jpeg({ quality }).toBuffer({ resolveWithObject: true });
  await writePicture(data, path, sourceName, files);
  return { width: info.width, height: info.height };
}

/** Errors: `disk-full`, `disk-refused`, naming the picture. */
export async function writePicture(
  data: Uint8Array,
  path: string,
  sourceName: string,
  files: DurableFiles,
): Promise<void> {
  try {
    await files.ensureFolder(dirname(path));
    await files.write(path, data);
  } catch (error) {
    throw forPicture(error, sourceName);
  }
}

/** Errors of the disk name the picture, not the temporary file. */
function forPicture(error: unknown, sourceName: string): unknown {
  if (!(error instanceof AppError)) return error;
  return new AppError(
    error.code,
    { ...error.details, what: sourceName },
    { retryable: error.retryable, cause: error },
  );
}
