/** How what was typed fits what a case is called by. */
import type { IdentifierKind } from '#shared-types/search.ts';

import { oneEditApart, shortestNear } from './near-identifier.ts';
import { piecesOf, plainIdentifier } from './plain-identifier.ts';

export type Identifier = {
  readonly kind: IdentifierKind;
  readonly written: string;
  readonly plain: string;
  readonly pieces: readonly string[];
};

export function readIdentifier(kind: IdentifierKind, written: string): Identifier {
  return { kind, written, plain: plainIdentifier(written), pieces: piecesOf(written) };
}

/** The best first. */
export const identifierFits = ['whole', 'beginning', 'inside', 'near'] as const;
export type IdentifierFit = (typeof identifierFits)[number];

/** Two characters stand somewhere in every second identifier: only three or more are looked for inside. */
const shortestInside = 3;

/**
 * 'whole': it is the identifier, or one of its pieces. 'beginning' and 'inside' are asked from three characters on.
 * @param typed plain
 */
export function exactFit(typed: string, identifier: Identifier): Exclude<IdentifierFit, 'near'> | null {
  const { plain, pieces } = identifier;
  if (typed === '') return null;
  if (plain === typed || pieces.includes(typed)) return 'whole';
  if (typed.length < shortestInside) return null;
  const at = plain.indexOf(typed);
  return at === -1 ? null : at === 0 ? 'beginning' : 'inside';
}

/** True where it is one edit away from the identifier or from a piece of it, of five characters or more. */
export function isNear(typed: string, identifier: Identifier): boolean {
  if (typed.length < shortestNear - 1) return false;
  const near = (plain: string) => plain.length >= shortestNear && oneEditApart(typed, plain);
  return near(identifier.plain) || (identifier.pieces.length > 1 && identifier.pieces.some(near));
}
