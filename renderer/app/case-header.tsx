import { useId } from 'react';
import type { TeardownCase } from '#shared-types/case.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { FindBox } from '../search/find-box.tsx';
import { StatusWord } from '../ui/status-word.tsx';
import { LibraryBadge } from './library-badge.tsx';
import { unitText } from './unit-text.ts';

/** The case and its claim, in sight on every screen of the case. */
export function CaseHeader({ teardownCase }: { teardownCase: TeardownCase }) {
  const { number, unit, claim, outcome, status } = teardownCase;
  return (
    <>
      <span className="header-number">{number}</span>
      <span className="header-unit">{unitText(unit)}</span>
      <ClaimLine claim={claim} />
      <LibraryBadge />
      {status === 'open' ? null : <StatusWord tone="warn">{commonTexts.statuses[status]}</StatusWord>}
      <StatusWord tone={outcome === 'not-answered' ? 'warn' : 'neutral'}>
        <strong>{commonTexts.outcomes[outcome]}</strong>
      </StatusWord>
      <FindBox />
    </>
  );
}

/** One line of the claim as it was said; the whole of it on demand. */
function ClaimLine({ claim }: { claim: string }) {
  const id = useId();
  if (claim.trim() === '') return <span className="header-claim secondary-words">{shellTexts.noClaim}</span>;
  return (
    <div className="header-claim">
      <button
        type="button"
        className="claim-line said"
        popoverTarget={id}
        title={claim}
        aria-description={shellTexts.wholeClaim}
      >
        {commonTexts.quoted(claim)}
      </button>
      <div
        id={id}
        popover="auto"
        className="claim-whole"
        role="region"
        aria-label={shellTexts.claimAsReceived}
      >
        <p className="secondary-words">{shellTexts.claimAsReceived}</p>
        <p className="said">{commonTexts.quoted(claim)}</p>
      </div>
    </div>
  );
}
