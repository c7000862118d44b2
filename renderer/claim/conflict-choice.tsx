import type { Interest, Outcome, ThreadHand } from '#shared-types/case.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { Button } from '../ui/button.tsx';
import type { FieldName } from './case-field.ts';
import type { Conflict, FieldKeeper } from './field-keeper.ts';
import { turningWords } from './unit-sections.tsx';

const { conflict: texts, seen, service, interest } = claimTexts;

const labels: Record<FieldName, string> = {
  number: claimTexts.number,
  maker: claimTexts.maker,
  model: claimTexts.model,
  serial: claimTexts.serial,
  partNumber: claimTexts.partNumber,
  customer: claimTexts.customer,
  claim: claimTexts.claimHead,
  stateReceived: claimTexts.stateReceived,
  outcome: claimTexts.outcome,
  conclusion: claimTexts.conclusion,
  rotation: seen.rotation,
  rotationPhoto: seen.rotationPhoto,
  threadHand: seen.thread,
  threadPhoto: seen.threadPhoto,
  interest: interest.standing,
  interestWords: interest.head,
  fittedOn: service.fittedOn,
  failedOn: service.failedOn,
  timeInService: service.timeInService,
  runningHours: service.runningHours,
};

/** The same field was written in two windows: one of the two has to be chosen, and both can be read. */
export function ConflictChoice(props: { conflict: Conflict; keeper: FieldKeeper; pack: KnowledgePack }) {
  const { conflict, keeper, pack } = props;
  const { field, theirs } = conflict;
  return (
    <section className="claim-conflict" role="alert">
      <p>{texts.words(labels[field])}</p>
      <dl className="fact-list">
        <dt>{texts.theirs}</dt>
        <dd className="said">{theirs === '' ? texts.nothing : wordsOf(field, theirs, pack)}</dd>
      </dl>
      <div className="state-actions">
        <Button kind="primary" onClick={() => void keeper.resolve(field, 'mine')}>
          {texts.keepMine}
        </Button>
        <Button onClick={() => void keeper.resolve(field, 'theirs')}>{texts.takeTheirs}</Button>
      </div>
    </section>
  );
}

/** A field's text as its control shows it. */
function wordsOf(field: FieldName, text: string, pack: KnowledgePack): string {
  switch (field) {
    case 'outcome':
      return commonTexts.outcomes[text as Outcome];
    case 'interest':
      return interest.standings[text as Interest['standing']];
    case 'rotation':
      return turningWords(pack, text);
    case 'threadHand':
      return seen.hands[text as ThreadHand];
    case 'rotationPhoto':
    case 'threadPhoto':
      return seen.anotherPhoto;
    default:
      return text;
  }
}
