import type { TeardownCase } from '#shared-types/case.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { dayAndClockText } from '../ui/number-words.ts';

/** What the program itself knows of the case. */
export function CaseFacts({ teardownCase, pack }: { teardownCase: TeardownCase; pack: KnowledgePack }) {
  return (
    <dl className="fact-list">
      <dt>{claimTexts.status}</dt>
      <dd>{commonTexts.statuses[teardownCase.status]}</dd>
      <dt>{claimTexts.machineKind}</dt>
      <dd>{claimTexts.packVersion(pack.label, teardownCase.pack.version)}</dd>
      <dt>{claimTexts.openedAt}</dt>
      <dd>{dayAndClockText(teardownCase.openedAt)}</dd>
      <dt>{claimTexts.openedBy}</dt>
      <dd>{teardownCase.openedBy}</dd>
    </dl>
  );
}
