/** What the photo is, and how large it is shown. */
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { partLabel, sideLabel } from '#analysis/report/term-labels.ts';
import type { Photo } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { Button } from '../ui/button.tsx';
import { numberText } from '../ui/number-words.ts';

export const zoomStep = 1.25;

export function MarksFoot(props: {
  photo: Photo;
  pack: KnowledgePack;
  saving: boolean;
  /** How the tool in hand is used; null where none draws. */
  hint: string | null;
  /** How many marks are out of sight; null where none is. */
  hiddenWords: string | null;
  /** CSS pixels per image pixel. */
  scale: number | null;
  onShowAll: () => void;
  onZoom: (factor: number) => void;
  onFit: () => void;
}) {
  const { photo, pack, saving, hint, hiddenWords, scale, onShowAll, onZoom, onFit } = props;
  const percent = scale === null ? null : numberText(scale * 100);
  return (
    <div className="marks-foot">
      <span className="marks-foot-words">{hint ?? photoWords(photo, pack)}</span>
      {saving ? <span className="marks-foot-saving">{marksTexts.saving}</span> : null}
      {hiddenWords === null ? null : (
        <span className="marks-foot-hidden" title={marksTexts.hiddenHint}>
          {hiddenWords}
          <Button kind="quiet" title={marksTexts.hiddenHint} onClick={onShowAll}>
            {marksTexts.showAll}
          </Button>
        </span>
      )}
      <span className="marks-foot-zoom">
        <Button
          kind="quiet"
          aria-label={marksTexts.zoomOut}
          title={marksTexts.zoomOut}
          aria-keyshortcuts="-"
          onClick={() => onZoom(1 / zoomStep)}
        >
          −
        </Button>
        <span className="marks-foot-percent">
          {percent === null ? null : (
            <>
              <span aria-hidden="true">{marksTexts.zoom(percent)}</span>
              <span className="only-read-out">{marksTexts.zoomLabel(percent)}</span>
            </>
          )}
        </span>
        <Button
          kind="quiet"
          aria-label={marksTexts.zoomIn}
          title={marksTexts.zoomIn}
          aria-keyshortcuts="+"
          onClick={() => onZoom(zoomStep)}
        >
          +
        </Button>
        <Button kind="quiet" title={marksTexts.fitHint} shortcut="0" onClick={onFit}>
          {marksTexts.fit}
        </Button>
      </span>
    </div>
  );
}

/** Caption, parts, side and stage in a line; what is not entered is said to be missing. */
function photoWords(photo: Photo, pack: KnowledgePack): string {
  return [
    photo.caption === '' ? marksTexts.noCaption : photo.caption,
    photo.parts.length === 0
      ? marksTexts.noPart
      : photo.parts.map((part) => partLabel(pack, part)).join(', '),
    ...(photo.seenFrom === null ? [] : [marksTexts.seenFrom(sideLabel(pack, photo.seenFrom))]),
    photo.stage === null ? marksTexts.noStage : marksTexts.stages[photo.stage],
  ].join(' · ');
}
