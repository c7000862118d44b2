/** Whether both hold the same things at the same revisions. */
export function sameRevisionsOf<Id>(
  one: ReadonlyMap<Id, { readonly revision: number | null }>,
  other: ReadonlyMap<Id, { readonly revision: number | null }>,
): boolean {
  if (one.size !== other.size) return false;
  for (const [id, thing] of one) if (other.get(id)?.revision !== thing.revision) return false;
  return true;
}
