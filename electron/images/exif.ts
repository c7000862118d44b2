/**
 * What a camera wrote beside the picture, from the EXIF block of the file.
 * Tags by CIPA DC-008 (EXIF): DateTimeOriginal 0x9003 "YYYY:MM:DD HH:MM:SS", OffsetTimeOriginal 0x9011 "+HH:MM".
 *
 * A camera's clock has no zone unless the camera says so: the time stays as written and is never made an instant.
 * A block that is broken, or a tag that is not what it should be, counts as not there and never fails the photo.
 */
import exifr from 'exifr';
import { wallTimeSchema, type WallTime } from '#shared-types/times.ts';
import { safeExifBlock } from './exif-block.ts';

export type JsonValue =
  null | boolean | number | string | readonly JsonValue[] | { readonly [key: string]: JsonValue };

export type PictureExif = {
  readonly takenAt: WallTime | null;
  /** Maker and model in one line; empty where the file does not say. */
  readonly camera: string;
  /** ImageDescription as it stands, where it is a text. */
  readonly description: string;
  /** The GPS tags as they stand, for the record; null where there are none. Not for lists and reports. */
  readonly gps: Readonly<Record<string, JsonValue>> | null;
};

const nothing: PictureExif = { takenAt: null, camera: '', description: '', gps: null };

/** Longest text and list that is taken over from a tag: characters, elements. */
const longestText = 500;
const longestList = 256;

/** `block`: the EXIF block as sharp hands it out, with or without the "Exif\0\0" before its TIFF header. */
export async function readExif(block: Uint8Array | undefined): Promise<PictureExif> {
  if (block === undefined) return nothing;
  const tiff = safeExifBlock(block);
  if (tiff === null) return nothing;
  const { ifd0, exif } = await parseTags(
    tiff,
    ['Make', 'Model', 'ImageDescription'],
    ['DateTimeOriginal', 'OffsetTimeOriginal'],
    false,
  );
  // Apart, so that a broken place does not take the time with it.
  const { gps } = await parseTags(tiff, ['GPS'], [], true);
  return {
    takenAt: wallTime(exif.DateTimeOriginal, exif.OffsetTimeOriginal),
    camera: cameraName(ifd0.Make, ifd0.Model),
    description: typeof ifd0.ImageDescription === 'string' ? ifd0.ImageDescription : '',
    gps: gpsTags(gps),
  };
}

type Tags = Readonly<Record<string, unknown>>;
type TagGroups = { readonly ifd0: Tags; readonly exif: Tags; readonly gps: Tags };

/** Only what is asked for is read: a broken tag beside it does no harm. */
async function parseTags(
  tiff: Uint8Array,
  ofIfd0: string[],
  ofExif: string[],
  gps: boolean,
): Promise<TagGroups> {
  let parsed: unknown;
  try {
    parsed = await exifr.parse(tiff, {
      tiff: true,
      ifd0: { pick: ofIfd0 },
      exif: ofExif.length > 0 ? { pick: ofExif } : false,
      gps,
      ifd1: false,
      interop: false,
      makerNote: false,
      userComment: false,
      xmp: false,
      icc: false,
      iptc: false,
      mergeOutput: false,
      translateKeys: true,
      translateValues: false,
      // Revived, a time would be taken for one in this computer's zone.
      reviveValues: false,
    });
  } catch (error) {
    // The reader throws plain errors and range errors alike on what it cannot follow: then these tags are not there.
    if (!(error instanceof Error)) throw error;
  }
  const group = (name: string): Tags => {
    const value = isRecord(parsed) ? parsed[name] : null;
    return isRecord(value) ? value : {};
  };
  return { ifd0: group('ifd0'), exif: group('exif'), gps: group('gps') };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Null for anything that is not a real date and time: cameras whose clock was never set write blanks or noughts. */
export function wallTime(time: unknown, offset: unknown): WallTime | null {
  if (typeof time !== 'string') return null;
  const parts = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}):(\d{2}):(\d{2})$/.exec(trimmed(time));
  if (parts === null) return null;
  const [, year, month, day, hour, minute, second] = parts;
  if (year === '0000') return null;
  const checked = wallTimeSchema.safeParse({
    local: `${year}-${month}-${day}T${hour}:${minute}:${second}`,
    offsetMinutes: offsetMinutes(offset),
    precision: 'second',
  });
  return checked.success ? checked.data : null;
}

/** Minutes east of UTC, or null where the camera does not say: blank, missing, or beyond 14 hours. */
function offsetMinutes(offset: unknown): number | null {
  if (typeof offset !== 'string') return null;
  const parts = /^([+-])(\d{2}):(\d{2})$/.exec(trimmed(offset));
  if (parts === null) return null;
  const hours = Number(parts[2]);
  const minutes = Number(parts[3]);
  if (minutes > 59 || hours * 60 + minutes > 14 * 60) return null;
  const total = hours * 60 + minutes;
  return parts[1] === '-' && total !== 0 ? -total : total;
}

function cameraName(make: unknown, model: unknown): string {
  const maker = oneLine(make);
  const type = oneLine(model);
  if (type.toLowerCase().startsWith(maker.toLowerCase())) return type;
  return `${maker} ${type}`.trim();
}

function oneLine(value: unknown): string {
  if (typeof value !== 'string') return '';
  return value
    .replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
    .trim()
    .slice(0, 100);
}

/** Without the NUL that ends an ASCII value, and the blanks some cameras fill it up with. */
function trimmed(value: string): string {
  return value.replace(/[\0 ]+$/, '');
}

function gpsTags(gps: Tags): PictureExif['gps'] {
  // The reader adds degrees of its own making to the tags; only what the camera wrote is kept.
  const written = Object.entries(gps).filter(([tag]) => tag !== 'latitude' && tag !== 'longitude');
  if (written.length === 0) return null;
  return Object.fromEntries(written.map(([tag, value]) => [tag, asJson(value)]));
}

function asJson(value: unknown): JsonValue {
  if (typeof value === 'string') return value.slice(0, longestText);
  if (typeof value === 'boolean') return value;
  // A fraction with the denominator 0 comes as NaN or infinite, which JSON cannot say.
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  if (value instanceof Uint8Array || Array.isArray(value)) {
    return Array.from<unknown>(value).slice(0, longestList).map(asJson);
  }
  return null;
}
