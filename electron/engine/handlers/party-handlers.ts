/** Who has to do with a case, and who had what of it when. */
import { listCustody } from '../../database/repositories/custody.ts';
import { listParties } from '../../database/repositories/parties.ts';
import { enterCustody, strikeCustody } from '../../services/custody-work.ts';
import { putParty, takePartyOut } from '../../services/party-work.ts';
import type { Handlers } from './handler-types.ts';

export const partyHandlers = {
  'parties.list': ({ db }, { caseId }) => listParties(db, caseId),
  'parties.put': putParty,
  'parties.remove': takePartyOut,
  'custody.list': ({ db }, { caseId }) => listCustody(db, caseId),
  'custody.add': enterCustody,
  'custody.strike': strikeCustody,
} satisfies Partial<Handlers>;
