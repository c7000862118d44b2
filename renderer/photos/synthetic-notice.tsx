/** Warns of photos whose files say that no camera took them; the sample cases are made of such and need no warning. */
import type { PhotoId } from '#shared-types/ids.ts';
import type { Photo } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { useAnswer } from '../api/queries.ts';
import { Button } from '../ui/button.tsx';
import { numberText } from '../ui/number-words.ts';

const texts = photosTexts.synthetic;

export function SyntheticNotice(props: {
  photos: readonly Photo[];
  onChoose: (ids: readonly PhotoId[]) => void;
}) {
  const { photos, onChoose } = props;
  const library = useAnswer('library.overview', {}).data?.library;
  const ids = photos.filter(({ declaredSynthetic }) => declaredSynthetic !== null).map(({ id }) => id);
  if (library !== 'own' || ids.length === 0) return null;
  const one = ids.length === 1;
  return (
    <div className="photos-synthetic" role="status">
      <span>{texts.notice(numberText(ids.length), one)}</span>
      <Button kind="quiet" onClick={() => onChoose(ids)}>
        {texts.choose(one)}
      </Button>
    </div>
  );
}
