/** What is flagged in a chain: common practice of cause-and-effect work, no source. */
import { describe, expect, it } from 'vitest';
import { chainFlags, type ChainFlagKind } from '#analysis/chain/chain-flags.ts';
import type { ChainState } from '#analysis/chain/chain-state.ts';
import type { ChainSubject } from '#analysis/chain/node-words.ts';
import {
  caseFinding,
  chainOf,
  claimNode,
  findingIds,
  leads,
  link,
  linkId,
  nodeId,
  ofFinding,
  root,
  subjectOf,
  written,
} from './a-chain.ts';

const primary = caseFinding(1);
const secondary = caseFinding(2, { class: 'secondary' });
const absent = caseFinding(3, { class: 'undecided', presence: 'looked-for-absent' });

const sound = leads('grit f1', 'f1 f2', 'f2 claim');
const soundNodes = [root('grit'), ofFinding(1), ofFinding(2), claimNode];

function flagged(chain: ChainState, subject: ChainSubject, kind: ChainFlagKind) {
  return chainFlags(chain, subject).filter((flag) => flag.flag === kind);
}
const kinds = (chain: ChainState, subject: ChainSubject) =>
  chainFlags(chain, subject).map((flag) => flag.flag);

describe('chainFlags', () => {
  it('a chain in which all goes together has none', () => {
    expect(chainFlags(chainOf(soundNodes, sound), subjectOf(primary, secondary))).toEqual([]);
  });

  it('a primary finding with another finding before it, over any number of steps', () => {
    const chain = chainOf(
      [...soundNodes, written('touch')],
      leads('grit f2', 'f2 touch', 'touch f1', 'f2 claim'),
    );
    expect(flagged(chain, subjectOf(primary, secondary), 'primary-follows')).toEqual([
      {
        flag: 'primary-follows',
        nodeIds: [nodeId('f1'), nodeId('f2')],
        linkIds: [],
        findingIds: findingIds(1, 2),
        sentence: 'Finding 1 is primary, yet it is drawn as following from finding 2.',
      },
    ]);
    // What is not there cannot have come first.
    expect(kinds(chain, subjectOf(primary, { ...secondary, presence: 'looked-for-absent' }))).not.toContain(
      'primary-follows',
    );
  });

  it('a root cause that follows from anything', () => {
    const chain = chainOf([...soundNodes, written('wear', 'condition')], [...sound, ...leads('wear grit')]);
    expect(flagged(chain, subjectOf(primary, secondary), 'root-follows')).toEqual([
      {
        flag: 'root-follows',
        nodeIds: [nodeId('grit'), nodeId('wear')],
        linkIds: [],
        findingIds: [],
        sentence: '“grit” is said to be the root cause, yet it is drawn as following from “wear”.',
      },
    ]);
  });

  it('a secondary finding that nothing leads to', () => {
    const chain = chainOf(soundNodes, leads('grit f1', 'f2 claim'));
    expect(flagged(chain, subjectOf(primary, secondary), 'secondary-alone')).toMatchObject([
      { nodeIds: [nodeId('f2')], findingIds: findingIds(2) },
    ]);
    // It needs saying once, not as "without a link" too.
    expect(kinds(chainOf([ofFinding(2)]), subjectOf(secondary))).toEqual(['secondary-alone']);
  });

  it('a root cause from which no present finding follows, or only over links without a reason', () => {
    const alone = chainOf([root('grit'), written('wear')], leads('grit wear'));
    expect(flagged(alone, subjectOf(), 'root-without-evidence')).toMatchObject([
      { nodeIds: [nodeId('grit')], sentence: 'No finding that is present follows from “grit”.' },
    ]);
    const toAbsent = chainOf([root('grit'), ofFinding(3)], leads('grit f3'));
    expect(kinds(toAbsent, subjectOf(absent))).toEqual(['root-without-evidence']);
    const unreasoned = chainOf([root('grit'), ofFinding(1)], [link('grit f1', { reason: ' ' })]);
    expect(flagged(unreasoned, subjectOf(primary), 'root-without-evidence')).toMatchObject([
      { sentence: '“grit” reaches what was found only over links that give no reason.' },
    ]);
  });

  it('a present finding that is not in the chain, but for unrelated ones; and one without a link', () => {
    const unrelated = caseFinding(4, { class: 'unrelated' });
    expect(chainFlags(chainOf([]), subjectOf(secondary, primary, absent, unrelated))).toMatchObject([
      { flag: 'finding-outside', findingIds: findingIds(1), nodeIds: [] },
      {
        flag: 'finding-outside',
        findingIds: findingIds(2),
        sentence: 'Finding 2, secondary, is not in the chain.',
      },
    ]);
    expect(kinds(chainOf([ofFinding(1)]), subjectOf(primary))).toEqual(['unlinked']);
  });

  it('a link without a reason', () => {
    const chain = chainOf(soundNodes, [...leads('grit f1', 'f2 claim'), link('f1 f2', { reason: '\n' })]);
    expect(flagged(chain, subjectOf(primary, secondary), 'no-reason')).toEqual([
      {
        flag: 'no-reason',
        nodeIds: [nodeId('f1'), nodeId('f2')],
        linkIds: [linkId('f1', 'f2')],
        findingIds: [],
        sentence: 'The link finding 1 → finding 2 gives no reason.',
      },
    ]);
  });

  it('a claim that nothing leads to or from', () => {
    const chain = chainOf(soundNodes, leads('grit f1', 'f1 f2'));
    expect(kinds(chain, subjectOf(primary, secondary))).toEqual(['claim-alone']);
  });

  it('something looked for and not there that is drawn as a cause', () => {
    const chain = chainOf([ofFinding(3), claimNode], leads('f3 claim'));
    expect(chainFlags(chain, subjectOf(absent))).toMatchObject([
      { flag: 'absent-cause', nodeIds: [nodeId('f3')], linkIds: [linkId('f3', 'claim')] },
    ]);
    expect(kinds(chainOf([root('grit'), ofFinding(3)], leads('grit f3')), subjectOf(absent))).not.toContain(
      'absent-cause',
    );
  });
});
