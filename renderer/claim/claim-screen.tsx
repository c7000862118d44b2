import type { TeardownCase } from '#shared-types/case.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { ErrorState } from '../ui/error-state.tsx';
import { PanelHead } from '../ui/side-panel.tsx';
import { StatusWord, type StatusTone } from '../ui/status-word.tsx';
import { CaseFacts } from './case-facts.tsx';
import { ConflictChoice } from './conflict-choice.tsx';
import { KeptArea, KeptChoice, KeptLine, type Kept } from './kept-field.tsx';
import type { SavingState } from './field-keeper.ts';
import { useFieldKeeper } from './use-field-keeper.ts';
import { WithdrawDialog } from './withdraw-dialog.tsx';
import './claim.css';

/** Who claims what, word for word, about which unit; and what the analyst answers. */
export function ClaimScreen({ teardownCase, pack }: { teardownCase: TeardownCase; pack: KnowledgePack }) {
  const { keeper, view } = useFieldKeeper(teardownCase);
  const closed = teardownCase.status !== 'open';
  const kept: Kept = { keeper, view, closed };

  return (
    <div className="screen claim-screen">
      <div className="screen-head">
        <h1>{claimTexts.title}</h1>
        <p role="status" className={view.saving === 'saved' ? 'secondary-words' : undefined}>
          {closed ? null : (
            <StatusWord tone={savingTones[view.saving]}>{claimTexts.saving[view.saving]}</StatusWord>
          )}
        </p>
        {closed ? null : (
          <div className="screen-head-actions">
            <WithdrawDialog keeper={keeper} teardownCase={teardownCase} />
          </div>
        )}
      </div>
      {closed ? (
        <p className="claim-closed">{claimTexts.closed(commonTexts.statuses[teardownCase.status])}</p>
      ) : null}
      {view.error === null ? null : (
        <ErrorState inline error={view.error} onRetry={() => void keeper.flush()} />
      )}
      {view.conflicts.map((conflict) => (
        <ConflictChoice key={conflict.field} conflict={conflict} keeper={keeper} />
      ))}

      <div className="claim-columns">
        <section>
          <PanelHead title={claimTexts.claimHead} />
          <div className="claim-fields">
            <KeptArea
              kept={kept}
              name="claim"
              label={claimTexts.claim}
              hint={claimTexts.claimHint}
              placeholder={claimTexts.claimEmpty}
              controlClassName="control-said"
            />
            <KeptLine kept={kept} name="customer" label={claimTexts.from} maxLength={160} />
          </div>
          <PanelHead title={claimTexts.answerHead} />
          <div className="claim-fields">
            <KeptChoice
              kept={kept}
              name="outcome"
              label={claimTexts.outcome}
              hint={claimTexts.outcomeHint}
              words={commonTexts.outcomes}
            />
            <KeptArea
              kept={kept}
              name="conclusion"
              label={claimTexts.conclusion}
              hint={claimTexts.conclusionHint}
              controlClassName="control-serif"
            />
          </div>
        </section>
        <section>
          <PanelHead title={claimTexts.unitHead} />
          <div className="claim-fields">
            <KeptLine
              kept={kept}
              name="number"
              label={claimTexts.number}
              required
              maxLength={40}
              error={
                view.values.number.trim() === '' ? claimTexts.numberMissing : view.numberRefused?.message
              }
            />
            <KeptLine kept={kept} name="maker" label={claimTexts.maker} maxLength={120} />
            <KeptLine kept={kept} name="model" label={claimTexts.model} maxLength={120} />
            <KeptLine
              kept={kept}
              name="serial"
              label={claimTexts.serial}
              hint={claimTexts.serialHint}
              maxLength={80}
            />
            <KeptLine kept={kept} name="partNumber" label={claimTexts.partNumber} maxLength={80} />
          </div>
          <PanelHead title={claimTexts.caseHead} />
          <CaseFacts teardownCase={teardownCase} pack={pack} />
        </section>
      </div>
    </div>
  );
}

const savingTones: Record<SavingState, StatusTone> = {
  saved: 'neutral',
  waiting: 'neutral',
  failed: 'bad',
  conflict: 'warn',
};
