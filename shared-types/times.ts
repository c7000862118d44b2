/**
 * Two kinds of time. An instant is one this program made: UTC, from this computer's clock.
 * A wall time is one we were told (a camera, a delivery note): as written, with its zone only if it was given.
 */
import { z } from './schema.ts';

/** ISO 8601 in UTC with milliseconds, e.g. 2026-03-04T09:15:00.000Z. */
export const instantSchema = z.iso.datetime({ precision: 3 }).brand<'Instant'>();
export type Instant = z.infer<typeof instantSchema>;

export const wallTimePrecisions = ['year', 'month', 'day', 'minute', 'second'] as const;

export const wallTimeSchema = z.strictObject({
  /** Local date and time as told, ISO 8601 without zone; parts beyond the precision are 01 or 00. */
  local: z.iso.datetime({ local: true, precision: 0 }),
  /** Minutes east of UTC, or null where nobody said. */
  offsetMinutes: z.int().min(-1080).max(1080).nullable(),
  precision: z.enum(wallTimePrecisions),
});
export type WallTime = z.infer<typeof wallTimeSchema>;
