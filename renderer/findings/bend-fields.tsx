/** Which way blades are bent and from where that was seen, held at once against the way the rotor turns. */
import { useId, useState, type KeyboardEvent } from 'react';
import { Link } from 'wouter';
import { bendAgainstRotation } from '#analysis/rotation/bend-against-rotation.ts';
import { senseFrom } from '#analysis/rotation/turning.ts';
import { kindLabel, sideLabel } from '#analysis/report/term-labels.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { turningSenses, type SeenTurning, type TurningSense } from '#shared-types/rotation.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import { stationAddress } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';
import { Select } from '../ui/select.tsx';
import { StatusWord } from '../ui/status-word.tsx';

const texts = findingsTexts.bend;

/** What is chosen of a bend while it is not whole yet. */
type Half = { readonly sense: TurningSense | null; readonly seenFrom: string | null };

type BendFieldsProps = {
  teardownCase: TeardownCase;
  pack: KnowledgePack;
  kind: string;
  bend: SeenTurning | null;
  /** The side that the photo of the finding's first mark was taken from. */
  sideOfPhoto: string | null;
  onBend: (bend: SeenTurning | null) => void;
};

export function BendFields(props: BendFieldsProps) {
  const { pack, bend, sideOfPhoto, onBend } = props;
  const name = useId();
  const [half, setHalf] = useState<Half | null>(null);
  const shown: Half = half ?? bend ?? { sense: null, seenFrom: null };

  const choose = (change: Partial<Half>) => {
    const { sense, seenFrom } = { ...shown, ...change };
    if (sense !== null && seenFrom !== null) {
      setHalf(null);
      onBend({ sense, seenFrom });
    } else {
      setHalf({ sense, seenFrom });
      if (sense === null && bend !== null) onBend(null);
    }
  };

  const byLetter = (event: KeyboardEvent<HTMLFieldSetElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target instanceof HTMLSelectElement) return;
    const pressed = event.key.toUpperCase();
    const sense = turningSenses.find((each) => texts.senseKeys[each] === pressed);
    if (sense !== undefined) choose({ sense });
    else if (pressed === texts.notToldKey) choose({ sense: null });
    else if (pressed === texts.ofPhotoKey && sideOfPhoto !== null) choose({ seenFrom: sideOfPhoto });
    else return;
    event.preventDefault();
  };

  return (
    <fieldset className="bend-fields" onKeyDown={byLetter}>
      <legend className="field-label">{texts.legend}</legend>
      <div className="class-choice-row">
        {turningSenses.map((sense) => (
          <label key={sense} className="class-choice-one">
            <input
              type="radio"
              name={name}
              value={sense}
              checked={shown.sense === sense}
              aria-keyshortcuts={texts.senseKeys[sense]}
              onChange={() => choose({ sense })}
            />
            {texts.senses[sense]}
          </label>
        ))}
        <label className="class-choice-one">
          <input
            type="radio"
            name={name}
            value=""
            checked={shown.sense === null}
            aria-keyshortcuts={texts.notToldKey}
            onChange={() => choose({ sense: null })}
          />
          {texts.notTold}
        </label>
      </div>
      <p className="field-hint">{texts.hint}</p>
      <Select
        label={texts.seenFrom}
        value={shown.seenFrom ?? ''}
        choices={pack.sides.map(({ id, label }) => ({ value: id, label }))}
        emptyChoice={texts.chooseSide}
        error={shown.sense !== null && shown.seenFrom === null ? texts.needsSide : undefined}
        onValue={(side) => choose({ seenFrom: side === '' ? null : side })}
      />
      {sideOfPhoto === null || sideOfPhoto === shown.seenFrom ? null : (
        <Button
          className="bend-of-photo"
          shortcut={texts.ofPhotoKey}
          onClick={() => choose({ seenFrom: sideOfPhoto })}
        >
          {texts.ofPhoto(sideLabel(pack, sideOfPhoto))}
        </Button>
      )}
      {bend === null ? null : <BendReadingWords {...props} bend={bend} />}
    </fieldset>
  );
}

function BendReadingWords(props: BendFieldsProps & { bend: SeenTurning }) {
  const { teardownCase, pack, kind, bend } = props;
  const { rotation } = teardownCase.unit;
  const reading = bendAgainstRotation(pack, rotation, bend);
  const turns = rotation === null ? null : senseFrom(pack, rotation, bend.seenFrom);
  const saysItself = pack.kinds.find((known) => known.id === kind)?.bendIs;
  if (reading.reads === 'not-decided') {
    const canEnter = reading.because === 'no-rotation' || reading.because === 'rotation-side';
    return (
      <div className="bend-reading" role="status">
        <p>{texts.undecided[reading.because]}</p>
        {canEnter ? (
          <Link href={stationAddress(teardownCase.id, 'claim')}>
            {reading.because === 'no-rotation' ? texts.toRotation : texts.toRotationAgain}
          </Link>
        ) : null}
      </div>
    );
  }
  return (
    <div className="bend-reading" role="status">
      <p>
        <StatusWord tone={reading.reads === 'with' ? 'warn' : 'neutral'}>
          {texts.reads[reading.reads]}
        </StatusWord>
      </p>
      {saysItself === undefined || saysItself === reading.reads ? null : (
        <p className="field-error">{texts.kindDisagrees(kindLabel(pack, kind))}</p>
      )}
      <p className="secondary-words">
        {turns === null ? null : `${texts.turns(reportTexts.senses[turns], sideLabel(pack, bend.seenFrom))} `}
        {texts.practice}
      </p>
    </div>
  );
}
