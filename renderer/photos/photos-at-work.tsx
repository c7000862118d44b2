/** The grid with what can be done to the photos chosen in it, and the panel about them. */
import { useMemo, useState, type ReactNode } from 'react';
import { useLocation } from 'wouter';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { photoAddress } from '../app/addresses.ts';
import { useKeptDraft } from '../claim/kept-draft.ts';
import { Button } from '../ui/button.tsx';
import { numberText } from '../ui/number-words.ts';
import { SidePanel } from '../ui/side-panel.tsx';
import { toast } from '../ui/toaster.tsx';
import { neighbourOf, nothingChosen, these, within, type PhotoChoice } from './photo-choice.ts';
import { NotApplied } from './not-applied.tsx';
import { PhotoGrid } from './photo-grid.tsx';
import { afterMove, type PhotoMove } from './photo-moves.ts';
import { movePhotos, sendWaiting } from './photo-order.ts';
import { PhotoPanel } from './photo-panel.tsx';
import { PhotosPanel } from './photos-panel.tsx';
import {
  byTimeTaken,
  goesAlong,
  nothingTogether,
  saysNothing,
  stillApplicable,
  type Unapplied,
} from './said-together.ts';
import { StillMissing } from './still-missing.tsx';
import { SyntheticNotice } from './synthetic-notice.tsx';
import { TakeOutDialog } from './take-out-dialog.tsx';

export function PhotosAtWork(props: {
  caseId: CaseId;
  pack: KnowledgePack;
  photos: readonly Photo[];
  readOnly: boolean;
  /** Stands above the grid. */
  head: ReactNode;
}) {
  const { caseId, pack, photos, readOnly, head } = props;
  const [, go] = useLocation();
  const [kept, keepUnapplied] = useKeptDraft<Unapplied>(`photos-together ${caseId}`, null);
  const [made, setMade] = useState<PhotoChoice>(() =>
    kept === null || readOnly ? nothingChosen : these(kept.photoIds),
  );
  const [goingOut, setGoingOut] = useState<readonly PhotoId[] | null>(null);
  const [said, setSaid] = useState('');
  const order = useMemo(() => photos.map(({ id }) => id), [photos]);
  const choice = useMemo(() => within(made, order), [made, order]);
  const unapplied = readOnly ? null : stillApplicable(kept, order);
  const alongWith = goesAlong(unapplied, [...choice.chosen]);
  const setChoice = (next: PhotoChoice) => {
    const photoIds = [...next.chosen];
    keepUnapplied((now) => (now !== null && goesAlong(now, photoIds) ? { ...now, photoIds } : now));
    setMade(next);
  };
  const chosen = useMemo(() => photos.filter(({ id }) => choice.chosen.has(id)), [photos, choice]);

  const move = (asked: PhotoMove) => {
    movePhotos(caseId, asked);
    const place = afterMove(order, asked).indexOf(asked.photoIds[0] ?? ('' as PhotoId));
    const count = asked.photoIds.length;
    setSaid(
      photosTexts.moved(numberText(count), count === 1, numberText(place + 1), numberText(photos.length)),
    );
  };
  const choose = (ids: readonly PhotoId[]) => {
    setChoice(these(ids));
    setSaid(photosTexts.chosen(numberText(ids.length), ids.length === 1));
  };
  const putInOrderOfTime = () => {
    const inOrder = byTimeTaken(photos).map(({ id }) => id);
    const timeless = photos.filter(({ takenAt }) => takenAt === null).length;
    const words = photosTexts.byTime;
    const about = timeless === 0 ? '' : ` ${words.timeless(numberText(timeless), timeless === 1)}`;
    if (inOrder.every((id, place) => id === order[place])) {
      toast(`${words.already}${about}`);
      return;
    }
    movePhotos(caseId, { photoIds: inOrder, before: null });
    sendWaiting(caseId);
    toast(`${words.done}${about}`);
  };
  const takeOut = () => {
    if (chosen.length > 0) setGoingOut(chosen.map(({ id }) => id));
  };

  const [photo] = chosen;
  const waiting =
    unapplied === null || alongWith ? null : (
      <NotApplied
        caseId={caseId}
        pack={pack}
        unapplied={unapplied}
        onChoose={() => setMade(these(unapplied.photoIds))}
        onSettled={() => keepUnapplied(() => null)}
      />
    );
  return (
    <>
      <div className="photos-list">
        {head}
        <SyntheticNotice photos={photos} onChoose={choose} />
        <div className="photos-tools">
          <StillMissing photos={photos} onChoose={choose} />
          {readOnly || photos.length < 2 ? null : (
            <Button kind="quiet" onClick={putInOrderOfTime}>
              {photosTexts.byTime.do}
            </Button>
          )}
        </div>
        <PhotoGrid
          {...{ photos, pack, choice, readOnly }}
          onChoice={setChoice}
          onOpen={(id) => go(photoAddress(caseId, id))}
          onMove={move}
          onTakeOut={takeOut}
        />
        <p className="photos-drop-words">{readOnly ? photosTexts.keysReading : photosTexts.keys}</p>
        <p className="only-read-out" role="status">
          {said}
        </p>
      </div>
      {photo === undefined ? (
        <SidePanel title={photosTexts.nothingChosen}>
          {waiting}
          <p className="secondary-words">{photosTexts.nothingChosenWords}</p>
        </SidePanel>
      ) : chosen.length > 1 ? (
        <PhotosPanel
          {...{ caseId, pack, readOnly, waiting }}
          photos={chosen}
          draft={alongWith && unapplied !== null ? unapplied.draft : nothingTogether}
          onDraft={(draft) =>
            keepUnapplied(() => (saysNothing(draft) ? null : { photoIds: chosen.map(({ id }) => id), draft }))
          }
          onTakeOut={takeOut}
        />
      ) : (
        <PhotoPanel
          key={photo.id}
          {...{ caseId, pack, photo, readOnly, waiting }}
          number={photos.indexOf(photo) + 1}
          of={photos.length}
          onTakeOut={takeOut}
        />
      )}
      {goingOut === null ? null : (
        <TakeOutDialog
          caseId={caseId}
          going={photos.flatMap((one, at) =>
            goingOut.includes(one.id) ? [{ photo: one, number: at + 1 }] : [],
          )}
          onClose={() => setGoingOut(null)}
          onTakenOut={() => {
            const next = neighbourOf(new Set(goingOut), order);
            setChoice(next === null ? nothingChosen : { ...nothingChosen, active: next });
            setGoingOut(null);
          }}
        />
      )}
    </>
  );
}
