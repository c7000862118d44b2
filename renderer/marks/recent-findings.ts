/** The findings that marks of a case were given to, the last one first, as long as the window is open. */
import type { CaseId, FindingId } from '#shared-types/ids.ts';

const recent = new Map<CaseId, readonly FindingId[]>();

export function noteGiven(caseId: CaseId, findingId: FindingId): void {
  recent.set(caseId, [findingId, ...recentFindings(caseId).filter((id) => id !== findingId)]);
}

export function recentFindings(caseId: CaseId): readonly FindingId[] {
  return recent.get(caseId) ?? [];
}
