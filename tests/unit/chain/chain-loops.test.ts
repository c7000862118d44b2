import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { downstreamOf, findLoop, leadsTo, upstreamOf, type Leads } from '#analysis/chain/chain-loops.ts';
import type { ChainNodeId } from '#shared-types/ids.ts';
import { leads, nodeId } from './a-chain.ts';

const names = (ids: readonly ChainNodeId[] | null) => ids?.map((id) => id.replace('node ', ''));
const count = 9;
const anyLinks = fc
  .uniqueArray(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)), { maxLength: 24, selector: String })
  .map((pairs): Leads[] =>
    pairs.map(([one, other]) => ({ causeId: nodeId(String(one)), effectId: nodeId(String(other)) })),
  );

/** Warshall's transitive closure (1962): the textbook answer to who leads to whom. */
function closure(links: readonly Leads[]): (from: number, to: number) => boolean {
  const reach = Array.from({ length: count }, () => new Array<boolean>(count).fill(false));
  const at = (id: ChainNodeId) => Number(id.replace('node ', ''));
  for (const { causeId, effectId } of links) reach[at(causeId)]![at(effectId)] = true;
  for (let k = 0; k < count; k += 1)
    for (let i = 0; i < count; i += 1)
      for (let j = 0; j < count; j += 1) if (reach[i]![k] && reach[k]![j]) reach[i]![j] = true;
  return (from, to) => reach[from]![to]!;
}

describe('findLoop', () => {
  it('finds one exactly where something leads back to itself, and each step of it is a link', () => {
    fc.assert(
      fc.property(anyLinks, (links) => {
        const reaches = closure(links);
        const isLoopy = Array.from({ length: count }, (_, i) => reaches(i, i)).some(Boolean);
        const loop = findLoop(links);
        expect(loop !== null).toBe(isLoopy);
        if (loop === null) return;
        expect(loop.length).toBeGreaterThanOrEqual(2);
        expect(loop[0]).toBe(loop.at(-1));
        expect(new Set(loop).size).toBe(loop.length - 1);
        for (const [index, causeId] of loop.slice(0, -1).entries()) {
          expect(links).toContainEqual({ causeId, effectId: loop[index + 1] });
        }
      }),
    );
  });

  it('goes the shortest way and begins with the cause of the latest link', () => {
    expect(names(findLoop(leads('a b', 'b c', 'c d', 'b d', 'd a')))).toEqual(['d', 'a', 'b', 'd']);
    expect(names(findLoop(leads('a b', 'b a', 'x y')))).toEqual(['b', 'a', 'b']);
    expect(names(findLoop(leads('a a')))).toEqual(['a', 'a']);
    expect(findLoop(leads('a b', 'b c', 'a c'))).toBeNull();
  });
});

describe('what leads to what', () => {
  it('agrees with the transitive closure', () => {
    fc.assert(
      fc.property(anyLinks, fc.nat(count - 1), (links, from) => {
        const reaches = closure(links);
        const others = Array.from({ length: count }, (_, i) => i).filter((i) => i !== from);
        const ids = (wanted: (i: number) => boolean) =>
          new Set(others.filter(wanted).map((i) => nodeId(String(i))));
        expect(downstreamOf(links, nodeId(String(from)))).toEqual(ids((i) => reaches(from, i)));
        expect(upstreamOf(links, nodeId(String(from)))).toEqual(ids((i) => reaches(i, from)));
        for (const to of others) {
          expect(leadsTo(links, nodeId(String(from)), nodeId(String(to)))).toBe(reaches(from, to));
        }
      }),
    );
  });
});
