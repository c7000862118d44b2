/** Who is behind the examination, and what came in, in which state and through whose hands. */
import type { Interest } from '#shared-types/case.ts';
import type { CustodyEntry } from '#shared-types/custody.ts';
import type { Party, PartyRole } from '#shared-types/party.ts';
import { reportTexts } from '#shared-types/texts/report.ts';

import type { LabelledValue } from './title-block.ts';
import { instantInWords, toldTime } from './told-words.ts';

const words = reportTexts.instruction;

/** Everyone who claims; empty where nobody was entered as claiming. */
export function claimantsOf(parties: readonly Party[]): string {
  return namesWith(parties, 'claims');
}

/** Who instructs and who pays are told in any case; the others where they were entered. */
export function instructionLines(parties: readonly Party[]): LabelledValue[] {
  const others = parties.map(otherRoles).filter((line) => line !== null);
  const orNotStated = (names: string) => (names === '' ? words.notStated : names);
  return [
    { label: words.instructs, value: orNotStated(namesWith(parties, 'instructs')) },
    { label: words.pays, value: orNotStated(namesWith(parties, 'pays')) },
    ...others.map((value, index) => ({ label: index === 0 ? words.others : '', value })),
  ];
}

function namesWith(parties: readonly Party[], role: PartyRole): string {
  return parties
    .filter(({ roles }) => roles.includes(role))
    .map(({ name }) => name)
    .join('; ');
}

/** What a party does beside what stands elsewhere; null for one that only claims, instructs or pays. */
function otherRoles({ name, roles }: Party): string | null {
  if (roles.length === 0) return words.other(name, words.roleUnknown);
  const rest = roles.filter((role) => role !== 'claims' && role !== 'instructs' && role !== 'pays');
  if (rest.length === 0) return null;
  return words.other(name, rest.map((role) => reportTexts.roles[role]).join(', '));
}

/** The declaration and the analyst's words for it. */
export function interestLine({ standing, words: own }: Interest): LabelledValue {
  const said = {
    'not-stated': words.notStated,
    none: words.none,
    declared: words.declared,
  } as const;
  return {
    label: words.interest,
    value: [said[standing], own.trim()].filter((part) => part !== '').join('\n'),
  };
}

export type CustodyRow = {
  readonly when: string;
  readonly item: string;
  readonly event: string;
  readonly from: string;
  readonly to: string;
  readonly why: string;
  /** By whom, when and why it was struck; null for one that stands. */
  readonly struck: string | null;
};

/** In the order of `entries`. */
export function custodyRows(entries: readonly CustodyEntry[]): CustodyRow[] {
  const { received, custodyEvents } = reportTexts;
  return entries.map(({ at, item, event, from, to, why, struck }) => ({
    when: toldTime(at),
    item,
    event: custodyEvents[event],
    from,
    to: to === '' ? received.empty : to,
    why: why.trim() === '' ? received.empty : why,
    struck:
      struck === null ? null : received.struck(struck.by, instantInWords(struck.at), struck.reason.trim()),
  }));
}
