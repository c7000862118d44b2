/** Which damages the library's findings carry. */
import type { CaseColumns } from './case-columns.ts';

/** Part and kind of damage, how many cases have it, and the last entered of them. */
export type CountedTag = {
  readonly component: string;
  readonly kind: string;
  readonly cases: number;
  readonly newestRow: number;
};

/** In no order. */
export function countTags(columns: CaseColumns): CountedTag[] {
  const places = new Map<string, number>();
  const placeOfTerms = columns.terms.map(({ component, kind }) => {
    const key = `${component}|${kind}`;
    const place = places.get(key) ?? places.size;
    places.set(key, place);
    return place;
  });
  const names = new Map(columns.terms.map((terms, place) => [placeOfTerms[place] ?? -1, terms]));
  const cases = new Int32Array(places.size);
  const lastCase = new Int32Array(places.size).fill(-1);
  const newest = new Float64Array(places.size);
  for (const [place, { row, findings }] of columns.cases.entries()) {
    for (const terms of findings) {
      const tag = placeOfTerms[terms] ?? -1;
      if (lastCase[tag] === place) continue;
      lastCase[tag] = place;
      cases[tag] = (cases[tag] ?? 0) + 1;
      newest[tag] = Math.max(newest[tag] ?? 0, row);
    }
  }
  return [...names].flatMap(([tag, { component, kind }]) => {
    const sum = cases[tag] ?? 0;
    return sum === 0 ? [] : [{ component, kind, cases: sum, newestRow: newest[tag] ?? 0 }];
  });
}
