import { caseIdSchema, packTermIdSchema, photoIdSchema, revisionSchema, type CaseId } from './ids.ts';
import type { BlobId } from './ids.ts';
import { seenTurningSchema } from './rotation.ts';
import { nameLine, z } from './schema.ts';
import { wallTimeSchema, type Instant } from './times.ts';

export const caseStatuses = ['open', 'issued', 'superseded', 'withdrawn'] as const;
export const caseStatusSchema = z.enum(caseStatuses);
export type CaseStatus = z.infer<typeof caseStatusSchema>;

/** How the claim was answered; cause and liability are kept apart. */
export const outcomes = [
  'not-answered',
  'claim-supported',
  'claim-partly-supported',
  'claim-not-supported',
  'undetermined',
  'no-fault-found',
  'settled-as-goodwill',
] as const;
export const outcomeSchema = z.enum(outcomes);
export type Outcome = z.infer<typeof outcomeSchema>;

const line = (most: number) => z.string().trim().max(most);

/** What the unit is called by. */
export const unitNamesSchema = z.strictObject({
  maker: line(120),
  model: line(120),
  serial: line(80),
  partNumber: line(80),
});
export type UnitNames = z.infer<typeof unitNamesSchema>;

export const threadHands = ['right', 'left', 'no-thread'] as const;
export type ThreadHand = (typeof threadHands)[number];

/**
 * Rotation and hand of the shaft's thread are two observations, each with the photo that shows it; neither is ever
 * inferred from the other.
 */
export const unitSchema = z.strictObject({
  ...unitNamesSchema.shape,
  rotation: z.strictObject({ ...seenTurningSchema.shape, photoId: photoIdSchema.nullable() }).nullable(),
  thread: z.strictObject({ hand: z.enum(threadHands), photoId: photoIdSchema.nullable() }).nullable(),
});
export type Unit = z.infer<typeof unitSchema>;

export const durationUnits = ['days', 'weeks', 'months', 'years'] as const;
export type DurationUnit = (typeof durationUnits)[number];

/** The unit's life between fitting and failure, as told. */
export const serviceSchema = z.strictObject({
  fittedOn: wallTimeSchema.nullable(),
  failedOn: wallTimeSchema.nullable(),
  timeInService: z
    .strictObject({ value: z.number().min(0).max(10_000), unit: z.enum(durationUnits) })
    .nullable(),
  runningHours: z.number().min(0).max(1_000_000).nullable(),
});
export type Service = z.infer<typeof serviceSchema>;

/** Whether whoever gives the opinion has a stake in it: the shop that writes it is often the one accused. */
export const interestStandings = ['not-stated', 'none', 'declared'] as const;
export const interestSchema = z.strictObject({
  standing: z.enum(interestStandings),
  words: z.string().max(4_000),
});
export type Interest = z.infer<typeof interestSchema>;

export const caseFieldsSchema = z.strictObject({
  /** The shop's own number for the case, unique in the library: 26-0147, say. */
  number: nameLine(40),
  unit: unitSchema,
  customer: line(160),
  /** Word for word as received: never corrected, never shortened. */
  claim: z.string().max(20_000),
  service: serviceSchema,
  /** How the unit and its packing arrived, before anything was opened or cleaned. */
  stateReceived: z.string().max(20_000),
  interest: interestSchema,
  outcome: outcomeSchema,
  conclusion: z.string().max(20_000),
});
export type CaseFields = z.infer<typeof caseFieldsSchema>;

export const caseDraftSchema = z.strictObject({
  number: caseFieldsSchema.shape.number,
  unit: unitNamesSchema,
  customer: caseFieldsSchema.shape.customer,
  claim: caseFieldsSchema.shape.claim,
  machineKind: packTermIdSchema,
});
export type CaseDraft = z.infer<typeof caseDraftSchema>;

export const caseChangeSchema = z.strictObject({
  caseId: caseIdSchema,
  revision: revisionSchema,
  fields: caseFieldsSchema.partial(),
});
export type CaseChange = z.infer<typeof caseChangeSchema>;

/** Which knowledge pack the case was opened with; a later pack never changes an old case silently. */
export type PackReference = { readonly id: string; readonly version: string; readonly sha256: string };

export type TeardownCase = CaseFields & {
  readonly id: CaseId;
  readonly revision: number;
  readonly status: CaseStatus;
  readonly pack: PackReference;
  readonly openedAt: Instant;
  readonly openedBy: string;
  readonly counts: CaseCounts;
};

export type CaseCounts = {
  readonly photos: number;
  readonly marks: number;
  readonly findings: number;
  readonly journalEntries: number;
};

export type CaseSummary = {
  readonly id: CaseId;
  readonly number: string;
  readonly status: CaseStatus;
  readonly outcome: Outcome;
  readonly unit: UnitNames;
  readonly customer: string;
  readonly claim: string;
  readonly openedAt: Instant;
  readonly counts: CaseCounts;
  /** The first photo of the case, or null. */
  readonly coverBlobId: BlobId | null;
};
