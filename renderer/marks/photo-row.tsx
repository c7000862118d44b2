/** The case's photos, to go from one to the next. Only those in sight are in the page, however many there are. */
import { useVirtualizer } from '@tanstack/react-virtual';
import { memo, useCallback, useEffect, useRef, useState, type KeyboardEvent } from 'react';
import { Link } from 'wouter';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import type { Photo } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { pictureAddress } from '../api/client.ts';
import { photoAddress } from '../app/addresses.ts';
import { Kbd } from '../ui/kbd.tsx';
import { numberText } from '../ui/number-words.ts';
import { rangeWith } from '../ui/row-window.ts';
import { PanelHead } from '../ui/side-panel.tsx';

/** A thumbnail is at least this wide, in rem; gap and edge are CSS pixels. */
const leastWidth = 4;
const gap = 4;
const edge = 3;
/** Height over width of a thumbnail. */
const shape = 3 / 4;
const widthBeforeMeasured = 288;

type PhotoRowProps = {
  caseId: CaseId;
  photos: readonly Photo[];
  markCounts: ReadonlyMap<PhotoId, number>;
  shownId: PhotoId | null;
  /** Of one line, while a form stands below it. */
  low: boolean;
};

export const PhotoRow = memo(function PhotoRow({ caseId, photos, markCounts, shownId, low }: PhotoRowProps) {
  const shownAt = photos.findIndex((photo) => photo.id === shownId);
  const scroller = useRef<HTMLDivElement>(null);
  const { columns, height, measure } = useThumbnailGrid();
  /** The thumbnail the keyboard is on, within the row; null where it is not. */
  const [walkedTo, setWalkedTo] = useState<number | null>(null);
  const stop = walkedTo ?? Math.max(0, shownAt);

  // eslint-disable-next-line react-hooks/incompatible-library -- nothing memoised is handed its functions
  const rows = useVirtualizer({
    count: Math.ceil(photos.length / columns),
    getScrollElement: () => scroller.current,
    estimateSize: () => height + gap,
    overscan: 2,
    // The row the keyboard goes to is there before it has scrolled into sight: the next key is meant for it.
    rangeExtractor: rangeWith([Math.floor(stop / columns)]),
  });

  useEffect(() => {
    rows.measure();
    if (shownAt >= 0) rows.scrollToIndex(Math.floor(shownAt / columns));
  }, [rows, shownAt, columns, height, low]);

  const walk = (event: KeyboardEvent<HTMLElement>) => {
    const step = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: columns, ArrowUp: -columns }[event.key];
    const to = event.key === 'Home' ? 0 : event.key === 'End' ? photos.length - 1 : stop + (step ?? NaN);
    if (photos[to] === undefined) return;
    event.preventDefault();
    setWalkedTo(to);
    rows.scrollToIndex(Math.floor(to / columns));
  };

  return (
    <nav className="photo-row" aria-label={marksTexts.photosTitle}>
      <PanelHead
        title={marksTexts.photosTitle}
        note={
          <>
            {marksTexts.photoKeys.map((key) => (
              <Kbd key={key}>{key}</Kbd>
            ))}{' '}
            {shownAt < 0 ? null : marksTexts.photoOf(numberText(shownAt + 1), numberText(photos.length))}
          </>
        }
      />
      <div
        className="photo-row-scroller"
        ref={scroller}
        style={low ? { maxHeight: height + 2 * edge } : undefined}
      >
        <ul
          ref={measure}
          style={{ height: Math.max(0, rows.getTotalSize() - gap) + 2 * edge }}
          onKeyDown={walk}
          onBlur={(event) => {
            if (!event.currentTarget.contains(event.relatedTarget)) setWalkedTo(null);
          }}
        >
          {rows.getVirtualItems().flatMap((row) =>
            photos.slice(row.index * columns, (row.index + 1) * columns).map((photo, column) => {
              const at = row.index * columns + column;
              return (
                <li
                  key={photo.id}
                  aria-setsize={photos.length}
                  aria-posinset={at + 1}
                  style={{
                    top: row.start + edge,
                    height,
                    insetInlineStart: `calc(${edge}px + ${column} * (100% - ${2 * edge - gap}px) / ${columns})`,
                    width: `calc((100% - ${2 * edge - gap}px) / ${columns} - ${gap}px)`,
                  }}
                >
                  <Thumbnail
                    photo={photo}
                    address={photoAddress(caseId, photo.id)}
                    name={marksTexts.photoName(
                      numberText(at + 1),
                      photo.caption,
                      markCounts.get(photo.id) ?? 0,
                    )}
                    shown={photo.id === shownId}
                    isStop={at === stop}
                    walkedTo={at === walkedTo}
                  />
                </li>
              );
            }),
          )}
        </ul>
      </div>
    </nav>
  );
});

function Thumbnail(props: {
  photo: Photo;
  address: string;
  name: string;
  shown: boolean;
  isStop: boolean;
  walkedTo: boolean;
}) {
  const { photo, address, name, shown, isStop, walkedTo } = props;
  const link = useRef<HTMLAnchorElement>(null);
  useEffect(() => {
    if (walkedTo) link.current?.focus({ preventScroll: true });
  }, [walkedTo]);
  return (
    <Link
      ref={link}
      href={address}
      tabIndex={isStop ? 0 : -1}
      aria-current={shown ? 'true' : undefined}
      aria-label={name}
      title={photo.caption}
    >
      <img src={pictureAddress(photo.derivatives.thumbnail)} alt="" />
    </Link>
  );
}

/** How many thumbnails stand side by side, and how high each is. */
function useThumbnailGrid() {
  const [width, setWidth] = useState(widthBeforeMeasured);
  const measure = useCallback((element: HTMLElement | null) => {
    if (element === null) return undefined;
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const rem = parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
  const room = width - 2 * edge;
  const columns = Math.max(1, Math.floor((room + gap) / (leastWidth * rem + gap)));
  return { columns, height: Math.round(((room + gap) / columns - gap) * shape), measure };
}
