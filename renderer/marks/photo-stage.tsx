/** The photo in its well with its line of words below: all that changes while it is zoomed and panned. */
import { boundsOf } from '#analysis/marks/mark-handles.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { deedKeys } from './mark-keys.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { MarksFoot, zoomStep } from './marks-foot.tsx';
import { PhotoWell, type PhotoWellProps } from './photo-well.tsx';
import { useKeys } from './use-keys.ts';
import { usePhotoView } from './use-photo-view.ts';

export function PhotoStage({
  pack,
  saving,
  hiddenWords,
  onShowAll,
  ...well
}: Omit<PhotoWellProps, 'photoView'> & {
  pack: KnowledgePack;
  saving: boolean;
  /** How many marks are out of sight; null where none is. */
  hiddenWords: string | null;
  onShowAll: () => void;
}) {
  const { photo, marks, chosen, onChoose } = well;
  const photoView = usePhotoView(photo.id, photo);
  const larger = () => photoView.zoom(zoomStep);
  const smaller = () => photoView.zoom(1 / zoomStep);

  /** From the mark chosen, or the outermost of several, to the next in drawing order. */
  const chooseNext = (step: 1 | -1) => {
    const places = marks.flatMap(({ mark }, index) => (chosen.has(mark.id) ? [index] : []));
    const from = step === 1 ? (places.at(-1) ?? -1) : (places[0] ?? marks.length);
    const next = marks[(from + step + marks.length) % marks.length]?.mark;
    if (next === undefined) return;
    const { left, top, right, bottom } = boundsOf(next.geometry);
    photoView.show(imagePoint((left + right) / 2, (top + bottom) / 2));
    onChoose([next.id], 'only');
    well.onToWell();
  };

  useKeys({
    '+': larger,
    '=': larger,
    '-': smaller,
    '−': smaller,
    '0': photoView.fit,
    [deedKeys.next]: () => chooseNext(1),
    [deedKeys.previous]: () => chooseNext(-1),
  });
  return (
    <>
      <PhotoWell {...well} photoView={photoView} />
      <MarksFoot
        photo={photo}
        pack={pack}
        saving={saving}
        hint={well.tool === 'select' ? null : marksTexts.toolHints[well.tool]}
        hiddenWords={hiddenWords}
        scale={photoView.view?.scale ?? null}
        onShowAll={onShowAll}
        onZoom={photoView.zoom}
        onFit={photoView.fit}
      />
    </>
  );
}
