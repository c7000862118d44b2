/**
 * Who had which item when, and what was done to it. An entry is never edited: a wrong one is struck with a reason and
 * stays readable, and the right one is entered anew.
 */
import { caseIdSchema, custodyEntryIdSchema, revisionSchema } from './ids.ts';
import type { CustodyEntryId } from './ids.ts';
import { nameLine, z } from './schema.ts';
import { wallTimeSchema, type Instant } from './times.ts';

/** The first three hand the item on from one to another; the rest are done to it by whoever has it. */
export const custodyHandovers = ['received', 'moved', 'released'] as const;
export const custodyDeeds = ['opened', 'cleaned', 'sectioned', 'other'] as const;
export const custodyEvents = [...custodyHandovers, ...custodyDeeds] as const;
export type CustodyEvent = (typeof custodyEvents)[number];

export function isHandover(event: CustodyEvent): boolean {
  return custodyHandovers.some((known) => known === event);
}

export const custodyFieldsSchema = z
  .strictObject({
    /** "Unit in its crate", "oil sample 2", "sectioned thrust bearing". */
    item: nameLine(200),
    event: z.enum(custodyEvents),
    /** Who handed it over, or who did it. */
    from: nameLine(160),
    /** Who took it; empty where nothing was handed over. */
    to: z.string().trim().max(160),
    at: wallTimeSchema,
    why: z.string().max(2_000),
  })
  .refine(({ event, to }) => !isHandover(event) || to !== '', {
    message: 'who took it is missing',
    path: ['to'],
  });
export type CustodyFields = z.infer<typeof custodyFieldsSchema>;

export const custodyAddSchema = z.strictObject({
  caseId: caseIdSchema,
  entryId: custodyEntryIdSchema,
  fields: custodyFieldsSchema,
});
export type CustodyAdd = z.infer<typeof custodyAddSchema>;

export const custodyStrikeSchema = z.strictObject({
  entryId: custodyEntryIdSchema,
  revision: revisionSchema,
  reason: z.string().trim().min(1).max(2_000),
});

export type CustodyEntry = CustodyFields & {
  readonly id: CustodyEntryId;
  readonly revision: number;
  readonly enteredAt: Instant;
  readonly enteredBy: string;
  readonly struck: { readonly at: Instant; readonly by: string; readonly reason: string } | null;
};
