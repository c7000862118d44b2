/**
 * What was changed, at the revisions that the library will most likely give it: 1 for what is new, one more for what it
 * had. `after` is `before` with changes done to it; what they left alone is the same object in both.
 */
export function likelyRevisions<Id, Thing extends { readonly revision: number | null }>(
  before: ReadonlyMap<Id, Thing>,
  after: ReadonlyMap<Id, Thing>,
): ReadonlyMap<Id, Thing> {
  return new Map(
    [...after].map(([id, thing]) => {
      const known = before.get(id);
      return [id, thing === known ? thing : { ...thing, revision: (known?.revision ?? 0) + 1 }];
    }),
  );
}
