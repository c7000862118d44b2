import { describe, expect, it } from 'vitest';
import { nodeName, nodeWords } from '#analysis/chain/node-words.ts';
import { caseFinding, claimNode, fieldsOf, ofFinding, root, subjectOf, written } from './a-chain.ts';

describe('what stands in a box', () => {
  it('a finding by number and class, its place and its damage', () => {
    const words = nodeWords(ofFinding(3), subjectOf(caseFinding(3, { class: 'secondary' })));
    expect(words).toEqual({
      head: 'Finding 3, secondary',
      words: 'Thrust bearing, front pads: worn away',
      class: 'secondary',
    });
  });

  it('a finding that is not there by that, and without a class', () => {
    const subject = subjectOf(caseFinding(3, { presence: 'looked-for-absent' }));
    expect(nodeWords(ofFinding(3), subject)).toMatchObject({
      head: 'Finding 3, looked for, not there',
      class: null,
    });
  });

  it('the claim in its own words, cut after a word where it is very long', () => {
    const subject = subjectOf();
    expect(nodeWords(claimNode, subject).words).toBe('“The nut came loose and wrecked it.”');
    const long = { ...subject, claim: 'It never ran as it should. '.repeat(40) };
    const { words } = nodeWords(claimNode, long);
    expect(words.length).toBeLessThan(245);
    expect(words).toMatch(/^“It never ran .* \w+…”$/);
    expect(nodeWords(claimNode, { ...subject, claim: ' \n' }).words).toBe('no claim entered');
  });

  it('a term of the machine kind where there are no words of its own', () => {
    const known = subjectOf();
    const subject = {
      ...known,
      pack: {
        ...known.pack,
        mechanisms: [{ id: 'grit', label: 'grit in the oil', meaning: 'Hard particles.' }],
      },
    };
    const term = {
      ...fieldsOf(root('')),
      kind: 'root-cause',
      findingId: null,
      term: 'grit',
      words: '',
    } as const;
    expect(nodeWords(term, subject).words).toBe('grit in the oil');
    expect(nodeWords({ ...term, words: 'sand' }, subject).words).toBe('sand');
    expect(nodeWords({ ...term, term: 'unknown-here' }, subject).words).toBe('unknown-here');
  });

  it('names things in a sentence', () => {
    const subject = subjectOf(caseFinding(3));
    expect(nodeName(ofFinding(3), subject)).toBe('finding 3');
    expect(nodeName(ofFinding(4), subject)).toBe('a finding that is gone');
    expect(nodeName(claimNode, subject)).toBe('the claim');
    expect(nodeName(written('touch', 'event', ' the rotor\n touched '), subject)).toBe('“the rotor touched”');
  });
});
