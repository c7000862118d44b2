/** How a case's report is to be made: what the analyst adds in words of their own, and how plates stand on the page. */
import { caseIdSchema, revisionSchema } from './ids.ts';
import { z } from './schema.ts';

export const plateCounts = [1, 2, 4] as const;

/** Before the findings: what has to be known first. Before the answer: what the findings amount to. */
export const paragraphPlaces = ['before-findings', 'before-answer'] as const;
export type ParagraphPlace = (typeof paragraphPlaces)[number];

/**
 * A section of the analyst's own. Its words may carry the simple marks of CommonMark for emphasis, strong emphasis and
 * lists; anything else is printed as it is written.
 */
export const ownSectionSchema = z.strictObject({
  place: z.enum(paragraphPlaces),
  heading: z.string().trim().max(200),
  words: z.string().max(20_000),
});
export type OwnSection = z.infer<typeof ownSectionSchema>;

export const reportPlanFieldsSchema = z.strictObject({
  /** At most so many plates stand on one page. */
  platesAPage: z.union(plateCounts.map((count) => z.literal(count))),
  /** Where cameras say they stood is printed in the photo register only when this is chosen. */
  printCameraPlaces: z.boolean(),
  /** In their order. */
  sections: z.array(ownSectionSchema).max(40),
});
export type ReportPlanFields = z.infer<typeof reportPlanFieldsSchema>;

export type ReportPlan = ReportPlanFields & { readonly revision: number };

export const reportPlanChangeSchema = z.strictObject({
  caseId: caseIdSchema,
  revision: revisionSchema,
  fields: reportPlanFieldsSchema.partial(),
});
export type ReportPlanChange = z.infer<typeof reportPlanChangeSchema>;
