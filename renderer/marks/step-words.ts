/** One step of the bench's history in words: "arrow drawn on photo 3". */
import { stepTaken } from '#analysis/marks/step-taken.ts';
import type { Patches } from '#analysis/marks/bench-deeds.ts';
import type { BenchState } from '#analysis/marks/bench-state.ts';
import type { Photo } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { numberText } from '../ui/number-words.ts';

const texts = marksTexts.steps;

/** `earlier` and `later` as stepTaken has them; empty where nothing was touched. */
export function stepWords(
  photos: readonly Photo[],
  earlier: BenchState,
  later: BenchState,
  patches: Patches,
): string {
  const step = stepTaken(earlier, later, patches);
  if (step === null) return '';
  const { count, kind, photoId } = step.marks;
  const photo = photos.findIndex(({ id }) => id === photoId) + 1;
  return texts[step.did]({
    marks: count === 0 ? '' : texts.marks(count, kind),
    where: photo === 0 ? '' : texts.where(numberText(photo)),
    finding: step.findingNumber === null ? '' : numberText(step.findingNumber),
  });
}
