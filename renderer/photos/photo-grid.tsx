/** The case's photos side by side: arrow keys walk, Enter or a double click opens one at the marks. */
import { useRef, useState, type KeyboardEvent } from 'react';
import { partLabel } from '#analysis/report/term-labels.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { pictureAddress } from '../api/client.ts';
import { numberText } from '../ui/number-words.ts';

export function PhotoGrid(props: {
  photos: readonly Photo[];
  pack: KnowledgePack;
  chosenId: PhotoId | null;
  onChoose: (id: PhotoId) => void;
  onOpen: (id: PhotoId) => void;
}) {
  const { photos, pack, chosenId, onChoose, onOpen } = props;
  const grid = useRef<HTMLUListElement>(null);
  const [walkedTo, setWalkedTo] = useState<PhotoId | null>(null);
  const known = (id: PhotoId | null) => photos.some((photo) => photo.id === id);
  const stop = known(walkedTo) ? walkedTo : known(chosenId) ? chosenId : (photos[0]?.id ?? null);

  const onKeyDown = (event: KeyboardEvent<HTMLUListElement>) => {
    const at = photos.findIndex((photo) => photo.id === stop);
    const here = photos[at];
    if (here === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    if (event.key === 'Enter') onOpen(here.id);
    else if (event.key === ' ') onChoose(here.id);
    else {
      const to = photos[steppedTo(event.key, at, photos.length, columnsOf(grid.current))];
      if (to === undefined) return;
      setWalkedTo(to.id);
      onChoose(to.id);
      grid.current?.querySelector<HTMLElement>(`[data-photo="${to.id}"]`)?.focus();
    }
    event.preventDefault();
  };

  return (
    <ul className="photo-grid" role="listbox" aria-label={photosTexts.grid} ref={grid} onKeyDown={onKeyDown}>
      {photos.map((photo, index) => (
        <li
          key={photo.id}
          data-photo={photo.id}
          role="option"
          aria-selected={photo.id === chosenId}
          tabIndex={photo.id === stop ? 0 : -1}
          onFocus={() => setWalkedTo(photo.id)}
          onClick={() => onChoose(photo.id)}
          onDoubleClick={() => onOpen(photo.id)}
        >
          <img src={pictureAddress(photo.derivatives.thumbnail)} alt="" loading="lazy" draggable={false} />
          <span className="only-read-out">{photosTexts.photo(numberText(index + 1))}</span>
          <span
            className={photo.caption === '' ? 'photo-cell-caption photo-cell-missing' : 'photo-cell-caption'}
          >
            {photo.caption === '' ? photosTexts.noCaption : photo.caption}
          </span>
          <span className="photo-cell-facts">
            {[
              photo.parts.length === 0
                ? photosTexts.noPart
                : photo.parts.map((part) => partLabel(pack, part)).join(', '),
              photo.stage === null ? photosTexts.noStage : photosTexts.stages[photo.stage],
            ].join(' · ')}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** How many photos stand side by side now. */
function columnsOf(grid: HTMLElement | null): number {
  const cells = grid === null ? [] : [...grid.children];
  const first = cells[0]?.getBoundingClientRect().top;
  const inFirstRow = cells.findIndex((cell) => cell.getBoundingClientRect().top !== first);
  return inFirstRow === -1 ? Math.max(1, cells.length) : inFirstRow;
}

function steppedTo(key: string, at: number, count: number, columns: number): number {
  switch (key) {
    case 'ArrowLeft':
      return at - 1;
    case 'ArrowRight':
      return at + 1;
    case 'ArrowUp':
      return at - columns;
    case 'ArrowDown':
      return at + columns < count ? at + columns : at;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return -1;
  }
}
