/** What a finding says, as a statement about places: testimony.ts makes answers and contradictions of them. */
import type { Finding } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';

import { findingPlaces, placeKey } from './mark-places.ts';
import type { Testimony } from './testimony.ts';

/** What of a finding its statement is made of. */
export type FindingEvidence = Pick<
  Finding,
  'id' | 'component' | 'position' | 'zone' | 'kind' | 'presence' | 'extent'
>;

/** Null for a part or a zone that the pack does not have, left from another version of it. */
export function findingTestimony(pack: KnowledgePack, finding: FindingEvidence): Testimony<FindingId> | null {
  const { id, component, position, zone, kind, presence, extent } = finding;
  const known = pack.components.find((each) => each.id === component);
  if (known === undefined) return null;
  if (zone !== null && !known.zones.some((each) => each.id === zone)) return null;
  const reach = { component, position, zones: zone === null ? [] : [zone], kinds: [kind] };
  return {
    source: id,
    says: presence === 'looked-for-absent' ? 'absent' : presence,
    places: new Set(findingPlaces(pack, reach).map(placeKey)),
    share: extent === null ? null : extent.affected / extent.of,
  };
}
