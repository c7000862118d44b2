/** Which kinds of damage are bends is said by the data, not by their names. */
import { expect, test } from 'vitest';

import { kindAndItsCases } from '#analysis/knowledge/pack-terms.ts';

import { turbocharger as pack } from '../knowledge/turbocharger-file.ts';

test('every case of a bend is one too, and only a bend says which way it goes', () => {
  const bends = pack.kinds.filter((kind) => kind.bends === true).map(({ id }) => id);
  expect(bends.length).toBeGreaterThan(0);
  expect(new Set(bends.flatMap((id) => kindAndItsCases(pack, id)))).toEqual(new Set(bends));
  const told = pack.kinds.filter((kind) => kind.bendIs !== undefined);
  expect(told.map(({ bendIs }) => bendIs).sort()).toEqual(['against', 'with']);
  for (const { id } of told) expect(bends).toContain(id);
});
