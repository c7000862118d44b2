/** A mark as a small picture: the piece of the photo round it, with the mark drawn over it. */
import { memo, useEffect, useMemo, useRef, useState, type RefObject } from 'react';
import { Link } from 'wouter';
import { markCrop } from '#analysis/findings/mark-crop.ts';
import { boundsOf } from '#analysis/marks/mark-handles.ts';
import { markToDrawing } from '#analysis/marks/mark-to-drawing.ts';
import type { CaseId } from '#shared-types/ids.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { pictureAddress } from '../api/client.ts';
import { photoAddress } from '../app/addresses.ts';
import { noteMarkToShow } from '../marks/last-place.ts';
import { classNames } from '../ui/class-names.ts';
import { DrawnPart } from '../ui/drawn-part.tsx';
import { numberText } from '../ui/number-words.ts';
import type { FindingMark } from './finding-rows.ts';

/** Width / height of every such picture. */
const proportion = 4 / 3;
/** As findings-screen.css has them, in CSS pixels at a text size of 100 %. */
const widths = { small: 48, large: 132 } as const;
/** Screens have up to this many pixels per CSS pixel; text may be twice as large as usual. */
const density = 2;
/** Long side of a thumbnail at most. */
const thumbnailSide = 400;

type MarkPictureProps = {
  caseId: CaseId;
  mark: FindingMark;
  /** What it is a mark of, in words. */
  damage: string;
  size: keyof typeof widths;
};

/** Leads to the mark on its photo. */
export const MarkPicture = memo(function MarkPicture({ caseId, mark, damage, size }: MarkPictureProps) {
  const { photo, label } = mark;
  return (
    <Link
      className={classNames('mark-picture', `mark-picture-${size}`)}
      href={photoAddress(caseId, photo.id)}
      title={findingsTexts.toMark(label)}
      onClick={(event) => {
        // The row would choose its finding and stay here.
        event.stopPropagation();
        noteMarkToShow(caseId, mark.id);
      }}
    >
      <Cropped mark={mark} damage={damage} size={size} />
      {size === 'large' ? <span aria-hidden="true">{label}</span> : null}
    </Link>
  );
});

function Cropped({ mark, damage, size }: Pick<MarkPictureProps, 'mark' | 'damage' | 'size'>) {
  const { photo, geometry, damageClass, label } = mark;
  const frame = useRef<SVGSVGElement>(null);
  const seen = useSeen(frame);
  const crop = useMemo(() => markCrop(boundsOf(geometry), photo, proportion), [geometry, photo]);
  const drawing = useMemo(
    () => markToDrawing(geometry, { class: damageClass, label: '', unit: crop.width / widths[size] }),
    [geometry, damageClass, crop, size],
  );
  const thumbnailScale = Math.min(1, thumbnailSide / Math.max(photo.width, photo.height));
  const enough = crop.width * thumbnailScale >= widths[size] * density;
  const { thumbnail, display } = photo.derivatives;
  return (
    <svg
      ref={frame}
      role="img"
      aria-label={findingsTexts.markPicture(label, damage, numberText(mark.photoNumber))}
      viewBox={`${crop.x} ${crop.y} ${crop.width} ${crop.height}`}
      preserveAspectRatio="xMidYMid slice"
    >
      {seen ? (
        <image
          href={pictureAddress(enough ? thumbnail : display)}
          width={photo.width}
          height={photo.height}
          preserveAspectRatio="none"
        />
      ) : null}
      <DrawnPart drawing={drawing} />
    </svg>
  );
}

/** Whether it was ever in sight, or nearly: pictures are fetched then and not before. */
function useSeen(element: RefObject<Element | null>): boolean {
  const [seen, setSeen] = useState(false);
  useEffect(() => {
    if (seen || element.current === null) return;
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some((entry) => entry.isIntersecting)) setSeen(true);
      },
      { rootMargin: '200px' },
    );
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [seen, element]);
  return seen;
}
