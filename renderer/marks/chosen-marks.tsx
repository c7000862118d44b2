/** What can be done with the marks that are chosen. */
import { isScale } from '#analysis/marks/notes.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { capitalised } from '#analysis/report/term-labels.ts';
import { Button } from '../ui/button.tsx';
import type { LabelledMark } from './labelled-marks.ts';
import { deedKeys } from './mark-keys.ts';

const texts = marksTexts.chosen;

export type ChosenDeeds = {
  readonly give: () => void;
  readonly rewrite: () => void;
  readonly duplicate: () => void;
  readonly toFront: () => void;
  readonly toBack: () => void;
  readonly hide: () => void;
  readonly remove: () => void;
};

/** A scale without its length has no name beside its kind. */
const titleName = ({ name, mark }: LabelledMark) => (isScale(mark.geometry.kind) ? '' : name);

export function ChosenMarks(props: {
  marks: readonly LabelledMark[];
  readOnly: boolean;
  deeds: ChosenDeeds;
}) {
  const { marks, readOnly, deeds } = props;
  const [one] = marks;
  if (one === undefined) return null;
  const alone = marks.length === 1;
  const title = !alone
    ? texts.several(marks.length)
    : one.reading !== '' && one.label === ''
      ? capitalised(one.name)
      : texts.title(titleName(one), one.mark.geometry.kind);
  return (
    <section className="marks-chosen" aria-label={title}>
      <h2>{title}</h2>
      {readOnly ? null : (
        <>
          {marks.every(({ mark }) => isScale(mark.geometry.kind)) ? null : (
            <Button kind="quiet" shortcut={deedKeys.give} title={texts.giveHint} onClick={deeds.give}>
              {texts.give}
            </Button>
          )}
          {alone && one.mark.geometry.kind === 'text' ? (
            <Button kind="quiet" shortcut="↵" onClick={deeds.rewrite}>
              {texts.rewrite}
            </Button>
          ) : null}
          <Button kind="quiet" aria-keyshortcuts="Control+D" title="Ctrl+D" onClick={deeds.duplicate}>
            {texts.duplicate}
          </Button>
          <Button kind="quiet" shortcut={deedKeys.toFront} onClick={deeds.toFront}>
            {texts.toFront}
          </Button>
          <Button
            kind="quiet"
            aria-keyshortcuts={deedKeys.toBack}
            title={deedKeys.toBack}
            onClick={deeds.toBack}
          >
            {texts.toBack}
          </Button>
        </>
      )}
      <Button kind="quiet" shortcut={deedKeys.hide} title={texts.hideHint} onClick={deeds.hide}>
        {texts.hide}
      </Button>
      {readOnly ? null : (
        <Button
          kind="quiet"
          aria-keyshortcuts="Delete"
          title={marksTexts.keys.caps.remove}
          onClick={deeds.remove}
        >
          {texts.remove}
        </Button>
      )}
    </section>
  );
}
