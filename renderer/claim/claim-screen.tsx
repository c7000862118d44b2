import { useEffect, useRef, useState } from 'react';
import type { TeardownCase } from '#shared-types/case.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { ErrorState } from '../ui/error-state.tsx';
import { StatusWord, type StatusTone } from '../ui/status-word.tsx';
import { CaseFacts } from './case-facts.tsx';
import { claimPlaces } from './claim-places.ts';
import { ClaimIndex, ClaimSection } from './claim-section.tsx';
import { ConflictChoice } from './conflict-choice.tsx';
import { CustodySection } from './custody-section.tsx';
import type { FieldKeeper, KeeperView, SavingState } from './field-keeper.ts';
import { InterestSection } from './interest-section.tsx';
import { choicesOf, KeptArea, KeptChoice, KeptLine, type Kept } from './kept-field.tsx';
import { PartiesSection } from './parties-section.tsx';
import { ServiceSection } from './service-section.tsx';
import { UnitNames, UnitSeen } from './unit-sections.tsx';
import { useFieldKeeper } from './use-field-keeper.ts';
import { WithdrawDialog } from './withdraw-dialog.tsx';
import './claim.css';

/** Who claims what, word for word, about which unit, in whose hands it was; and what the analyst answers. */
export function ClaimScreen({ teardownCase, pack }: { teardownCase: TeardownCase; pack: KnowledgePack }) {
  const { keeper, view } = useFieldKeeper(teardownCase);
  const [partyForm, setPartyForm] = useState(false);
  const [custodyForm, setCustodyForm] = useState(false);
  const closed = teardownCase.status !== 'open';
  const saving = view.saving === 'saved' && (partyForm || custodyForm) ? 'form-open' : view.saving;
  const kept: Kept = { keeper, view, closed };
  const { id: caseId } = teardownCase;

  return (
    <div className="screen claim-screen">
      <div className="screen-head">
        <h1>{claimTexts.title}</h1>
        <p role="status" className={saving === 'saved' ? 'secondary-words' : undefined}>
          {closed ? null : <StatusWord tone={savingTones[saving]}>{claimTexts.saving[saving]}</StatusWord>}
        </p>
        {closed ? null : (
          <div className="screen-head-actions">
            <WithdrawDialog keeper={keeper} teardownCase={teardownCase} />
          </div>
        )}
      </div>
      <Notices keeper={keeper} view={view} pack={pack} />
      {closed ? (
        <p className="claim-closed">{claimTexts.closed(commonTexts.statuses[teardownCase.status])}</p>
      ) : null}
      <ClaimIndex places={Object.values(claimPlaces)} />

      <div className="claim-columns">
        <div>
          <ClaimWords kept={kept} />
          <PartiesSection caseId={caseId} closed={closed} onForm={setPartyForm} />
          <StateReceived kept={kept} />
          <Answer kept={kept} />
        </div>
        <div>
          <UnitNames kept={kept} />
          <UnitSeen kept={kept} caseId={caseId} pack={pack} />
          <ServiceSection kept={kept} />
          <InterestSection kept={kept} />
          <ClaimSection place={caseFacts}>
            <CaseFacts teardownCase={teardownCase} pack={pack} />
          </ClaimSection>
        </div>
        <CustodySection caseId={caseId} closed={closed} onForm={setCustodyForm} />
      </div>
    </div>
  );
}

/** At the end of its column, and short: the index does not lead there. */
const caseFacts = { id: 'claim-case', title: claimTexts.caseHead };

const savingTones: Record<SavingState | 'form-open', StatusTone> = {
  'form-open': 'neutral',
  saved: 'neutral',
  waiting: 'neutral',
  unfinished: 'warn',
  failed: 'bad',
  conflict: 'warn',
};

/** What has to be seen wherever the page stands: it stays at the top of the window, and is brought there. */
function Notices(props: { keeper: FieldKeeper; view: KeeperView; pack: KnowledgePack }) {
  const { keeper, view, pack } = props;
  const place = useRef<HTMLDivElement>(null);
  const count = view.conflicts.length + (view.error === null ? 0 : 1);

  useEffect(() => {
    if (count > 0) place.current?.scrollIntoView({ block: 'nearest' });
  }, [count]);

  if (count === 0) return null;
  return (
    <div className="claim-notices" ref={place}>
      {view.error === null ? null : (
        <ErrorState inline error={view.error} onRetry={() => void keeper.flush()} />
      )}
      {view.conflicts.map((conflict) => (
        <ConflictChoice key={conflict.field} conflict={conflict} keeper={keeper} pack={pack} />
      ))}
    </div>
  );
}

function ClaimWords({ kept }: { kept: Kept }) {
  return (
    <ClaimSection place={claimPlaces.claim}>
      <div className="claim-fields">
        <KeptArea
          kept={kept}
          name="claim"
          label={claimTexts.claim}
          hint={claimTexts.claimHint}
          placeholder={claimTexts.claimEmpty}
          controlClassName="control-said"
        />
        <KeptLine
          kept={kept}
          name="customer"
          label={claimTexts.customer}
          hint={claimTexts.customerHint}
          maxLength={160}
        />
      </div>
    </ClaimSection>
  );
}

function StateReceived({ kept }: { kept: Kept }) {
  return (
    <ClaimSection place={claimPlaces.state}>
      <div className="claim-fields">
        <KeptArea
          kept={kept}
          name="stateReceived"
          label={claimTexts.stateReceived}
          hint={claimTexts.stateReceivedHint}
        />
      </div>
    </ClaimSection>
  );
}

function Answer({ kept }: { kept: Kept }) {
  return (
    <ClaimSection place={claimPlaces.answer}>
      <div className="claim-fields">
        <KeptChoice
          kept={kept}
          name="outcome"
          label={claimTexts.outcome}
          hint={claimTexts.outcomeHint}
          choices={choicesOf(commonTexts.outcomes)}
        />
        <KeptArea
          kept={kept}
          name="conclusion"
          label={claimTexts.conclusion}
          hint={claimTexts.conclusionHint}
          controlClassName="control-serif"
        />
      </div>
    </ClaimSection>
  );
}
