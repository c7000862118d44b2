/** Says that something was chosen for several photos and not applied before others were chosen: it is kept until settled. */
import { useState } from 'react';
import { partLabel, sideLabel } from '#analysis/report/term-labels.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { Button } from '../ui/button.tsx';
import { numberText } from '../ui/number-words.ts';
import { toast } from '../ui/toaster.tsx';
import { assignToPhotos } from './photo-writer.ts';
import { assignmentOf, type TogetherDraft, type Unapplied } from './said-together.ts';

const texts = photosTexts.together.waiting;

export function NotApplied(props: {
  caseId: CaseId;
  pack: KnowledgePack;
  unapplied: NonNullable<Unapplied>;
  onChoose: () => void;
  /** Applied, or dropped. */
  onSettled: () => void;
}) {
  const { caseId, pack, unapplied, onChoose, onSettled } = props;
  const { photoIds, draft } = unapplied;
  const [sending, setSending] = useState(false);
  const count = numberText(photoIds.length);
  const title = texts.title(count, photoIds.length === 1);

  const apply = async () => {
    setSending(true);
    if (await assignToPhotos(caseId, photoIds, assignmentOf(draft))) {
      toast(photosTexts.together.done(count));
      onSettled();
    } else setSending(false);
  };

  return (
    <section className="photos-not-applied" aria-label={title}>
      <div role="status">
        <h3>{title}</h3>
        <p>{texts.words}</p>
        <ul>
          {wordsOf(draft, pack).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </div>
      <div className="photos-apply">
        <Button kind="primary" disabled={sending} onClick={() => void apply()}>
          {texts.apply}
        </Button>
        <Button kind="quiet" disabled={sending} onClick={onChoose}>
          {texts.chooseAgain}
        </Button>
        <Button kind="quiet" disabled={sending} onClick={onSettled}>
          {texts.drop}
        </Button>
      </div>
    </section>
  );
}

function wordsOf({ stage, seenFrom, add, remove }: TogetherDraft, pack: KnowledgePack): readonly string[] {
  const { takeOff } = photosTexts.together;
  return [
    ...(stage === undefined
      ? []
      : [texts.what(photosTexts.stage, stage === null ? takeOff : photosTexts.stageChoices[stage])]),
    ...(seenFrom === undefined
      ? []
      : [texts.what(photosTexts.seenFrom, seenFrom === null ? takeOff : sideLabel(pack, seenFrom))]),
    ...add.map((part) => texts.add(partLabel(pack, part))),
    ...remove.map((part) => texts.remove(partLabel(pack, part))),
  ];
}
