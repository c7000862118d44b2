/**
 * Where a camera says it stood, from the GPS tags as they were kept with the picture.
 * Tags by CIPA DC-008 (EXIF), GPS IFD: latitude and longitude as three fractions, degrees, minutes and seconds, each
 * with its reference N or S, E or W; altitude in metres with the reference 0 (above the sea, also where none is
 * written) or 1 (below).
 */
import type { CameraPlace } from '#shared-types/photo.ts';

type Tags = Readonly<Record<string, unknown>>;

/** @param gps the tags as JSON, as PictureExif.gps. Null where the place is incomplete or lies nowhere on Earth. */
export function cameraPlaceOf(gps: string | null): CameraPlace | null {
  const tags: unknown = gps === null ? null : JSON.parse(gps);
  if (!isTags(tags)) return null;
  const latitude = degrees(tags.GPSLatitude, tags.GPSLatitudeRef, { plus: 'N', minus: 'S', most: 90 });
  const longitude = degrees(tags.GPSLongitude, tags.GPSLongitudeRef, { plus: 'E', minus: 'W', most: 180 });
  if (latitude === null || longitude === null) return null;
  return { latitude, longitude, altitude: metres(tags.GPSAltitude, tags.GPSAltitudeRef) };
}

function isTags(value: unknown): value is Tags {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function degrees(
  value: unknown,
  reference: unknown,
  { plus, minus, most }: { plus: string; minus: string; most: number },
): number | null {
  if (!Array.isArray(value) || value.length !== 3 || typeof reference !== 'string') return null;
  const [whole, minutes, seconds] = value.map((part: unknown) => (typeof part === 'number' ? part : NaN));
  if (whole === undefined || minutes === undefined || seconds === undefined) return null;
  // Written so that NaN fails too. A rounded 60 is met in the wild; more is no minute or second.
  if (!(whole >= 0 && minutes >= 0 && minutes <= 60 && seconds >= 0 && seconds <= 60)) return null;
  const size = whole + minutes / 60 + seconds / 3_600;
  const side = reference.replace(/[\0 ]+$/, '');
  if (size > most || (side !== plus && side !== minus)) return null;
  return side === minus && size > 0 ? -size : size;
}

/** A height over the ellipsoid (references 2 and 3 of EXIF 3.0) is none over the sea. */
function metres(value: unknown, reference: unknown): number | null {
  if (typeof value !== 'number' || !(value >= 0 && value < 1e6)) return null;
  const written: unknown = Array.isArray(reference) ? reference[0] : reference;
  if (written === undefined || written === null || written === 0) return value;
  return written === 1 ? -value : null;
}
