/** Identifiers near to what was typed, for where nothing was found. */
import type { NearIdentifier } from '#shared-types/search.ts';

import type { CaseColumns } from './case-columns.ts';
import { isNear } from './identifier-fit.ts';
import { placesNear } from './identifier-index.ts';
import { plainIdentifier } from './plain-identifier.ts';

/** Those of most cases first. @param most how many at most */
export function nearOffers(columns: CaseColumns, written: string, most: number): NearIdentifier[] {
  const typed = plainIdentifier(written);
  const found = new Map<string, NearIdentifier>();
  for (const place of placesNear(columns.identifiers, typed)) {
    for (const identifier of columns.cases[place]?.identifiers ?? []) {
      if (!isNear(typed, identifier)) continue;
      const { kind, plain } = identifier;
      const key = `${kind} ${plain}`;
      const known = found.get(key);
      found.set(key, { kind, written: known?.written ?? identifier.written, cases: (known?.cases ?? 0) + 1 });
    }
  }
  return [...found.values()]
    .sort((one, other) => other.cases - one.cases || (one.written < other.written ? -1 : 1))
    .slice(0, most);
}
