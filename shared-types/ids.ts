/** Public identifiers: UUIDs, branded so that a photo's id can never be handed in for a finding's. */
import { z } from './schema.ts';

const publicId = <Brand extends string>() => z.uuid().brand<Brand>();

export const caseIdSchema = publicId<'CaseId'>();
export const photoIdSchema = publicId<'PhotoId'>();
export const blobIdSchema = publicId<'BlobId'>();
export const markIdSchema = publicId<'MarkId'>();
export const findingIdSchema = publicId<'FindingId'>();
export const partyIdSchema = publicId<'PartyId'>();
export const custodyEntryIdSchema = publicId<'CustodyEntryId'>();
export const chainNodeIdSchema = publicId<'ChainNodeId'>();
export const chainLinkIdSchema = publicId<'ChainLinkId'>();
export const analystIdSchema = publicId<'AnalystId'>();
export const jobIdSchema = publicId<'JobId'>();
/** One file on its way in: issued by the carrier when the user drops or chooses it. */
export const intakeTokenSchema = publicId<'IntakeToken'>();
/** One file on its way out: names a finished document until the library is closed. */
export const deliveryTokenSchema = publicId<'DeliveryToken'>();

export type CaseId = z.infer<typeof caseIdSchema>;
export type PhotoId = z.infer<typeof photoIdSchema>;
export type BlobId = z.infer<typeof blobIdSchema>;
export type MarkId = z.infer<typeof markIdSchema>;
export type FindingId = z.infer<typeof findingIdSchema>;
export type PartyId = z.infer<typeof partyIdSchema>;
export type CustodyEntryId = z.infer<typeof custodyEntryIdSchema>;
export type ChainNodeId = z.infer<typeof chainNodeIdSchema>;
export type ChainLinkId = z.infer<typeof chainLinkIdSchema>;
export type AnalystId = z.infer<typeof analystIdSchema>;
export type JobId = z.infer<typeof jobIdSchema>;
export type IntakeToken = z.infer<typeof intakeTokenSchema>;
export type DeliveryToken = z.infer<typeof deliveryTokenSchema>;

/** Counts the times a row was written; a write that names an older one is refused as stale. */
export const revisionSchema = z.int().min(1);

/** Ids of the machine kind's data: lower-case words joined by hyphens, unique within their list. */
export const packTermIdSchema = z
  .string()
  .max(80)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case words joined by hyphens');
export type PackTermId = z.infer<typeof packTermIdSchema>;
