/** The case's photos, to go from one to the next. */
import { memo, useEffect, useRef } from 'react';
import { Link } from 'wouter';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import type { Photo } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { pictureAddress } from '../api/client.ts';
import { photoAddress } from '../app/addresses.ts';
import { Kbd } from '../ui/kbd.tsx';
import { numberText } from '../ui/number-words.ts';
import { PanelHead } from '../ui/side-panel.tsx';

export const PhotoRow = memo(function PhotoRow(props: {
  caseId: CaseId;
  photos: readonly Photo[];
  markCounts: ReadonlyMap<PhotoId, number>;
  shownId: PhotoId | null;
}) {
  const { caseId, photos, markCounts, shownId } = props;
  const number = photos.findIndex((photo) => photo.id === shownId) + 1;
  const row = useRef<HTMLUListElement>(null);

  useEffect(() => {
    row.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest' });
  }, [shownId]);

  return (
    <nav className="photo-row" aria-label={marksTexts.photosTitle}>
      <PanelHead
        title={marksTexts.photosTitle}
        note={
          <>
            {marksTexts.photoKeys.map((key) => (
              <Kbd key={key}>{key}</Kbd>
            ))}{' '}
            {number === 0 ? null : marksTexts.photoOf(numberText(number), numberText(photos.length))}
          </>
        }
      />
      <ul ref={row}>
        {photos.map((photo, index) => (
          <li key={photo.id}>
            <Link
              href={photoAddress(caseId, photo.id)}
              aria-current={photo.id === shownId ? 'true' : undefined}
              aria-label={marksTexts.photoName(
                numberText(index + 1),
                photo.caption,
                markCounts.get(photo.id) ?? 0,
              )}
              title={photo.caption}
            >
              <img src={pictureAddress(photo.derivatives.thumbnail)} alt="" loading="lazy" />
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
});
