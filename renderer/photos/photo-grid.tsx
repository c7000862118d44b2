/**
 * The case's photos side by side. Only the rows in sight, and a few beside them, are there at all. The list keeps the
 * focus and names the photo where the keyboard stands, so that nothing is lost when that photo's row goes.
 */
import { defaultRangeExtractor, useVirtualizer, type Range } from '@tanstack/react-virtual';
import {
  useCallback,
  useEffect,
  useMemo,
  useRef,
  type KeyboardEvent,
  type MouseEvent,
  type RefObject,
} from 'react';
import type { PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { pictureAddress } from '../api/client.ts';
import { classNames } from '../ui/class-names.ts';
import { cellId, PhotoCell } from './photo-cell.tsx';
import {
  extendedTo,
  onlyOne,
  reduced,
  steppedTo,
  these,
  toggled,
  walkedTo,
  type PhotoChoice,
} from './photo-choice.ts';
import { moveByKey, moveToPlace, type PhotoMove } from './photo-moves.ts';
import { usePicturesAhead } from './pictures-ahead.ts';
import { gridGap, useGridMeasure, type GridMeasure } from './use-grid-measure.ts';
import { usePhotoDrag } from './use-photo-drag.ts';

/** Rows that are there before they come into sight, their pictures with them. */
const rowsAhead = 2;

type PhotoGridProps = {
  photos: readonly Photo[];
  pack: KnowledgePack;
  choice: PhotoChoice;
  readOnly: boolean;
  onChoice: (choice: PhotoChoice) => void;
  onOpen: (id: PhotoId) => void;
  onMove: (move: PhotoMove) => void;
  onTakeOut: () => void;
};

export function PhotoGrid(props: PhotoGridProps) {
  const { room, least, measure } = useGridMeasure();
  const box = useRef<HTMLDivElement>(null);
  const setBox = useCallback(
    (element: HTMLDivElement | null) => {
      box.current = element;
      room(element);
    },
    [room],
  );
  return (
    <div className="photo-grid-box" ref={setBox}>
      <div className="photo-cell-measure" ref={least} aria-hidden="true" />
      {measure === null ? null : <MeasuredGrid {...props} box={box} measure={measure} />}
    </div>
  );
}

function MeasuredGrid(
  props: PhotoGridProps & { box: RefObject<HTMLDivElement | null>; measure: GridMeasure },
) {
  const { photos, pack, choice, readOnly, onChoice, onOpen, onMove, onTakeOut, box, measure } = props;
  const { columns, cellWidth, cellHeight, pictureHeight } = measure;
  const pitch = { x: cellWidth + gridGap, y: cellHeight + gridGap };
  const order = useMemo(() => photos.map(({ id }) => id), [photos]);
  const list = useRef<HTMLUListElement>(null);
  const activeAt = Math.max(0, choice.active === null ? 0 : order.indexOf(choice.active));
  const active = order[activeAt];
  const activeRow = Math.floor(activeAt / columns);

  // eslint-disable-next-line react-hooks/incompatible-library -- this page is not compiled by that compiler
  const rows = useVirtualizer({
    count: Math.ceil(photos.length / columns),
    getScrollElement: () => box.current,
    estimateSize: () => pitch.y,
    overscan: rowsAhead,
    // Room for the ring round a focused cell at the edges.
    paddingStart: 4,
    paddingEnd: 4,
    scrollPaddingStart: 4,
    scrollPaddingEnd: 4,
    // The row where the keyboard stands is always there: the list names a photo in it.
    rangeExtractor: (range: Range) => withRow(defaultRangeExtractor(range), activeRow),
  });

  useEffect(() => rows.measure(), [rows, pitch.y]);
  // Follows the keyboard, a move and a change of shape, never the wheel.
  useEffect(() => {
    if (choice.active !== null) rows.scrollToIndex(activeRow);
  }, [rows, choice.active, activeRow, columns]);

  const drag = usePhotoDrag({
    enabled: !readOnly,
    box,
    placeAt: ({ x, y }) => {
      const from = list.current?.getBoundingClientRect();
      if (from === undefined) return 0;
      const column = Math.min(columns, Math.max(0, Math.round((x - from.left + gridGap / 2) / pitch.x)));
      const row = Math.max(0, Math.floor((y - from.top) / pitch.y));
      return Math.min(photos.length, row * columns + column);
    },
    onBegin: (id) => {
      if (!choice.chosen.has(id)) onChoice(onlyOne(id));
    },
    onDrop: (place) => {
      const move = moveToPlace(order, choice.chosen, place);
      if (move !== null) onMove(move);
    },
  });

  const onKeyDown = (event: KeyboardEvent<HTMLUListElement>) => {
    if (active === undefined) return;
    if (pressedKey(event, active)) event.preventDefault();
  };

  /** Answers whether the key meant something here. */
  const pressedKey = (event: KeyboardEvent, here: PhotoId): boolean => {
    const { key, altKey, shiftKey } = event;
    const control = event.ctrlKey || event.metaKey;
    if (altKey) {
      const move = readOnly ? null : moveByKey(order, choice.chosen, key, columns);
      if (move !== null) onMove(move);
      // The browser would leave the page at Alt with an arrow.
      return key.startsWith('Arrow') || key === 'Home' || key === 'End';
    }
    if (control && key.toLowerCase() === 'a') onChoice(these(order, here));
    else if (key === 'Enter' && !control) onOpen(here);
    else if (key === ' ') onChoice(shiftKey ? extendedTo(choice, here, order) : toggled(choice, here));
    else if (key === 'Escape') {
      if (drag.place !== null) drag.cancel();
      else onChoice(reduced(choice));
    } else if (key === 'Delete' && !readOnly) onTakeOut();
    else {
      const to = steppedTo(key, activeAt, order.length, measure);
      const id = to === null ? undefined : order[to];
      if (id === undefined) return false;
      if (shiftKey) onChoice(extendedTo({ ...choice, active: here }, id, order));
      else if (control) onChoice(walkedTo(choice, id));
      else onChoice(onlyOne(id));
    }
    return true;
  };

  const clickedPhoto = (event: MouseEvent): PhotoId | undefined => {
    const cell = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-photo]') : null;
    return cell?.dataset.photo as PhotoId | undefined;
  };
  const onClick = (event: MouseEvent) => {
    const id = clickedPhoto(event);
    if (drag.wasDrag() || id === undefined) return;
    if (event.shiftKey) onChoice(extendedTo(choice, id, order));
    else if (event.ctrlKey || event.metaKey) onChoice(toggled(choice, id));
    else onChoice(onlyOne(id));
  };

  const inSight = rows.getVirtualItems();
  const pictures = useMemo(
    () => photos.map(({ derivatives }) => pictureAddress(derivatives.thumbnail)),
    [photos],
  );
  const span = rows.range;
  usePicturesAhead(
    pictures,
    Math.max(0, (span?.startIndex ?? 0) - rowsAhead) * columns,
    ((span?.endIndex ?? 0) + rowsAhead + 1) * columns,
  );
  return (
    <div className="photo-grid-space" style={{ height: rows.getTotalSize() - gridGap }}>
      <ul
        className={classNames('photo-grid', drag.place !== null && 'photo-grid-dragging')}
        role="listbox"
        aria-label={photosTexts.grid}
        aria-multiselectable="true"
        aria-activedescendant={active === undefined ? undefined : cellId(active)}
        tabIndex={0}
        ref={list}
        onKeyDown={onKeyDown}
        onClick={onClick}
        onDoubleClick={(event) => {
          const id = clickedPhoto(event);
          if (id !== undefined) onOpen(id);
        }}
        {...drag.handlers}
      >
        {inSight.flatMap((row) =>
          photos
            .slice(row.index * columns, (row.index + 1) * columns)
            .map((photo, column) => (
              <PhotoCell
                key={photo.id}
                photo={photo}
                pack={pack}
                place={row.index * columns + column}
                of={photos.length}
                chosen={choice.chosen.has(photo.id)}
                active={photo.id === active}
                left={column * pitch.x}
                top={row.start}
                width={cellWidth}
                height={cellHeight}
                pictureHeight={pictureHeight}
              />
            )),
        )}
      </ul>
      {drag.place === null ? null : (
        <InsertionLine place={drag.place} {...{ columns, pitch, cellHeight, count: photos.length }} />
      )}
    </div>
  );
}

/** Between two photos of a row, or after the last of it. */
function InsertionLine(props: {
  place: number;
  columns: number;
  count: number;
  pitch: { x: number; y: number };
  cellHeight: number;
}) {
  const { place, columns, count, pitch, cellHeight } = props;
  const atEnd = place === count && place > 0;
  const of = atEnd ? place - 1 : place;
  const left = ((of % columns) + (atEnd ? 1 : 0)) * pitch.x - gridGap / 2 - 2;
  const top = Math.floor(of / columns) * pitch.y + 4;
  return (
    <div
      className="photo-insertion"
      aria-hidden="true"
      style={{ translate: `${left}px ${top}px`, height: cellHeight }}
    />
  );
}

function withRow(rows: number[], row: number): number[] {
  return rows.includes(row) ? rows : [...rows, row].sort((a, b) => a - b);
}
