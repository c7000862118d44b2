/** Says what was done just now and offers to take exactly that back, not whatever came after it. */
import { findingsTexts } from '#shared-types/texts/findings.ts';
import type { Bench } from '../marks/bench-store.ts';
import { toast } from '../ui/toaster.tsx';

export function toastWithUndo(bench: Bench, text: string): void {
  const deed = bench.read().desk?.history.done.at(-1);
  toast(text, {
    action: {
      label: findingsTexts.undo,
      run: () => {
        if (deed !== undefined && bench.read().desk?.history.done.at(-1) === deed) bench.undo();
        else toast(findingsTexts.undoTooLate);
      },
    },
  });
}
