import { useMemo } from 'react';
import { sideLabel } from '#analysis/knowledge/pack-terms.ts';
import { threadHands } from '#shared-types/case.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { turningSenses } from '#shared-types/rotation.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { useAnswer } from '../api/queries.ts';
import { numberText } from '../ui/number-words.ts';
import type { Choice } from '../ui/select.tsx';
import { turningKey, turningOfKey } from './case-field.ts';
import { claimPlaces } from './claim-places.ts';
import { ClaimSection } from './claim-section.tsx';
import { KeptChoice, KeptLine, type Kept } from './kept-field.tsx';

const texts = claimTexts.seen;

/** What the unit is called by. */
export function UnitNames({ kept }: { kept: Kept }) {
  const { view } = kept;
  const numberError =
    view.values.number.trim() === '' ? claimTexts.numberMissing : view.numberRefused?.message;
  return (
    <ClaimSection place={claimPlaces.unit}>
      <div className="claim-fields">
        <KeptLine
          kept={kept}
          name="number"
          label={claimTexts.number}
          required
          maxLength={40}
          error={numberError}
        />
        <div className="claim-pair">
          <KeptLine kept={kept} name="maker" label={claimTexts.maker} maxLength={120} />
          <KeptLine kept={kept} name="model" label={claimTexts.model} maxLength={120} />
        </div>
        <KeptLine
          kept={kept}
          name="serial"
          label={claimTexts.serial}
          hint={claimTexts.serialHint}
          maxLength={80}
        />
        <KeptLine kept={kept} name="partNumber" label={claimTexts.partNumber} maxLength={80} />
      </div>
    </ClaimSection>
  );
}

/** Rotation and thread: two observations, each with its photo, neither filled in by the program. */
export function UnitSeen({ kept, caseId, pack }: { kept: Kept; caseId: CaseId; pack: KnowledgePack }) {
  const photos = useAnswer('photos.list', { caseId });
  const turnings = useMemo(
    () => turningChoices(pack, kept.view.values.rotation),
    [pack, kept.view.values.rotation],
  );
  const given = { kept, photos: photos.data ?? null };
  return (
    <ClaimSection place={claimPlaces.seen}>
      <p className="field-hint">{texts.hint}</p>
      <div className="claim-fields">
        <div className="claim-observation">
          <KeptChoice
            kept={kept}
            name="rotation"
            label={texts.rotation}
            choices={turnings}
            emptyChoice={texts.rotationEmpty}
          />
          <ShownBy {...given} of="rotation" name="rotationPhoto" label={texts.rotationPhoto} />
        </div>
        <div className="claim-pair">
          <KeptChoice
            kept={kept}
            name="threadHand"
            label={texts.thread}
            choices={threadHands.map((value) => ({ value, label: texts.hands[value] }))}
            emptyChoice={texts.threadEmpty}
          />
          <ShownBy {...given} of="threadHand" name="threadPhoto" label={texts.threadPhoto} />
        </div>
      </div>
    </ClaimSection>
  );
}

/** Sides that look along the axis; another one stands there only if it was entered so. */
function turningChoices(pack: KnowledgePack, entered: string): Choice<string>[] {
  const sides = pack.sides.filter(
    ({ id, axisEnd }) => axisEnd !== undefined || id === turningOfKey(entered)?.seenFrom,
  );
  return sides.flatMap(({ id }) =>
    turningSenses.map((sense) => {
      const turning = { sense, seenFrom: id };
      return { value: turningKey(turning), label: turningWords(pack, turningKey(turning)) };
    }),
  );
}

/** "clockwise, seen from the air inlet, along the axis"; empty for nothing observed. */
export function turningWords(pack: KnowledgePack, key: string): string {
  const turning = turningOfKey(key);
  return turning === null
    ? ''
    : texts.turning(texts.senses[turning.sense], sideLabel(pack, turning.seenFrom));
}

function ShownBy(props: {
  kept: Kept;
  photos: readonly Photo[] | null;
  of: 'rotation' | 'threadHand';
  name: 'rotationPhoto' | 'threadPhoto';
  label: string;
}) {
  const { kept, photos, of, name, label } = props;
  const { values } = kept.view;
  const nothingSeen = values[of] === '';
  const hint = nothingSeen
    ? texts.photoFirst
    : photos?.length === 0
      ? texts.photoNone
      : values[name] === ''
        ? texts.photoMissing
        : undefined;
  return (
    <KeptChoice
      kept={kept}
      name={name}
      label={label}
      choices={photoChoices(photos ?? [], values[name])}
      emptyChoice={texts.photoEmpty}
      disabled={nothingSeen}
      {...(hint === undefined ? {} : { hint })}
    />
  );
}

function photoChoices(photos: readonly Photo[], entered: string): Choice<string>[] {
  const choices: Choice<string>[] = photos.map(({ id, caption }, index) => ({
    value: id,
    label: texts.photoChoice(numberText(index + 1), shortened(caption)),
  }));
  const isThere = entered === '' || choices.some(({ value }) => value === entered);
  return isThere ? choices : [...choices, { value: entered, label: texts.photoGone }];
}

const longestInList = 60;
const shortened = (words: string) =>
  words.length <= longestInList ? words : `${words.slice(0, longestInList).trimEnd()}…`;
