/** The chain of cause and effect in the report: what its figure says, before it is laid out. */
import type { Chain } from '#shared-types/chain.ts';
import type { Finding } from '#shared-types/finding.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { chainReportTexts } from '#shared-types/texts/chain.ts';
import { chainContent, type ChainContent } from '../chain/chain-content.ts';
import { chainStateOf } from '../chain/chain-state.ts';

export type ReportChain = {
  /** "Figure 1." */
  readonly name: string;
  readonly caption: string;
  readonly content: ChainContent;
};

/** Null where no chain has been drawn. */
export function reportChain(input: {
  readonly chain: Chain;
  readonly findings: readonly Finding[];
  readonly pack: KnowledgePack;
  readonly claim: string;
}): ReportChain | null {
  const { chain, findings, pack, claim } = input;
  if (chain.nodes.length === 0) return null;
  const subject = { findings: new Map(findings.map((finding) => [finding.id, finding])), pack, claim };
  return {
    name: chainReportTexts.figure(1),
    caption:
      chain.links.length === 0
        ? chainReportTexts.captionWithoutLinks
        : `${chainReportTexts.caption} ${chainReportTexts.lines}`,
    content: chainContent(chainStateOf(chain), subject),
  };
}

/** What is said among the limits: that there are findings, but no chain of them. */
export function missingChain({
  chain,
  findings,
}: {
  readonly chain: Chain;
  readonly findings: readonly Finding[];
}): readonly string[] {
  return chain.nodes.length === 0 && findings.length > 0 ? [chainReportTexts.none] : [];
}
