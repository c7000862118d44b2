import { claimTexts } from '#shared-types/texts/claim.ts';
import { custodyTexts } from '#shared-types/texts/custody.ts';
import { partiesTexts } from '#shared-types/texts/parties.ts';

/** The parts of the station, in the order in which they stand on the page. */
export const claimPlaces = {
  claim: { id: 'claim-words', title: claimTexts.claimHead },
  parties: { id: 'claim-parties', title: partiesTexts.head },
  state: { id: 'claim-state', title: claimTexts.stateHead },
  answer: { id: 'claim-answer', title: claimTexts.answerHead },
  unit: { id: 'claim-unit', title: claimTexts.unitHead },
  seen: { id: 'claim-seen', title: claimTexts.seen.head },
  service: { id: 'claim-service', title: claimTexts.service.head },
  interest: { id: 'claim-interest', title: claimTexts.interest.head },
  custody: { id: 'claim-custody', title: custodyTexts.head },
} as const;
