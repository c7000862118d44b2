import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  accepted,
  deskOf,
  nextChanges,
  perform,
  readAnew,
  redoAt,
  refused,
  undoAt,
  type ChainDesk,
} from '#analysis/chain/chain-desk.ts';
import { patchesOf as patchesOfChanges } from '#analysis/chain/chain-state.ts';
import type { ChainChange, ChainLink, ChainNode, ChainOutcome } from '#shared-types/chain.ts';
import type { ChainLinkId, ChainNodeId } from '#shared-types/ids.ts';
import {
  after,
  chainOf,
  contentOf,
  fieldsOf,
  gestures,
  leads,
  link,
  linkFieldsOf,
  nodeId,
  patchesOf,
  root,
  written,
} from './a-chain.ts';

const start = deskOf(chainOf([root('grit'), written('wear')], leads('grit wear')));

function must(desk: ChainDesk | null): ChainDesk {
  if (desk === null) throw new Error('there was nothing to undo or redo');
  return desk;
}

/** A library that keeps revisions as the real one does, and refuses what the real one would. */
function libraryOver(desk: ChainDesk) {
  const nodes = new Map<ChainNodeId, ChainNode>();
  const links = new Map<ChainLinkId, ChainLink>();
  for (const node of desk.confirmed.nodes.values()) nodes.set(node.id, { ...node, revision: 1 });
  for (const one of desk.confirmed.links.values()) links.set(one.id, { ...one, revision: 1 });
  const next = (held: { revision: number } | undefined, revision: number | null): number => {
    if ((held?.revision ?? null) !== revision) throw new Error('a stale revision');
    return (revision ?? 0) + 1;
  };
  return {
    nodes,
    links,
    commit(changes: readonly ChainChange[]): ChainOutcome {
      for (const change of changes) {
        if (change.change === 'put-node') {
          const { node } = change;
          nodes.set(node.id, { ...node, revision: next(nodes.get(node.id), change.revision) });
        } else if (change.change === 'put-link') {
          const { link: one } = change;
          links.set(one.id, { ...one, revision: next(links.get(one.id), change.revision) });
        } else if (change.change === 'remove-node') {
          next(nodes.get(change.nodeId), change.revision);
          nodes.delete(change.nodeId);
        } else {
          next(links.get(change.linkId), change.revision);
          links.delete(change.linkId);
        }
      }
      return {
        nodes: changes.flatMap((change) =>
          change.change === 'put-node' ? (nodes.get(change.node.id) ?? []) : [],
        ),
        links: changes.flatMap((change) =>
          change.change === 'put-link' ? (links.get(change.link.id) ?? []) : [],
        ),
        removedNodeIds: changes.flatMap((change) => (change.change === 'remove-node' ? change.nodeId : [])),
        removedLinkIds: changes.flatMap((change) => (change.change === 'remove-link' ? change.linkId : [])),
      };
    },
  };
}

describe('the desk of the chain', () => {
  it('undo after do is as if nothing had been done, and redo brings it back', () => {
    fc.assert(
      fc.property(gestures, (sequence) => {
        const desks = [start];
        for (const gesture of sequence) desks.push(perform(desks.at(-1) ?? start, patchesOf(gesture)));
        let at = desks.at(-1) ?? start;
        for (const before of desks.slice(0, -1).reverse()) {
          at = must(undoAt(at));
          expect(contentOf(at.shown)).toEqual(contentOf(before.shown));
        }
        expect(undoAt(at)).toBeNull();
        for (const next of desks.slice(1)) {
          at = must(redoAt(at));
          expect(contentOf(at.shown)).toEqual(contentOf(next.shown));
        }
        expect(redoAt(at)).toBeNull();
      }),
    );
  });

  it('asks the library for what it shows, with the revisions the library has, undone and done again', () => {
    fc.assert(
      fc.property(gestures, fc.array(fc.constantFrom('undo', 'redo', 'save')), (sequence, more) => {
        const library = libraryOver(start);
        let desk = start;
        const save = () => {
          for (let asked = nextChanges(desk); asked !== null; asked = nextChanges(desk)) {
            desk = accepted(desk, asked.length === 0 ? null : library.commit(asked));
          }
        };
        for (const gesture of sequence) desk = perform(desk, patchesOf(gesture));
        for (const deed of more) {
          if (deed === 'save') save();
          else desk = (deed === 'undo' ? undoAt(desk) : redoAt(desk)) ?? desk;
        }
        save();
        expect(desk.pending).toEqual([]);
        expect(contentOf(desk.shown)).toEqual(
          contentOf(chainOf([...library.nodes.values()], [...library.links.values()])),
        );
      }),
    );
  });

  it('takes a node out with its links in an order in which each names what is there', () => {
    const desk = perform(start, [
      { patch: 'remove-node', nodeId: nodeId('wear') },
      { patch: 'remove-link', linkId: link('grit wear').id },
    ]);
    expect(nextChanges(desk)?.map((change) => change.change)).toEqual(['remove-link', 'remove-node']);
    const undone = must(undoAt(accepted(desk, libraryOver(start).commit(nextChanges(desk) ?? []))));
    expect(nextChanges(undone)).toEqual([
      { change: 'put-node', node: fieldsOf(written('wear')), revision: null },
      { change: 'put-link', link: linkFieldsOf(link('grit wear')), revision: null },
    ]);
  });

  it('shows what the library holds after a refusal, and keeps what was done before', () => {
    const first = perform(start, [{ patch: 'put-node', node: fieldsOf(written('touch')) }]);
    const saved = accepted(first, libraryOver(start).commit(nextChanges(first) ?? []));
    const second = perform(saved, [{ patch: 'put-link', link: linkFieldsOf(link('wear touch')) }]);
    const back = refused(second, saved.confirmed);
    expect(contentOf(back.shown)).toEqual(contentOf(saved.shown));
    expect(back.history.done).toHaveLength(1);
    expect(refused(second, start.confirmed).history.done).toHaveLength(0);
  });

  it('forgets its history when somebody else changed the chain', () => {
    const done = perform(start, [{ patch: 'put-node', node: fieldsOf(written('touch')) }]);
    const saved = accepted(done, libraryOver(start).commit(nextChanges(done) ?? []));
    expect(readAnew(saved, saved.confirmed)).toBe(saved);
    const theirs = after(saved.confirmed, { patch: 'remove-node', nodeId: nodeId('touch') });
    expect(readAnew(saved, theirs).history.done).toEqual([]);
  });
});

describe('a commit as patches', () => {
  it('names the same things', () => {
    const changes: ChainChange[] = [
      { change: 'put-node', node: fieldsOf(root('grit')), revision: null },
      { change: 'remove-link', linkId: link('grit wear').id, revision: 3 },
    ];
    expect(patchesOfChanges(changes)).toEqual([
      { patch: 'put-node', node: fieldsOf(root('grit')) },
      { patch: 'remove-link', linkId: link('grit wear').id },
    ]);
  });
});
