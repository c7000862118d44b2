/**
 * A sample case as shipped: case.json beside its photos. What the program numbers itself is named by what the file
 * calls it: photos by their file, findings by their place in the list, nodes of the chain by a name of their own.
 */
import { readFileSync } from 'node:fs';

import { analystDraftSchema } from '#shared-types/analyst.ts';
import { caseDraftSchema, caseFieldsSchema, threadHands } from '#shared-types/case.ts';
import { chainNodeKinds, linkCertaintySchema } from '#shared-types/chain.ts';
import { custodyFieldsSchema } from '#shared-types/custody.ts';
import { findingFieldsSchema } from '#shared-types/finding.ts';
import { packTermIdSchema } from '#shared-types/ids.ts';
import { markGeometrySchema } from '#shared-types/mark.ts';
import { partyFieldsSchema } from '#shared-types/party.ts';
import { photoFieldsSchema } from '#shared-types/photo.ts';
import { reportPlanFieldsSchema } from '#shared-types/report-plan.ts';
import { seenTurningSchema } from '#shared-types/rotation.ts';
import { z } from '#shared-types/schema.ts';

import { shippedPath } from '../processes/entry-table.ts';

const photoFile = z.string();
const findingPlace = z.int().min(0);
const nodeName = z.string();

export const sampleCaseSchema = z.strictObject({
  analyst: analystDraftSchema,
  draft: caseDraftSchema,
  told: caseFieldsSchema.pick({
    service: true,
    stateReceived: true,
    interest: true,
    outcome: true,
    conclusion: true,
  }),
  seen: z.strictObject({
    rotation: z.strictObject({ ...seenTurningSchema.shape, photo: photoFile.nullable() }).nullable(),
    thread: z.strictObject({ hand: z.enum(threadHands), photo: photoFile.nullable() }).nullable(),
  }),
  parties: z.array(partyFieldsSchema),
  custody: z.array(custodyFieldsSchema),
  photos: z.array(z.strictObject({ file: photoFile, fields: photoFieldsSchema })).min(1),
  findings: z.array(findingFieldsSchema),
  marks: z.array(z.strictObject({ photo: photoFile, finding: findingPlace, geometry: markGeometrySchema })),
  chain: z.strictObject({
    nodes: z.array(
      z.strictObject({
        name: nodeName,
        kind: z.enum(chainNodeKinds),
        finding: findingPlace.nullable(),
        term: packTermIdSchema.nullable(),
        words: z.string(),
      }),
    ),
    links: z.array(
      z.strictObject({
        cause: nodeName,
        effect: nodeName,
        reason: z.string(),
        certainty: linkCertaintySchema,
      }),
    ),
  }),
  plan: reportPlanFieldsSchema,
});
export type SampleCase = z.infer<typeof sampleCaseSchema>;

/** @throws ZodError naming the field that is not as it should be */
export function readSample(folder: string): SampleCase {
  const text = readFileSync(shippedPath('sample-cases', folder, 'case.json'), 'utf8');
  return sampleCaseSchema.parse(JSON.parse(text));
}
