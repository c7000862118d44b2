import { describe, expect, it } from 'vitest';
import { chainFault } from '#analysis/chain/chain-faults.ts';
import { mostChainNodes } from '#shared-types/chain.ts';
import {
  caseFinding,
  chainOf,
  claimNode,
  leads,
  link,
  linkId,
  nodeId,
  ofFinding,
  root,
  subjectOf,
  written,
} from './a-chain.ts';

const subject = subjectOf(caseFinding(3));

describe('chainFault', () => {
  it('has nothing to say of a chain without a loop', () => {
    const chain = chainOf(
      [root('grit'), written('wear'), ofFinding(3), claimNode],
      leads('grit wear', 'wear f3', 'grit f3', 'f3 claim'),
    );
    expect(chainFault(chain, subject)).toBeNull();
  });

  it('names the things along a loop', () => {
    const chain = chainOf(
      [written('grit', 'root-cause', 'Grit in the oil'), ofFinding(3), claimNode],
      leads('grit f3', 'f3 claim', 'claim grit'),
    );
    const fault = chainFault(chain, subject);
    expect(fault?.code).toBe('chain-loop');
    expect(fault?.message).toContain('the claim → “Grit in the oil” → finding 3 → the claim');
  });

  it.each([
    ['chain-self-link', chainOf([root('grit')], leads('grit grit')), '“grit” cannot be its own cause'],
    [
      'chain-link-twice',
      chainOf([root('grit'), ofFinding(3)], [link('grit f3'), link('grit f3', { id: linkId('again', '') })]),
      'from “grit” to finding 3',
    ],
    [
      'chain-claim-twice',
      chainOf([claimNode, { ...claimNode, id: nodeId('second') }]),
      'The claim stands in the chain already',
    ],
    [
      'chain-finding-twice',
      chainOf([ofFinding(3), { ...ofFinding(3), id: nodeId('second') }]),
      'Finding 3 stands in the chain already',
    ],
    ['chain-link-loose', chainOf([root('grit')], leads('grit wear')), 'does not stand in the chain'],
    [
      'chain-too-large',
      chainOf(Array.from({ length: mostChainNodes + 1 }, (_, n) => written(String(n)))),
      `more than ${mostChainNodes} boxes`,
    ],
  ])('%s', (code, chain, words) => {
    const fault = chainFault(chain, subject);
    expect(fault?.code).toBe(code);
    expect(fault?.message).toContain(words);
  });

  it('cuts long words at a word when it names them', () => {
    const long = 'the shaft ran dry for a time that nobody noted while the engine was hot and then some more';
    const fault = chainFault(chainOf([written('a', 'event', long)], leads('a a')), subject);
    expect(fault?.message).toContain('“the shaft ran dry for a time that nobody noted while the…” cannot');
  });
});
