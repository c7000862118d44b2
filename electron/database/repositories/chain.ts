import { AppError } from '#shared-types/errors.ts';
import type {
  Chain,
  ChainLink,
  ChainLinkFields,
  ChainNode,
  ChainNodeFields,
  ChainNodeKind,
  LinkCertainty,
} from '#shared-types/chain.ts';
import type { CaseId, ChainLinkId, ChainNodeId, FindingId } from '#shared-types/ids.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, refuseRowThere, rowAtRevision, rowOf } from './written-row.ts';

type NodeRow = {
  uuid: string;
  kind: ChainNodeKind;
  finding: string | null;
  term: string | null;
  words: string;
  revision: number;
};

type LinkRow = {
  uuid: string;
  cause: string;
  effect: string;
  reason: string;
  certainty: LinkCertainty;
  revision: number;
};

const selectNodes = `
  SELECT n.uuid, n.kind, f.uuid AS finding, n.term, n.words, n.revision
  FROM chain_node n LEFT JOIN finding f ON f.id = n.finding_row`;

const selectLinks = `
  SELECT l.uuid, c.uuid AS cause, e.uuid AS effect, l.reason, l.certainty, l.revision
  FROM chain_link l JOIN chain_node c ON c.id = l.cause_row JOIN chain_node e ON e.id = l.effect_row`;

function toNode(row: NodeRow): ChainNode {
  const id = row.uuid as ChainNodeId;
  const { kind, revision } = row;
  if (kind === 'finding') {
    return { id, kind, findingId: row.finding as FindingId, term: null, words: '', revision };
  }
  if (kind === 'claim') return { id, kind, findingId: null, term: null, words: '', revision };
  return { id, kind, findingId: null, term: row.term, words: row.words, revision };
}

const toLink = (row: LinkRow): ChainLink => ({
  id: row.uuid as ChainLinkId,
  causeId: row.cause as ChainNodeId,
  effectId: row.effect as ChainNodeId,
  reason: row.reason,
  certainty: row.certainty,
  revision: row.revision,
});

/** Nodes and links of the case, in the order in which they were put. @throws AppError not-found */
export function readChain(db: Db, caseId: CaseId): Chain {
  const caseRow = rowOf(db, 'case', caseId);
  return {
    nodes: db
      .prepare<[number], NodeRow>(`${selectNodes} WHERE n.case_row = ? ORDER BY n.id`)
      .all(caseRow)
      .map(toNode),
    links: db
      .prepare<[number], LinkRow>(`${selectLinks} WHERE c.case_row = ? ORDER BY l.id`)
      .all(caseRow)
      .map(toLink),
  };
}

/** @throws AppError not-found for a case or a finding that is not there, stale-revision when the node is there already */
export function addNode(db: Db, input: { caseId: CaseId; node: ChainNodeFields }): void {
  const { caseId, node } = input;
  const caseRow = rowOf(db, 'case', caseId);
  refuseRowThere(db, 'box of the chain', node.id);
  const result = db
    .prepare(
      `INSERT INTO chain_node (uuid, case_row, kind, finding_row, term, words, revision)
       VALUES (?, ?, ?, ?, ?, ?, 1)`,
    )
    .run(node.id, caseRow, ...nodeValues(db, node));
  assertOneRow(result, 'chain node added');
}

/** @throws AppError not-found (also for a node of another case), stale-revision */
export function writeNode(db: Db, input: { caseId: CaseId; node: ChainNodeFields; revision: number }): void {
  const { caseId, node, revision } = input;
  refuseNodeOfOtherCase(db, caseId, node.id);
  const row = rowAtRevision(db, 'box of the chain', node.id, revision);
  const result = db
    .prepare(
      `UPDATE chain_node SET kind = ?, finding_row = ?, term = ?, words = ?, revision = revision + 1
       WHERE id = ?`,
    )
    .run(...nodeValues(db, node), row);
  assertOneRow(result, 'chain node changed');
}

/** Its links are to be removed before. @throws AppError not-found (also for a node of another case), stale-revision */
export function removeNode(db: Db, input: { caseId: CaseId; id: ChainNodeId; revision: number }): void {
  refuseNodeOfOtherCase(db, input.caseId, input.id);
  const row = rowAtRevision(db, 'box of the chain', input.id, input.revision);
  assertOneRow(db.prepare('DELETE FROM chain_node WHERE id = ?').run(row), 'chain node removed');
}

/** @throws AppError not-found for an end that is not there, stale-revision when the link is there already */
export function addLink(db: Db, link: ChainLinkFields): void {
  refuseRowThere(db, 'link of the chain', link.id);
  const result = db
    .prepare(
      `INSERT INTO chain_link (uuid, cause_row, effect_row, reason, certainty, revision)
       VALUES (?, ?, ?, ?, ?, 1)`,
    )
    .run(
      link.id,
      rowOf(db, 'box of the chain', link.causeId),
      rowOf(db, 'box of the chain', link.effectId),
      link.reason,
      link.certainty,
    );
  assertOneRow(result, 'chain link added');
}

/**
 * Reason and certainty; a link keeps its ends.
 * @throws AppError not-found (also for a link of another case), stale-revision, chain-link-turned
 */
export function writeLink(db: Db, input: { caseId: CaseId; link: ChainLinkFields; revision: number }): void {
  const { caseId, link, revision } = input;
  refuseLinkOfOtherCase(db, caseId, link.id);
  const row = rowAtRevision(db, 'link of the chain', link.id, revision);
  const result = db
    .prepare(
      `UPDATE chain_link SET reason = ?, certainty = ?, revision = revision + 1
       WHERE id = ? AND cause_row = ? AND effect_row = ?`,
    )
    .run(
      link.reason,
      link.certainty,
      row,
      rowOf(db, 'box of the chain', link.causeId),
      rowOf(db, 'box of the chain', link.effectId),
    );
  if (result.changes === 0) throw new AppError('chain-link-turned');
  assertOneRow(result, 'chain link changed');
}

/** @throws AppError not-found (also for a link of another case), stale-revision */
export function removeLink(db: Db, input: { caseId: CaseId; id: ChainLinkId; revision: number }): void {
  refuseLinkOfOtherCase(db, input.caseId, input.id);
  const row = rowAtRevision(db, 'link of the chain', input.id, input.revision);
  assertOneRow(db.prepare('DELETE FROM chain_link WHERE id = ?').run(row), 'chain link removed');
}

function refuseNodeOfOtherCase(db: Db, caseId: CaseId, id: ChainNodeId): void {
  const owner = db
    .prepare<[string], string>(
      'SELECT c.uuid FROM chain_node n JOIN teardown_case c ON c.id = n.case_row WHERE n.uuid = ?',
    )
    .pluck()
    .get(id);
  if (owner !== caseId) throw new AppError('not-found', { thing: 'box of the chain' });
}

function refuseLinkOfOtherCase(db: Db, caseId: CaseId, id: ChainLinkId): void {
  const owner = db
    .prepare<[string], string>(
      `SELECT c.uuid FROM chain_link l JOIN chain_node n ON n.id = l.cause_row
       JOIN teardown_case c ON c.id = n.case_row WHERE l.uuid = ?`,
    )
    .pluck()
    .get(id);
  if (owner !== caseId) throw new AppError('not-found', { thing: 'link of the chain' });
}

function nodeValues(db: Db, node: ChainNodeFields) {
  return [
    node.kind,
    node.findingId === null ? null : rowOf(db, 'finding', node.findingId),
    node.term,
    node.words,
  ] as const;
}
