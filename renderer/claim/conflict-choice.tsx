import { claimTexts } from '#shared-types/texts/claim.ts';
import { Button } from '../ui/button.tsx';
import type { FieldName } from './case-field.ts';
import type { Conflict, FieldKeeper } from './field-keeper.ts';

const labels: Record<FieldName, string> = {
  number: claimTexts.number,
  maker: claimTexts.maker,
  model: claimTexts.model,
  serial: claimTexts.serial,
  partNumber: claimTexts.partNumber,
  customer: claimTexts.customer,
  claim: claimTexts.claimHead,
  outcome: claimTexts.outcome,
  conclusion: claimTexts.conclusion,
};

/** The same field was written in two windows: one of the two has to be chosen, and both can be read. */
export function ConflictChoice({ conflict, keeper }: { conflict: Conflict; keeper: FieldKeeper }) {
  const { field, theirs } = conflict;
  return (
    <section className="claim-conflict" role="alert">
      <p>{claimTexts.conflict.words(labels[field])}</p>
      <dl className="fact-list">
        <dt>{claimTexts.conflict.theirs}</dt>
        <dd className="said">{theirs === '' ? claimTexts.conflict.nothing : theirs}</dd>
      </dl>
      <div className="state-actions">
        <Button kind="primary" onClick={() => void keeper.resolve(field, 'mine')}>
          {claimTexts.conflict.keepMine}
        </Button>
        <Button onClick={() => void keeper.resolve(field, 'theirs')}>{claimTexts.conflict.takeTheirs}</Button>
      </div>
    </section>
  );
}
