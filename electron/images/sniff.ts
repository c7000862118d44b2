/**
 * What a file is, by its content and never by its name, and how large a picture it says it holds.
 * Reads a few bytes; decodes nothing.
 *
 * JPEG: ITU-T T.81, annex B (markers, frame header). PNG: W3C PNG Specification, 5.2 (signature), 11.2.2 (IHDR).
 */
import { open, type FileHandle } from 'node:fs/promises';
import { AppError } from '#shared-types/errors.ts';
import { brokenPictureReasons } from '#shared-types/texts/pictures.ts';
import { asSourceError } from '../files/disk-error.ts';
import { pictureLimits } from './picture-limits.ts';

export type SniffedPicture = {
  readonly mediaType: 'image/jpeg' | 'image/png';
  readonly bytes: number;
  /** In pixels, as stored: before any EXIF orientation. */
  readonly storedWidth: number;
  readonly storedHeight: number;
  /** Progressive JPEG or interlaced PNG: cannot be decoded row by row. */
  readonly wholeInMemory: boolean;
};

type FrameSize = Pick<SniffedPicture, 'storedWidth' | 'storedHeight' | 'wholeInMemory'>;

const pngSignature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const jpegStart = Buffer.from([0xff, 0xd8, 0xff]);
/** Segments before the frame header that are looked at; cameras write a few dozen. */
const mostJpegSegments = 5_000;

/**
 * Errors, with `name` in their sentence: `file-unreadable`, `file-empty`, `file-too-large`, `file-not-a-picture`,
 * `picture-too-large`, `picture-broken`.
 */
export async function sniffPicture(path: string, name: string): Promise<SniffedPicture> {
  try {
    const file = await open(path, 'r');
    try {
      return await sniffOpened(file, name);
    } finally {
      await file.close();
    }
  } catch (error) {
    throw asSourceError(error, name);
  }
}

async function sniffOpened(file: FileHandle, name: string): Promise<SniffedPicture> {
  const { size: bytes } = await file.stat();
  const head = await readAt(file, 0, 32);
  // Only now: a folder has a size too, but reading it says what it is.
  if (bytes === 0) throw new AppError('file-empty', { name });
  if (bytes > pictureLimits.megabytes * 1e6) {
    const megabytes = Math.ceil(bytes / 1e6);
    throw new AppError('file-too-large', { name, megabytes, limit: pictureLimits.megabytes });
  }
  if (head.subarray(0, pngSignature.length).equals(pngSignature)) {
    return withinLimits({ mediaType: 'image/png', bytes, ...pngSize(head, name) }, name);
  }
  if (head.subarray(0, jpegStart.length).equals(jpegStart)) {
    return withinLimits({ mediaType: 'image/jpeg', bytes, ...(await jpegSize(file, name)) }, name);
  }
  throw new AppError('file-not-a-picture', { name });
}

function withinLimits(picture: SniffedPicture, name: string): SniffedPicture {
  const pixels = picture.storedWidth * picture.storedHeight;
  if (pixels === 0) throw new AppError('picture-broken', { name, reason: brokenPictureReasons.noSize });
  const limit = megapixelLimit(picture);
  if (pixels > limit * 1e6) {
    // Rounded up, so that the sentence never says that 60 is more than 60.
    throw new AppError('picture-too-large', { name, megapixels: Math.ceil(pixels / 1e6), limit });
  }
  return picture;
}

/** In megapixels, for a picture of this kind. */
export function megapixelLimit(picture: Pick<SniffedPicture, 'mediaType' | 'wholeInMemory'>): number {
  if (!picture.wholeInMemory) return pictureLimits.megapixelsByRows;
  return picture.mediaType === 'image/png'
    ? pictureLimits.megapixelsInterlaced
    : pictureLimits.megapixelsProgressive;
}

function pngSize(head: Buffer, name: string): FrameSize {
  if (head.length < 29) {
    throw new AppError('picture-broken', { name, reason: brokenPictureReasons.cutShort });
  }
  if (head.toString('latin1', 12, 16) !== 'IHDR') {
    throw new AppError('picture-broken', { name, reason: brokenPictureReasons.noSize });
  }
  return {
    storedWidth: head.readUInt32BE(16),
    storedHeight: head.readUInt32BE(20),
    wholeInMemory: head.readUInt8(28) !== 0,
  };
}

async function jpegSize(file: FileHandle, name: string): Promise<FrameSize> {
  const broken = (reason: string) => new AppError('picture-broken', { name, reason });
  let at = 2;
  for (let segment = 0; segment < mostJpegSegments; segment += 1) {
    // Marker (2), length (2) and, for a frame header, precision (1), height (2), width (2).
    const bytes = await readAt(file, at, 9);
    if (bytes.length < 4) throw broken(brokenPictureReasons.cutShort);
    if (bytes.readUInt8(0) !== 0xff) throw broken(brokenPictureReasons.unknown);
    const marker = bytes.readUInt8(1);
    if (marker === 0xff) {
      // Fill byte before a marker (B.1.1.2).
      at += 1;
    } else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) {
      // Stands alone, without a length.
      at += 2;
    } else if (isFrameHeader(marker)) {
      if (bytes.length < 9) throw broken(brokenPictureReasons.cutShort);
      return {
        storedHeight: bytes.readUInt16BE(5),
        storedWidth: bytes.readUInt16BE(7),
        wholeInMemory: marker === 0xc2 || marker === 0xc6 || marker === 0xca || marker === 0xce,
      };
    } else if (marker === 0xd9 || marker === 0xda) {
      // The end, or the scan itself, before any frame header.
      throw broken(brokenPictureReasons.noSize);
    } else {
      at += 2 + bytes.readUInt16BE(2);
    }
  }
  throw broken(brokenPictureReasons.noSize);
}

/** SOF0 to SOF15 but for DHT (C4), JPG (C8) and DAC (CC): table B.1. */
function isFrameHeader(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
}

async function readAt(file: FileHandle, position: number, length: number): Promise<Buffer> {
  const { bytesRead, buffer } = await file.read(Buffer.alloc(length), 0, length, position);
  return buffer.subarray(0, bytesRead);
}
