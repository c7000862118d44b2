import { caseIdSchema } from './ids.ts';
import { z } from './schema.ts';
import { paperSizeSchema } from './settings.ts';

export const reportRequestSchema = z.strictObject({
  caseId: caseIdSchema,
  paper: paperSizeSchema,
});
export type ReportRequest = z.infer<typeof reportRequestSchema>;
