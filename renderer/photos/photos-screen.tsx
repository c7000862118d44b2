/** The photos station: bring photos in, put them in order, and say of each what it shows. */
import { useState, type DragEvent } from 'react';
import type { TeardownCase } from '#shared-types/case.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { useAnswer } from '../api/queries.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { classNames } from '../ui/class-names.ts';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { toast, toastError } from '../ui/toaster.tsx';
import { ChooseButtons } from './choose-buttons.tsx';
import { droppedFiles } from './dropped-files.ts';
import { handOver } from './handing-over.ts';
import { ImportState } from './import-state.tsx';
import { PhotosAtWork } from './photos-at-work.tsx';
import { useShownOrder } from './photo-order.ts';
import { RegisterView } from './register-view.tsx';
import './photos-screen.css';
import './photos-register.css';

type PhotosScreenProps = { teardownCase: TeardownCase; pack: KnowledgePack };

const views = ['grid', 'register'] as const;

export function PhotosScreen({ teardownCase, pack }: PhotosScreenProps) {
  const caseId = teardownCase.id;
  const readOnly = teardownCase.status !== 'open';
  const answer = useAnswer('photos.list', { caseId });
  const [view, setView] = useState<(typeof views)[number]>('grid');
  const [dragging, setDragging] = useState(false);
  const photos = useShownOrder(caseId, answer.data ?? noPhotos);

  const bringIn = (files: readonly File[]) => {
    if (files.length === 0) toast(photosTexts.nothingDropped);
    else void handOver(caseId, files);
  };
  const onDrop = (event: DragEvent<HTMLElement>) => {
    event.preventDefault();
    setDragging(false);
    droppedFiles(event.dataTransfer).then(bringIn, toastError);
  };

  const head = (
    <>
      <div className="screen-head">
        <h1>{photosTexts.heading}</h1>
        <span className="secondary-words">
          {photos.length === 0 ? null : photosTexts.count(numberText(photos.length), photos.length === 1)}
        </span>
        <div className="photos-views" role="group" aria-label={photosTexts.views.label}>
          {views.map((each) => (
            <Button key={each} pressed={view === each} onClick={() => setView(each)}>
              {photosTexts.views[each]}
            </Button>
          ))}
        </div>
        {readOnly ? null : <ChooseButtons onFiles={bringIn} />}
      </div>
      <ImportState caseId={caseId} photos={photos} />
    </>
  );

  return (
    <div
      className={classNames('photos-screen', dragging && 'photos-screen-dragging')}
      {...(readOnly
        ? {}
        : {
            onDragOver: (event: DragEvent<HTMLElement>) => {
              if (!event.dataTransfer.types.includes('Files')) return;
              event.preventDefault();
              event.dataTransfer.dropEffect = 'copy';
              setDragging(true);
            },
            onDragLeave: (event: DragEvent<HTMLElement>) => {
              const into = event.relatedTarget;
              if (!(into instanceof Node) || !event.currentTarget.contains(into)) setDragging(false);
            },
            onDrop,
          })}
    >
      {view === 'register' ? (
        <div className="photos-list">
          {head}
          <RegisterView {...{ caseId, photos, readOnly }} />
        </div>
      ) : photos.length === 0 ? (
        <div className="photos-list">
          {head}
          {answer.error !== null ? (
            <ErrorState error={answer.error} onRetry={() => void answer.refetch()} />
          ) : answer.data === undefined ? (
            <BusyState />
          ) : (
            <div className="photos-empty">
              <EmptyState title={photosTexts.emptyTitle}>
                <p>{photosTexts.emptyWords}</p>
              </EmptyState>
            </div>
          )}
        </div>
      ) : (
        <PhotosAtWork {...{ caseId, pack, photos, readOnly, head }} />
      )}
      {dragging ? (
        <p className="photos-drop-veil" role="status">
          {photosTexts.dropNow}
        </p>
      ) : null}
    </div>
  );
}

const noPhotos: never[] = [];
