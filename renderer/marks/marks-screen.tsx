/** The marks station: one photo large, its marks, and the findings they belong to. */
import { useEffect } from 'react';
import { Link, Redirect, useLocation } from 'wouter';
import type { BenchDesk } from '#analysis/marks/bench-desk.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { useAnswer } from '../api/queries.ts';
import { photoAddress, stationAddress } from '../app/addresses.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { toast } from '../ui/toaster.tsx';
import { benchOfCase, useBench } from './bench-store.ts';
import { lastPhotoOf, noteLastPhoto } from './last-place.ts';
import { MarksBench } from './marks-bench.tsx';
import './marks-screen.css';
import { useForeignDrop } from './use-foreign-drop.ts';

export type MarksScreenProps = {
  teardownCase: TeardownCase;
  pack: KnowledgePack;
  /** Null where the address names none: then the photo last worked on, or the first. */
  photoId: PhotoId | null;
};

export function MarksScreen({ teardownCase, pack, photoId }: MarksScreenProps) {
  const caseId = teardownCase.id;
  const photos = useAnswer('photos.list', { caseId });
  const { desk, error } = useBench(caseId);
  const [, go] = useLocation();
  useForeignDrop(() => go(stationAddress(caseId, 'photos')));

  return (
    <>
      <h1 className="only-read-out">{marksTexts.heading}</h1>
      {photos.error !== null ? (
        <ErrorState error={photos.error} onRetry={() => void photos.refetch()} />
      ) : error !== null ? (
        <ErrorState error={error} onRetry={() => benchOfCase(caseId).retry()} />
      ) : photos.data === undefined || desk === null ? (
        <BusyState />
      ) : (
        <Inside
          {...{ teardownCase, pack, desk, photoId }}
          photos={photos.data}
          photosAreNew={!photos.isFetching}
        />
      )}
    </>
  );
}

type InsideProps = MarksScreenProps & {
  photos: readonly Photo[];
  /** Not just being read again: what is not among them is not in the case. */
  photosAreNew: boolean;
  desk: BenchDesk;
};

function Inside({ photosAreNew, ...props }: InsideProps) {
  const { teardownCase, photos, photoId } = props;
  const caseId = teardownCase.id;
  const first = photos[0];
  const photo = photos.find((known) => known.id === photoId);
  const isGone = photoId !== null && photo === undefined && photosAreNew && first !== undefined;
  const shownId = photo?.id ?? null;

  useEffect(() => {
    if (shownId !== null) noteLastPhoto(caseId, shownId);
  }, [caseId, shownId]);
  useEffect(() => {
    if (isGone) toast(marksTexts.photoGone);
  }, [isGone]);

  if (first === undefined) {
    return (
      <EmptyState
        title={marksTexts.noPhotos}
        actions={
          <Link className="button button-primary" href={stationAddress(caseId, 'photos')}>
            {marksTexts.toPhotos}
          </Link>
        }
      >
        <p>{marksTexts.noPhotosWords}</p>
      </EmptyState>
    );
  }
  if (photoId === null) {
    const last = photos.find((photo) => photo.id === lastPhotoOf(caseId)) ?? first;
    return <Redirect to={photoAddress(caseId, last.id)} replace />;
  }
  if (photo === undefined) {
    return isGone ? <Redirect to={photoAddress(caseId, first.id)} replace /> : <BusyState />;
  }
  return <MarksBench {...props} photo={photo} />;
}
