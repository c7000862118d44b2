/** What is done at the chain station: choosing, linking by key, and the deeds with their words for ears. */
import { useMemo, useState } from 'react';
import { capitalised, chainFault } from '#analysis/chain/chain-faults.ts';
import { broughtIn, findingsToBringIn, removedLink, removedNode } from '#analysis/chain/chain-deeds.ts';
import type { ChainDesk } from '#analysis/chain/chain-desk.ts';
import { applyPatches, linkFieldsOf, type ChainPatch, type ChainState } from '#analysis/chain/chain-state.ts';
import { nodeName, type ChainFinding, type ChainSubject } from '#analysis/chain/node-words.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { ChainNodeFields } from '#shared-types/chain.ts';
import type { ChainLinkId, ChainNodeId, FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { chainTexts } from '#shared-types/texts/chain.ts';
import { toastError } from '../ui/toaster.tsx';
import type { Chosen } from './chain-sheet.tsx';
import { chainOfCase } from './chain-store.ts';
import type { LinkWords } from './link-dialog.tsx';

/** Which form is open. */
export type OpenForm =
  | { readonly form: 'add'; readonly id: ChainNodeId }
  | { readonly form: 'change-node'; readonly id: ChainNodeId }
  | { readonly form: 'link'; readonly cause: ChainNodeId; readonly effect: ChainNodeId }
  | { readonly form: 'change-link'; readonly id: ChainLinkId }
  | { readonly form: 'keys' };

const newNodeId = () => crypto.randomUUID() as ChainNodeId;
const newLinkId = () => crypto.randomUUID() as ChainLinkId;

export function useChainWork(input: {
  teardownCase: TeardownCase;
  pack: KnowledgePack;
  desk: ChainDesk;
  findings: ReadonlyMap<FindingId, ChainFinding>;
}) {
  const { teardownCase, pack, desk, findings } = input;
  const { claim } = teardownCase;
  const state = desk.shown;
  const readOnly = teardownCase.status !== 'open';
  const store = chainOfCase(teardownCase.id);
  const [picked, setPicked] = useState<Chosen | null>(null);
  const [linkingFrom, setLinkingFrom] = useState<ChainNodeId | null>(null);
  const [form, setForm] = useState<OpenForm | null>(null);
  const [goTo, setGoTo] = useState<{ readonly id: ChainNodeId; readonly turn: number } | null>(null);
  const [words, setWords] = useState('');

  const subject: ChainSubject = useMemo(() => ({ findings, pack, claim }), [findings, pack, claim]);
  const toBringIn = useMemo(() => findingsToBringIn(state, findings.values()), [state, findings]);
  const nameOf = (id: ChainNodeId) => {
    const node = state.nodes.get(id);
    return node === undefined ? '' : nodeName(node, subject);
  };
  // What undo took away is no longer chosen.
  const isThere =
    picked !== null && (picked.what === 'node' ? state.nodes.has(picked.id) : state.links.has(picked.id));
  const chosen = isThere ? picked : null;
  const cause = linkingFrom !== null && state.nodes.has(linkingFrom) ? linkingFrom : null;

  const go = (id: ChainNodeId) => setGoTo((before) => ({ id, turn: (before?.turn ?? 0) + 1 }));

  /** Carries it out unless the chain could not be so; then says why. */
  const perform = (patches: readonly ChainPatch[]): boolean => {
    const fault = chainFault(applyPatches(state, patches), subject);
    if (fault !== null) {
      toastError(fault);
      return false;
    }
    store.perform(patches);
    return true;
  };

  const beginLink = () => {
    if (readOnly) return;
    if (chosen?.what !== 'node') {
      setWords(chainTexts.linking.none);
      return;
    }
    setLinkingFrom(chosen.id);
    setWords(chainTexts.linking.begun(nameOf(chosen.id)));
    go(chosen.id);
  };

  const leaveLink = () => {
    setLinkingFrom(null);
    setWords(chainTexts.linking.left);
    if (cause !== null) go(cause);
  };

  /** Asks for the reason, unless the link could not be. */
  const link = (from: ChainNodeId, to: ChainNodeId) => {
    setLinkingFrom(null);
    if (readOnly) return;
    const tried: ChainPatch = {
      patch: 'put-link',
      link: { id: newLinkId(), causeId: from, effectId: to, reason: '', certainty: 'likely' },
    };
    const fault = chainFault(applyPatches(state, [tried]), subject);
    if (fault === null) setForm({ form: 'link', cause: from, effect: to });
    else {
      toastError(fault);
      go(from);
      setPicked({ what: 'node', id: from });
    }
  };

  const remove = () => {
    if (readOnly || chosen === null) return;
    // The keyboard goes on where it was: at a box beside the one that is gone, at the cause of the link.
    let next: ChainNodeId | undefined;
    if (chosen.what === 'node') {
      const name = nameOf(chosen.id);
      next = neighbourOf(state, chosen.id);
      if (perform(removedNode(state, chosen.id))) setWords(chainTexts.said.removed(capitalised(name)));
    } else {
      next = state.links.get(chosen.id)?.causeId;
      if (perform(removedLink(chosen.id))) setWords(chainTexts.said.linkRemoved);
    }
    setPicked(next === undefined ? null : { what: 'node', id: next });
    if (next !== undefined) go(next);
  };

  return {
    state,
    subject,
    readOnly,
    chosen,
    linkingFrom: cause,
    form,
    goTo,
    words,
    toBringIn,
    nameOf,
    settled: store.settled,
    closeForm: () => setForm(null),
    openKeys: () => setForm({ form: 'keys' }),
    beginLink,
    link,
    remove,

    walked: (id: ChainNodeId) => {
      if (cause === null) setPicked({ what: 'node', id });
      else if (id !== cause) setWords(chainTexts.linking.over(nameOf(id)));
    },
    pressed: ({ node, link: linkId }: { node: ChainNodeId | null; link: ChainLinkId | null }) => {
      if (cause !== null && node !== null && node !== cause) link(cause, node);
      else if (node !== null) setPicked({ what: 'node', id: node });
      else if (linkId !== null) setPicked({ what: 'link', id: linkId });
      else if (cause !== null) leaveLink();
      else setPicked(null);
    },
    entered: (id: ChainNodeId) => {
      const node = state.nodes.get(id);
      if (cause !== null) {
        if (id !== cause) link(cause, id);
        return;
      }
      setPicked({ what: 'node', id });
      if (!readOnly && node !== undefined && node.kind !== 'finding' && node.kind !== 'claim') {
        setForm({ form: 'change-node', id });
      }
    },
    escaped: () => {
      if (cause !== null) leaveLink();
      else setPicked(null);
    },
    goToNode: (id: ChainNodeId) => {
      setPicked({ what: 'node', id });
      go(id);
    },
    chooseLink: (id: ChainLinkId) => setPicked({ what: 'link', id }),

    add: () => {
      if (!readOnly) setForm({ form: 'add', id: newNodeId() });
    },
    change: () => {
      if (readOnly || chosen === null) return;
      setForm({ form: chosen.what === 'node' ? 'change-node' : 'change-link', id: chosen.id } as OpenForm);
    },
    bringIn: () => {
      if (readOnly || toBringIn.length === 0) return;
      if (perform(broughtIn(toBringIn, newNodeId))) setWords(chainTexts.said.broughtIn(toBringIn.length));
    },
    putNode: (node: ChainNodeFields, isNew: boolean) => {
      setForm(null);
      if (!perform([{ patch: 'put-node', node }])) return;
      setPicked({ what: 'node', id: node.id });
      if (!isNew) return;
      go(node.id);
      setWords(chainTexts.said.added(capitalised(nodeName(node, subject))));
    },
    putLink: (from: ChainNodeId, to: ChainNodeId, said: LinkWords) => {
      setForm(null);
      const id = newLinkId();
      if (!perform([{ patch: 'put-link', link: { id, causeId: from, effectId: to, ...said } }])) return;
      setWords(chainTexts.said.linked(capitalised(nameOf(from)), nameOf(to)));
      setPicked({ what: 'node', id: to });
      go(to);
    },
    changeLink: (id: ChainLinkId, said: LinkWords) => {
      setForm(null);
      const held = state.links.get(id);
      if (held !== undefined) perform([{ patch: 'put-link', link: { ...linkFieldsOf(held), ...said } }]);
    },
    undo: () => {
      if (!readOnly && store.undo()) setWords(chainTexts.said.undone);
    },
    redo: () => {
      if (!readOnly && store.redo()) setWords(chainTexts.said.redone);
    },
  };
}

export type ChainWorkings = ReturnType<typeof useChainWork>;

/** A box that the node is linked to, else any other. */
function neighbourOf(state: ChainState, id: ChainNodeId): ChainNodeId | undefined {
  const linked = [...state.links.values()].flatMap(({ causeId, effectId }) =>
    effectId === id ? causeId : causeId === id ? effectId : [],
  );
  return linked[0] ?? [...state.nodes.keys()].find((other) => other !== id);
}
