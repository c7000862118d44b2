import { memo, type CSSProperties } from 'react';
import { partLabel } from '#analysis/report/term-labels.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { pictureAddress } from '../api/client.ts';
import { classNames } from '../ui/class-names.ts';
import { numberText } from '../ui/number-words.ts';

export function cellId(id: PhotoId): string {
  return `photo-${id}`;
}

/** One photo in the grid: few elements, for there are many of them. Its number is drawn by the style sheet. */
export const PhotoCell = memo(function PhotoCell(props: {
  photo: Photo;
  pack: KnowledgePack;
  place: number;
  of: number;
  chosen: boolean;
  active: boolean;
  left: number;
  top: number;
  width: number;
  height: number;
  pictureHeight: number;
}) {
  const { photo, pack, place, of, chosen, active, left, top, width, height, pictureHeight } = props;
  const number = numberText(place + 1);
  const caption = photo.caption === '' ? photosTexts.noCaption : photo.caption;
  const facts = factsOf(pack, photo);
  return (
    <li
      id={cellId(photo.id)}
      data-photo={photo.id}
      data-number={number}
      role="option"
      aria-selected={chosen}
      aria-setsize={of}
      aria-posinset={place + 1}
      aria-label={photosTexts.cell(number, caption, facts)}
      className={classNames('photo-cell', active && 'photo-cell-active')}
      style={{ translate: `${left}px ${top}px`, width, height }}
    >
      <img
        src={pictureAddress(photo.derivatives.thumbnail)}
        alt=""
        draggable={false}
        style={pictureStyle(photo, width - 2, pictureHeight)}
      />
      <span className={classNames('photo-cell-caption', photo.caption === '' && 'photo-cell-missing')}>
        {`${caption} `}
      </span>
      <span className="photo-cell-facts">{facts}</span>
    </li>
  );
});

function factsOf(pack: KnowledgePack, { parts, stage, declaredSynthetic }: Photo): string {
  return [
    ...(declaredSynthetic === null ? [] : [photosTexts.synthetic.short]),
    parts.length === 0 ? photosTexts.noPart : parts.map((part) => partLabel(pack, part)).join(', '),
    stage === null ? photosTexts.noStage : photosTexts.stages[stage],
  ].join(' · ');
}

/** In its own proportions within the room for it, so that the ground is there before the picture is. */
function pictureStyle({ width, height }: Photo, roomWidth: number, roomHeight: number): CSSProperties {
  const scale = Math.min(roomWidth / width, roomHeight / height);
  const [shownWidth, shownHeight] = [Math.max(1, width * scale), Math.max(1, height * scale)];
  return {
    width: shownWidth,
    height: shownHeight,
    marginInline: (roomWidth - shownWidth) / 2,
    marginBlock: (roomHeight - shownHeight) / 2,
  };
}
