/** The photos station: bring photos in, and say of each what it shows. */
import { useRef, useState, type DragEvent } from 'react';
import { useLocation } from 'wouter';
import type { TeardownCase } from '#shared-types/case.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { jobIsUnderWay, useJobsOf } from '../api/job-store.ts';
import { useAnswer, useSend } from '../api/queries.ts';
import { photoAddress } from '../app/addresses.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { classNames } from '../ui/class-names.ts';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { JobProgress, Progress } from '../ui/progress.tsx';
import { SidePanel } from '../ui/side-panel.tsx';
import { toast, toastError } from '../ui/toaster.tsx';
import { droppedFiles, sorted } from './dropped-files.ts';
import { forgetResults, handOver, stopHandingOver, useHandingOver } from './handing-over.ts';
import { ImportResults } from './import-results.tsx';
import { PhotoGrid } from './photo-grid.tsx';
import { PhotoPanel } from './photo-panel.tsx';
import './photos-screen.css';

type PhotosScreenProps = { teardownCase: TeardownCase; pack: KnowledgePack };

export function PhotosScreen({ teardownCase, pack }: PhotosScreenProps) {
  const caseId = teardownCase.id;
  const readOnly = teardownCase.status !== 'open';
  const answer = useAnswer('photos.list', { caseId });
  const [, go] = useLocation();
  const [chosenId, setChosenId] = useState<PhotoId | null>(null);
  const [dragging, setDragging] = useState(false);
  const photos = answer.data ?? [];
  const chosen = photos.findIndex((photo) => photo.id === chosenId);
  const photo = photos[chosen];

  const bringIn = (files: readonly File[]) => {
    if (files.length === 0) toast(photosTexts.nothingDropped);
    else void handOver(caseId, files);
  };
  const onDrop = (event: DragEvent<HTMLElement>) => {
    event.preventDefault();
    setDragging(false);
    droppedFiles(event.dataTransfer).then(bringIn, toastError);
  };

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
      <div className="photos-list">
        <div className="screen-head">
          <h1>{photosTexts.heading}</h1>
          <span className="secondary-words">
            {photos.length === 0 ? null : photosTexts.count(numberText(photos.length), photos.length === 1)}
          </span>
          {readOnly ? null : <ChooseButtons onFiles={bringIn} />}
        </div>
        <ImportState teardownCase={teardownCase} />
        {answer.error !== null ? (
          <ErrorState error={answer.error} onRetry={() => void answer.refetch()} />
        ) : answer.data === undefined ? (
          <BusyState />
        ) : photos.length === 0 ? (
          <div className="photos-empty">
            <EmptyState title={photosTexts.emptyTitle}>
              <p>{photosTexts.emptyWords}</p>
            </EmptyState>
          </div>
        ) : (
          <>
            <PhotoGrid
              photos={photos}
              pack={pack}
              chosenId={photo?.id ?? null}
              onChoose={setChosenId}
              onOpen={(id) => go(photoAddress(caseId, id))}
            />
            {readOnly ? null : (
              <p className="photos-drop-words">
                {photosTexts.dropHere}. {photosTexts.dropWords}
              </p>
            )}
          </>
        )}
      </div>
      {photos.length === 0 ? null : photo === undefined ? (
        <SidePanel title={photosTexts.nothingChosen}>
          <p className="secondary-words">{photosTexts.nothingChosenWords}</p>
        </SidePanel>
      ) : (
        <PhotoPanel
          key={photo.id}
          caseId={caseId}
          pack={pack}
          photo={photo}
          number={chosen + 1}
          of={photos.length}
          readOnly={readOnly}
        />
      )}
      {dragging ? (
        <p className="photos-drop-veil" role="status">
          {photosTexts.dropNow}
        </p>
      ) : null}
    </div>
  );
}

function ChooseButtons({ onFiles }: { onFiles: (files: readonly File[]) => void }) {
  const files = useRef<HTMLInputElement>(null);
  const folder = useRef<HTMLInputElement>(null);
  const taken = (input: HTMLInputElement) => {
    onFiles(sorted([...(input.files ?? [])]));
    input.value = '';
  };
  return (
    <div className="screen-head-actions">
      <input
        ref={files}
        type="file"
        multiple
        hidden
        aria-label={photosTexts.choose}
        data-choose="files"
        onChange={(event) => taken(event.currentTarget)}
      />
      <input
        ref={(input) => {
          folder.current = input;
          if (input !== null) input.webkitdirectory = true;
        }}
        type="file"
        hidden
        aria-label={photosTexts.chooseFolder}
        data-choose="folder"
        onChange={(event) => taken(event.currentTarget)}
      />
      <Button onClick={() => folder.current?.click()}>{photosTexts.chooseFolder}</Button>
      <Button kind="primary" onClick={() => files.current?.click()}>
        {photosTexts.choose}
      </Button>
    </div>
  );
}

/** Files on their way, the import under way, or what came of the last one. */
function ImportState({ teardownCase }: { teardownCase: TeardownCase }) {
  const caseId = teardownCase.id;
  const handing = useHandingOver(caseId);
  const jobs = useJobsOf(caseId, 'photo-import');
  const stop = useSend('jobs.stop');
  const job = jobs.find(jobIsUnderWay);
  const ended = jobs.filter((known) => handing.jobIds.includes(known.id)).reverse();

  if (handing.underWay) {
    return (
      <div className="import-state">
        <Progress
          label={photosTexts.handingOver}
          done={handing.done}
          total={handing.total}
          rate={null}
          stopping={handing.stopping}
          onStop={() => stopHandingOver(caseId)}
        />
      </div>
    );
  }
  if (job !== undefined) {
    return (
      <div className="import-state">
        <JobProgress
          job={job}
          stopping={stop.isPending}
          onStop={() => stop.mutate({ jobId: job.id }, { onError: toastError })}
        />
      </div>
    );
  }
  if (ended.length === 0 && handing.refused.length === 0) return null;
  return <ImportResults jobs={ended} refused={handing.refused} onClose={() => forgetResults(caseId)} />;
}
