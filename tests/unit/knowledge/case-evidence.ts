/** Findings and measurements as a predicate reads them, with only what a test says about them. */
import type { FindingEvidence, MeasurementEvidence } from '#analysis/knowledge/mark-predicate.ts';
import { findingIdSchema, type FindingId } from '#shared-types/ids.ts';

/** The id of the finding with that number: a well-formed one that can be told from the others. */
export function findingId(number: number): FindingId {
  return findingIdSchema.parse(`00000000-0000-4000-8000-${String(number).padStart(12, '0')}`);
}

/** Present, at the part as a whole, without an extent, unless said otherwise. */
export function finding(
  number: number,
  said: Pick<FindingEvidence, 'component' | 'kind'> & Partial<FindingEvidence>,
): FindingEvidence {
  return { id: findingId(number), position: null, zone: null, presence: 'present', extent: null, ...said };
}

export function measurement(
  id: string,
  said: Pick<MeasurementEvidence, 'quantity' | 'status'> & Partial<MeasurementEvidence>,
): MeasurementEvidence {
  return { id, position: null, ...said };
}
