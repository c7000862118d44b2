/**
 * One committed gesture at the bench: what the marks and findings it touched shall be now.
 * A batch is carried out whole or not at all. `revision` is the one the page last saw, null for a new thing;
 * a thing that undo brings back is put again under its old id with revision null.
 */
import { findingFieldsSchema } from './finding.ts';
import { caseIdSchema, findingIdSchema, markIdSchema, revisionSchema } from './ids.ts';
import { markFieldsSchema } from './mark.ts';
import type { Finding } from './finding.ts';
import type { FindingId, MarkId } from './ids.ts';
import type { Mark } from './mark.ts';
import { z } from './schema.ts';

export const benchChangeSchema = z.discriminatedUnion('change', [
  z.strictObject({
    change: z.literal('put-mark'),
    mark: markFieldsSchema,
    revision: revisionSchema.nullable(),
  }),
  z.strictObject({ change: z.literal('remove-mark'), markId: markIdSchema, revision: revisionSchema }),
  z.strictObject({
    change: z.literal('put-finding'),
    findingId: findingIdSchema,
    fields: findingFieldsSchema,
    revision: revisionSchema.nullable(),
  }),
  z.strictObject({
    change: z.literal('remove-finding'),
    findingId: findingIdSchema,
    revision: revisionSchema,
  }),
]);
export type BenchChange = z.infer<typeof benchChangeSchema>;

export const benchCommitSchema = z.strictObject({
  caseId: caseIdSchema,
  changes: z.array(benchChangeSchema).min(1).max(5_000),
});
export type BenchCommit = z.infer<typeof benchCommitSchema>;

export type BenchOutcome = {
  /** As they stand after the commit: only those that the commit put. */
  readonly marks: readonly Mark[];
  readonly findings: readonly Finding[];
  readonly removedMarkIds: readonly MarkId[];
  readonly removedFindingIds: readonly FindingId[];
};
