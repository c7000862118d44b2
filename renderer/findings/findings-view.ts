/** Table or list of what can occur: each case keeps its own, as long as the window is open. */
import { useState } from 'react';
import type { CaseId } from '#shared-types/ids.ts';

export type FindingsView = 'table' | 'look';

const lastViews = new Map<CaseId, FindingsView>();

export function useFindingsView(caseId: CaseId): readonly [FindingsView, (view: FindingsView) => void] {
  const [view, setView] = useState<FindingsView>(() => lastViews.get(caseId) ?? 'table');
  const keep = (next: FindingsView) => {
    lastViews.set(caseId, next);
    setView(next);
  };
  return [view, keep];
}
