import { describe, expect, it } from 'vitest';
import { broughtIn, findingsToBringIn, removedNode } from '#analysis/chain/chain-deeds.ts';
import {
  after,
  caseFinding,
  chainOf,
  findingId,
  leads,
  linkId,
  nodeId,
  ofFinding,
  root,
  written,
} from './a-chain.ts';

describe('taking a box out', () => {
  it('takes every link that begins or ends at it along, and no other', () => {
    const chain = chainOf([root('a'), written('b'), written('c')], leads('a b', 'b c', 'a c'));
    const left = after(chain, ...removedNode(chain, nodeId('b')));
    expect([...left.nodes.keys()]).toEqual([nodeId('a'), nodeId('c')]);
    expect([...left.links.keys()]).toEqual([linkId('a', 'c')]);
  });
});

describe('bringing findings in', () => {
  it('takes the present primary and secondary ones that are not in the chain, by number', () => {
    const findings = [
      caseFinding(6, { class: 'secondary' }),
      caseFinding(1),
      caseFinding(2),
      caseFinding(3, { class: 'unrelated' }),
      caseFinding(4, { class: 'undecided' }),
      caseFinding(5, { presence: 'looked-for-absent' }),
    ];
    const offered = findingsToBringIn(chainOf([ofFinding(1)]), findings);
    expect(offered.map((finding) => finding.number)).toEqual([2, 6]);
    let made = 0;
    const chain = after(chainOf([]), ...broughtIn(offered, () => nodeId(String((made += 1)))));
    expect([...chain.nodes.values()].map(({ id, findingId: of }) => [id, of])).toEqual([
      [nodeId('1'), findingId(2)],
      [nodeId('2'), findingId(6)],
    ]);
    expect(findingsToBringIn(chain, findings).map((finding) => finding.number)).toEqual([1]);
  });
});
