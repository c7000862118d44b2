/** The forms of the chain station, one at a time. */
import type { HeldNode } from '#analysis/chain/chain-state.ts';
import { nodeWords, type ChainFinding, type ChainSubject } from '#analysis/chain/node-words.ts';
import type { ChainNodeFields, WrittenNodeKind } from '#shared-types/chain.ts';
import type { ChainNodeId, FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { chainTexts } from '#shared-types/texts/chain.ts';
import { ChainKeysDialog } from './chain-keys-dialog.tsx';
import { LinkDialog } from './link-dialog.tsx';
import { NodeDialog } from './node-dialog.tsx';
import type { ChainWorkings } from './use-chain-work.ts';

export function ChainForms({
  work,
  pack,
  findings,
}: {
  work: ChainWorkings;
  pack: KnowledgePack;
  findings: ReadonlyMap<FindingId, ChainFinding>;
}) {
  const { form, state, subject, closeForm } = work;
  if (form === null) return null;
  const nodes = [...state.nodes.values()];
  const inFull = (id: ChainNodeId) => {
    const node = state.nodes.get(id);
    return node === undefined ? '' : saidInFull(node, subject);
  };
  switch (form.form) {
    case 'keys':
      return <ChainKeysDialog onClose={closeForm} />;
    case 'link':
      return (
        <LinkDialog
          cause={inFull(form.cause)}
          effect={inFull(form.effect)}
          said={null}
          onClose={closeForm}
          onDone={(said) => work.putLink(form.cause, form.effect, said)}
        />
      );
    case 'change-link': {
      const link = state.links.get(form.id);
      if (link === undefined) return null;
      return (
        <LinkDialog
          cause={inFull(link.causeId)}
          effect={inFull(link.effectId)}
          said={link}
          onClose={closeForm}
          onDone={(said) => work.changeLink(link.id, said)}
        />
      );
    }
    case 'add':
    case 'change-node': {
      const held = form.form === 'add' ? null : written(state.nodes.get(form.id));
      if (form.form === 'change-node' && held === null) return null;
      const standing = new Set(nodes.map((node) => node.findingId));
      const offered = [...findings.values()]
        .filter((finding) => !standing.has(finding.id))
        .sort((one, other) => one.number - other.number)
        .map((finding) => {
          const node = {
            id: form.id,
            kind: 'finding',
            findingId: finding.id,
            term: null,
            words: '',
          } as const;
          return { id: finding.id, words: saidInFull(node, subject) };
        });
      return (
        <NodeDialog
          pack={pack}
          id={form.id}
          said={held}
          findings={offered}
          claimRefused={
            nodes.some((node) => node.kind === 'claim')
              ? chainTexts.nodeForm.claimThere
              : subject.claim.trim() === ''
                ? chainTexts.nodeForm.noClaim
                : null
          }
          onClose={closeForm}
          onDone={(node) => work.putNode(node, held === null)}
        />
      );
    }
  }
}

function written(node: HeldNode | undefined): Extract<ChainNodeFields, { kind: WrittenNodeKind }> | null {
  return node === undefined || node.kind === 'finding' || node.kind === 'claim' ? null : node;
}

function saidInFull(node: ChainNodeFields, subject: ChainSubject): string {
  const { head, words } = nodeWords(node, subject);
  return `${head}: ${words}`;
}
