import type { PhotoId } from '#shared-types/ids.ts';
import type { Photo } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { Button } from '../ui/button.tsx';
import { numberText } from '../ui/number-words.ts';

const kinds = ['part', 'stage', 'caption'] as const;

const lacks: Record<(typeof kinds)[number], (photo: Photo) => boolean> = {
  part: ({ parts }) => parts.length === 0,
  stage: ({ stage }) => stage === null,
  caption: ({ caption }) => caption === '',
};

/** How many photos nothing was said of yet, in three respects; each count chooses those photos. */
export function StillMissing(props: {
  photos: readonly Photo[];
  onChoose: (ids: readonly PhotoId[]) => void;
}) {
  const { photos, onChoose } = props;
  return (
    <div className="photos-missing" role="group" aria-label={photosTexts.missing.label}>
      {kinds.map((kind) => {
        const ids = photos.filter(lacks[kind]).map(({ id }) => id);
        return (
          <Button key={kind} kind="quiet" disabled={ids.length === 0} onClick={() => onChoose(ids)}>
            {photosTexts.missing[kind]} <b>{numberText(ids.length)}</b>
          </Button>
        );
      })}
    </div>
  );
}
