import type { Interest } from '#shared-types/case.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { claimPlaces } from './claim-places.ts';
import { ClaimSection } from './claim-section.tsx';
import { choicesOf, KeptArea, KeptChoice, type Kept } from './kept-field.tsx';

const texts = claimTexts.interest;

/** Whether whoever gives the opinion has a stake in it. */
export function InterestSection({ kept }: { kept: Kept }) {
  const { values } = kept.view;
  const standing = values.interest as Interest['standing'];
  const warning =
    standing === 'not-stated'
      ? texts.notStated
      : standing === 'declared' && values.interestWords.trim() === ''
        ? texts.wordsMissing
        : null;
  return (
    <ClaimSection place={claimPlaces.interest}>
      <div className="claim-fields">
        {warning === null ? null : <p className="claim-warning">{warning}</p>}
        <KeptChoice
          kept={kept}
          name="interest"
          label={texts.standing}
          hint={texts.meanings[standing]}
          choices={choicesOf(texts.standings)}
        />
        <KeptArea
          kept={kept}
          name="interestWords"
          label={texts.words}
          hint={texts.wordsHint}
          maxLength={4_000}
          rows={2}
        />
      </div>
    </ClaimSection>
  );
}
