/**
 * What several photos share, and what is to be said of all of them at once: nothing is written before Apply, and what is
 * not applied is kept.
 */
import { useRef, useState, type ReactNode } from 'react';
import { partLabel } from '#analysis/report/term-labels.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { stages, type PartShown, type Photo, type Stage } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { partKey } from '../findings/finding-draft.ts';
import { Button } from '../ui/button.tsx';
import { numberText } from '../ui/number-words.ts';
import { Select } from '../ui/select.tsx';
import { SidePanel } from '../ui/side-panel.tsx';
import { toast } from '../ui/toaster.tsx';
import { PartChoice } from './part-choice.tsx';
import { assignToPhotos } from './photo-writer.ts';
import {
  assignmentOf,
  nothingTogether,
  saysNothing,
  sharedOf,
  withPartAsked,
  type Shared,
  type TogetherDraft,
} from './said-together.ts';

const texts = photosTexts.together;
/** Of the choice that takes the value off; no pack term and no stage is called so. */
const none = '—';

export function PhotosPanel(props: {
  caseId: CaseId;
  pack: KnowledgePack;
  photos: readonly Photo[];
  readOnly: boolean;
  draft: TogetherDraft;
  onDraft: (draft: TogetherDraft) => void;
  /** What is to be settled about photos chosen before, until when nothing new is begun. */
  waiting: ReactNode;
  onTakeOut: () => void;
}) {
  const { caseId, pack, photos, readOnly, draft, onDraft: setDraft, waiting, onTakeOut } = props;
  const [sending, setSending] = useState(false);
  const count = numberText(photos.length);
  const shared = sharedOf(photos);

  const apply = async () => {
    setSending(true);
    const photoIds = photos.map(({ id }) => id);
    if (await assignToPhotos(caseId, photoIds, assignmentOf(draft))) {
      setDraft(nothingTogether);
      toast(texts.done(count));
    }
    setSending(false);
  };

  const sideLabel = (id: string) => pack.sides.find((side) => side.id === id)?.label ?? id;
  return (
    <SidePanel title={texts.title(count)}>
      {waiting}
      <fieldset className="photo-panel" disabled={readOnly || sending || waiting !== null}>
        <SharedSelect<Stage>
          label={photosTexts.stage}
          shared={shared.stage}
          values={stages}
          labelOf={(stage) => photosTexts.stageChoices[stage]}
          draft={draft.stage}
          onDraft={(stage) => setDraft({ ...draft, stage })}
        />
        <SharedSelect<string>
          label={photosTexts.seenFrom}
          shared={shared.seenFrom}
          values={pack.sides.map(({ id }) => id)}
          labelOf={sideLabel}
          draft={draft.seenFrom}
          onDraft={(seenFrom) => setDraft({ ...draft, seenFrom })}
        />
        <PartsTogether {...{ pack, photos, draft }} parts={shared.parts} onDraft={setDraft} />
        {readOnly ? null : (
          <div className="photos-apply">
            <Button kind="primary" disabled={saysNothing(draft)} onClick={() => void apply()}>
              {texts.apply(count)}
            </Button>
            <Button kind="quiet" disabled={saysNothing(draft)} onClick={() => setDraft(nothingTogether)}>
              {texts.discard}
            </Button>
          </div>
        )}
      </fieldset>
      <p className="secondary-words photos-captions-note">{texts.captions}</p>
      {readOnly ? null : (
        <div className="photo-take-out">
          <Button onClick={onTakeOut}>{photosTexts.takeOut.open}</Button>
        </div>
      )}
    </SidePanel>
  );
}

function SharedSelect<Value extends string>(props: {
  label: string;
  shared: Shared<Value | null>;
  values: readonly Value[];
  labelOf: (value: Value) => string;
  draft: Value | null | undefined;
  onDraft: (value: Value | null | undefined) => void;
}) {
  const { label, shared, values, labelOf, draft, onDraft } = props;
  const now =
    shared === 'several'
      ? texts.several
      : shared.one === null
        ? texts.noneOfThem
        : texts.allOfThem(labelOf(shared.one));
  return (
    <Select<string>
      label={label}
      value={draft === undefined ? '' : (draft ?? none)}
      emptyChoice={texts.asTheyAre(now)}
      choices={[
        ...values.map((value) => ({ value, label: labelOf(value) })),
        { value: none, label: texts.takeOff },
      ]}
      onValue={(value) => onDraft(value === '' ? undefined : value === none ? null : (value as Value))}
    />
  );
}

function PartsTogether(props: {
  pack: KnowledgePack;
  photos: readonly Photo[];
  parts: readonly { readonly part: PartShown; readonly on: number }[];
  draft: TogetherDraft;
  onDraft: (draft: TogetherDraft) => void;
}) {
  const { pack, photos, parts, draft, onDraft } = props;
  const choosing = useRef<{ focus: () => void }>(null);
  const isAsked = (what: 'add' | 'remove', part: PartShown) =>
    draft[what].some((known) => partKey(known) === partKey(part));
  const fresh = draft.add.filter((part) => !parts.some((known) => partKey(known.part) === partKey(part)));
  return (
    <div className="photo-parts">
      <span className="field-label">{photosTexts.parts}</span>
      {parts.length + fresh.length === 0 ? (
        <p className="secondary-words">{photosTexts.noParts}</p>
      ) : (
        <ul>
          {parts.map(({ part, on }) => {
            const label = partLabel(pack, part);
            const onAll = on === photos.length;
            return (
              <li key={partKey(part)} className="photos-part">
                <span>
                  {label}{' '}
                  <span className="secondary-words">
                    {onAll ? texts.onAll : texts.onSome(numberText(on), numberText(photos.length))}
                  </span>
                </span>
                <span className="photos-part-asks">
                  {onAll ? null : (
                    <Button
                      aria-label={texts.addNamed(label)}
                      pressed={isAsked('add', part)}
                      onClick={() => onDraft(withPartAsked(draft, part, 'add'))}
                    >
                      {texts.add}
                    </Button>
                  )}
                  <Button
                    aria-label={texts.removeNamed(label)}
                    pressed={isAsked('remove', part)}
                    onClick={() => onDraft(withPartAsked(draft, part, 'remove'))}
                  >
                    {texts.remove}
                  </Button>
                </span>
              </li>
            );
          })}
          {fresh.map((part) => {
            const label = partLabel(pack, part);
            return (
              <li key={partKey(part)} className="photos-part">
                <span>
                  {label} <span className="secondary-words">{texts.toBeAdded}</span>
                </span>
                <Button
                  kind="quiet"
                  aria-label={texts.notAfterAll(label)}
                  onClick={() => {
                    onDraft(withPartAsked(draft, part, 'add'));
                    choosing.current?.focus();
                  }}
                >
                  ×
                </Button>
              </li>
            );
          })}
        </ul>
      )}
      <PartChoice
        pack={pack}
        known={[...parts.filter(({ on }) => on === photos.length).map(({ part }) => part), ...draft.add]}
        emptyChoice={photosTexts.addPart}
        full={draft.add.length >= 20}
        onAdd={(part) => onDraft(withPartAsked(draft, part, 'add'))}
        focus={choosing}
      />
    </div>
  );
}
