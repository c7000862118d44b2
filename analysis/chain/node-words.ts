/** What stands in a box of the chain, and what it is called within a sentence. */
import { chainFigureTexts, chainNames } from '#shared-types/texts/chain.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import type { ChainNodeFields } from '#shared-types/chain.ts';
import type { DamageClass, Finding } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { kindLabel, placeLabel } from '../report/term-labels.ts';

/** What is said of a finding in its box. */
export type ChainFinding = Pick<
  Finding,
  'id' | 'number' | 'component' | 'position' | 'zone' | 'kind' | 'class' | 'presence'
>;

/** What a chain speaks of besides its own words. */
export type ChainSubject = {
  readonly findings: ReadonlyMap<FindingId, ChainFinding>;
  readonly pack: KnowledgePack;
  /** The case's claim, word for word. */
  readonly claim: string;
};

export type NodeWords = {
  /** "Root cause", "Finding 3, primary". */
  readonly head: string;
  readonly words: string;
  /** Null where it has none: only damage that is there has a class. */
  readonly class: DamageClass | null;
};

/** Characters of the claim that its box holds; the whole of it stands elsewhere. */
const mostClaim = 240;
/** Characters of a node's words that a sentence repeats. */
const mostInSentence = 60;

export function nodeWords(node: ChainNodeFields, subject: ChainSubject): NodeWords {
  const { kinds, findingHead, said, noClaim } = chainFigureTexts;
  if (node.kind === 'finding') {
    const finding = subject.findings.get(node.findingId);
    if (finding === undefined) return { head: kinds.finding, words: chainNames.gone, class: null };
    const isThere = finding.presence === 'present';
    const word = isThere ? commonTexts.damageClasses[finding.class] : commonTexts.presences[finding.presence];
    return {
      head: findingHead(finding.number, word),
      words: `${placeLabel(subject.pack, finding)}: ${kindLabel(subject.pack, finding.kind)}`,
      class: isThere ? finding.class : null,
    };
  }
  if (node.kind === 'claim') {
    const claim = subject.claim.replace(/\s+/g, ' ').trim();
    return {
      head: kinds.claim,
      words: claim === '' ? noClaim : said(shortened(claim, mostClaim)),
      class: null,
    };
  }
  return { head: kinds[node.kind], words: ownWords(node, subject.pack), class: null };
}

function ownWords(node: ChainNodeFields, pack: KnowledgePack): string {
  if (node.words.trim() !== '' || node.term === null) return node.words.replace(/\s+/g, ' ').trim();
  const { term } = node;
  const known = [...pack.mechanisms, ...pack.conditions].find((entry) => entry.id === term);
  return known?.label ?? term;
}

/** "finding 3", "the claim", or its words in quotation marks, cut where they are long. */
export function nodeName(node: ChainNodeFields, subject: ChainSubject): string {
  if (node.kind === 'claim') return chainNames.claim;
  if (node.kind === 'finding') {
    const finding = subject.findings.get(node.findingId);
    return finding === undefined ? chainNames.gone : chainNames.finding(finding.number);
  }
  return chainNames.words(shortened(ownWords(node, subject.pack), mostInSentence));
}

/** Cut after a word, or within one that is longer than all there is room for. */
function shortened(words: string, most: number): string {
  const letters = [...words];
  if (letters.length <= most) return words;
  const cut = letters.slice(0, most - 1).join('');
  const end = cut.lastIndexOf(' ');
  return `${(end > most / 2 ? cut.slice(0, end) : cut).trimEnd()}…`;
}
