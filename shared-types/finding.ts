import { findingIdSchema, packTermIdSchema, revisionSchema } from './ids.ts';
import { seenTurningSchema } from './rotation.ts';
import { z } from './schema.ts';
import type { FindingId } from './ids.ts';
import type { Instant } from './times.ts';

/** Primary damage began the failure; secondary followed from it; unrelated is handling or old. */
export const damageClasses = ['primary', 'secondary', 'unrelated', 'undecided'] as const;
export const damageClassSchema = z.enum(damageClasses);
export type DamageClass = z.infer<typeof damageClassSchema>;

/** "Looked for and not there" is a finding too, and often the one that decides. */
export const presences = ['present', 'looked-for-absent', 'not-examined'] as const;
export const presenceSchema = z.enum(presences);
export type Presence = z.infer<typeof presenceSchema>;

export const severities = ['slight', 'moderate', 'severe'] as const;
export const severitySchema = z.enum(severities);

/** k of n, blades or pads: how many carry the damage, of how many there are. */
export const extentSchema = z
  .strictObject({ affected: z.int().min(0).max(999), of: z.int().min(1).max(999) })
  .refine((extent) => extent.affected <= extent.of, { message: 'more affected than there are' });
export type Extent = z.infer<typeof extentSchema>;

export const findingFieldsSchema = z.strictObject({
  component: packTermIdSchema,
  /** Which of several like parts: compressor side or turbine side, say; null where the part is single. */
  position: packTermIdSchema.nullable(),
  zone: packTermIdSchema.nullable(),
  kind: packTermIdSchema,
  class: damageClassSchema,
  presence: presenceSchema,
  severity: severitySchema.nullable(),
  extent: extentSchema.nullable(),
  /** Which way blades are bent, as seen from one side; null where nothing is bent or it was not told. */
  bend: seenTurningSchema.nullable(),
  note: z.string().max(20_000),
});
export type FindingFields = z.infer<typeof findingFieldsSchema>;

export const findingSchema = z.strictObject({
  ...findingFieldsSchema.shape,
  id: findingIdSchema,
  /** Counts up within the case and is never given twice: it is what plates and tables refer to. */
  number: z.int().min(1),
  revision: revisionSchema,
});
export type Finding = z.infer<typeof findingSchema>;

/** One change of class as the history keeps it. */
export type ClassChange = {
  readonly findingId: FindingId;
  readonly at: Instant;
  readonly who: string;
  readonly from: DamageClass;
  readonly to: DamageClass;
  readonly reason: string;
};
