import { analystIdSchema, revisionSchema } from './ids.ts';
import { nameLine, z } from './schema.ts';

export const analystDraftSchema = z.strictObject({
  name: nameLine(120),
  /** As it shall stand under the signature: "Dipl.-Ing., turbomachinery", say. */
  qualification: z.string().trim().max(300),
});
export type AnalystDraft = z.infer<typeof analystDraftSchema>;

export const analystSchema = z.strictObject({
  ...analystDraftSchema.shape,
  id: analystIdSchema,
  revision: revisionSchema,
});
export type Analyst = z.infer<typeof analystSchema>;
