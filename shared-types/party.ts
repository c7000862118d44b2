/** Who has to do with a case: one person or firm may stand in several roles. */
import { caseIdSchema, partyIdSchema, revisionSchema } from './ids.ts';
import { nameLine, z } from './schema.ts';

export const partyRoles = [
  'claims',
  'instructs',
  'pays',
  'owns',
  'operates',
  'fitted',
  'rebuilt',
  'supplied',
  'insures',
  'other',
] as const;
export const partyRoleSchema = z.enum(partyRoles);
export type PartyRole = z.infer<typeof partyRoleSchema>;

export const partyFieldsSchema = z.strictObject({
  name: nameLine(160),
  /** Each once, in the order of partyRoles; a party may be entered before its role is known. */
  roles: z.array(partyRoleSchema).max(partyRoles.length),
  /** How to reach them, their own reference number and the like. */
  details: z.string().max(2_000),
});
export type PartyFields = z.infer<typeof partyFieldsSchema>;

export const partySchema = z.strictObject({
  ...partyFieldsSchema.shape,
  id: partyIdSchema,
  revision: revisionSchema,
});
export type Party = z.infer<typeof partySchema>;

/** `revision` is the one the page last saw, null for a new party. */
export const partyPutSchema = z.strictObject({
  caseId: caseIdSchema,
  partyId: partyIdSchema,
  revision: revisionSchema.nullable(),
  fields: partyFieldsSchema,
});
export type PartyPut = z.infer<typeof partyPutSchema>;
