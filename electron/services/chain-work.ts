/** What is done to a case's chain of cause and effect, a gesture at a time, whole or not at all; and its figure as SVG. */
import { writeFile } from 'node:fs/promises';

import { chainContent } from '#analysis/chain/chain-content.ts';
import { chainFault } from '#analysis/chain/chain-faults.ts';
import { applyPatches, chainStateOf, patchesOf } from '#analysis/chain/chain-state.ts';
import { chainToDrawing, figureWithNotes } from '#analysis/chain/chain-to-drawing.ts';
import type { ChainSubject } from '#analysis/chain/node-words.ts';
import { drawingToSvg } from '#analysis/report/drawing-to-svg.ts';
import type { ChainChange, ChainCommit, ChainNodeFields, ChainOutcome } from '#shared-types/chain.ts';
import { AppError } from '#shared-types/errors.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { FinishedDocument } from '#shared-types/job.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { chainNames } from '#shared-types/texts/chain.ts';

import { readCase } from '../database/repositories/cases.ts';
import {
  addLink,
  addNode,
  readChain,
  removeLink,
  removeNode,
  writeLink,
  writeNode,
} from '../database/repositories/chain.ts';
import { caseOfFinding, listFindings } from '../database/repositories/findings.ts';
import { recordWrite } from './recorded-write.ts';
import type { Services } from './services.ts';

/**
 * @throws AppError stale-revision, not-found, case-closed, term-unknown, chain-finding-elsewhere, chain-link-turned, and
 *   what analysis/chain/chain-faults.ts finds in the chain as it would be: nothing of the commit is there then
 */
export function commitToChain(services: Services, { caseId, changes }: ChainCommit): ChainOutcome {
  const { db } = services;
  recordWrite(services, {
    caseId,
    what: 'chain',
    details: { changes: changes.map(journalLine) },
    write: () => {
      const subject = subjectOf(services, caseId);
      for (const change of changes) {
        if (change.change === 'put-node') refuseForeignWords(services, caseId, subject.pack, change.node);
      }
      const fault = chainFault(
        applyPatches(chainStateOf(readChain(db, caseId)), patchesOf(changes)),
        subject,
      );
      if (fault !== null) throw fault;
      for (const change of inOrder(changes)) carryOut(services, caseId, change);
    },
  });
  services.publish({ name: 'case-changed', payload: { caseId, what: 'chain' } });
  return outcomeOf(services, caseId, changes);
}

function subjectOf({ db, packs }: Services, caseId: CaseId): ChainSubject {
  const { claim, pack } = readCase(db, caseId);
  const findings = new Map(listFindings(db, caseId).map((finding) => [finding.id, finding]));
  return { findings, pack: packs.ofCase(pack), claim };
}

/** @throws AppError not-found, chain-finding-elsewhere, term-unknown */
function refuseForeignWords(
  { db }: Services,
  caseId: CaseId,
  pack: KnowledgePack,
  node: ChainNodeFields,
): void {
  if (node.findingId !== null && caseOfFinding(db, node.findingId) !== caseId) {
    throw new AppError('chain-finding-elsewhere');
  }
  if (node.term === null) return;
  const [list, terms] =
    node.kind === 'root-cause'
      ? [chainNames.mechanism, pack.mechanisms]
      : [chainNames.condition, pack.conditions];
  if (!terms.some((term) => term.id === node.term))
    throw new AppError('term-unknown', { list, id: node.term });
}

const turns = ['remove-link', 'remove-node', 'put-node', 'put-link'] as const;

/** What goes first goes before what comes: a link never names a node that is not there, nor stands beside its successor. */
function inOrder(changes: readonly ChainChange[]): readonly ChainChange[] {
  return turns.flatMap((turn) => changes.filter((change) => change.change === turn));
}

function carryOut({ db }: Services, caseId: CaseId, change: ChainChange): void {
  switch (change.change) {
    case 'put-node': {
      const { node, revision } = change;
      if (revision === null) addNode(db, { caseId, node });
      else writeNode(db, { caseId, node, revision });
      return;
    }
    case 'remove-node':
      removeNode(db, { caseId, id: change.nodeId, revision: change.revision });
      return;
    case 'put-link': {
      const { link, revision } = change;
      if (revision === null) addLink(db, link);
      else writeLink(db, { caseId, link, revision });
      return;
    }
    case 'remove-link':
      removeLink(db, { caseId, id: change.linkId, revision: change.revision });
  }
}

/** Ids and kinds: a node's own words and the reasons are the case's text. */
function journalLine(change: ChainChange): Record<string, unknown> {
  switch (change.change) {
    case 'put-node':
      return {
        change: change.change,
        node: change.node.id,
        kind: change.node.kind,
        finding: change.node.findingId,
      };
    case 'remove-node':
      return { change: change.change, node: change.nodeId };
    case 'put-link': {
      const { id, causeId, effectId, certainty } = change.link;
      return { change: change.change, link: id, cause: causeId, effect: effectId, certainty };
    }
    case 'remove-link':
      return { change: change.change, link: change.linkId };
  }
}

function outcomeOf({ db }: Services, caseId: CaseId, changes: readonly ChainChange[]): ChainOutcome {
  const { nodes, links } = readChain(db, caseId);
  const put = new Set<string>(
    changes.flatMap((change) =>
      change.change === 'put-node' ? change.node.id : change.change === 'put-link' ? change.link.id : [],
    ),
  );
  return {
    nodes: nodes.filter((node) => put.has(node.id)),
    links: links.filter((link) => put.has(link.id)),
    removedNodeIds: changes.flatMap((change) => (change.change === 'remove-node' ? change.nodeId : [])),
    removedLinkIds: changes.flatMap((change) => (change.change === 'remove-link' ? change.linkId : [])),
  };
}

const mediaType = 'image/svg+xml';
/** By the name an installed Source Sans 3 has; another sans where there is none. */
const family = "'Source Sans 3', sans-serif";
/** CSS pixels (1/96 inch) per point (1/72 inch). */
const pixelsPerPoint = 96 / 72;

/** The chain as the screen and the report draw it, under a delivery token. @throws AppError not-found, chain-empty */
export async function makeChainFigure(
  services: Services,
  { caseId }: { caseId: CaseId },
): Promise<FinishedDocument> {
  const { number } = readCase(services.db, caseId);
  const state = chainStateOf(readChain(services.db, caseId));
  if (state.nodes.size === 0) throw new AppError('chain-empty');
  const { drawing, width, height } = figureWithNotes(
    chainToDrawing(chainContent(state, subjectOf(services, caseId))),
  );
  const printed = { width: width * pixelsPerPoint, height: height * pixelsPerPoint };
  const svg = `<?xml version="1.0" encoding="UTF-8"?>\n${drawingToSvg(drawing, { width, height }, printed, family)}\n`;
  const fileName = `chain-${number.replaceAll(/[^\p{L}\p{N}._-]+/gu, '-')}.svg`;
  const { token, file } = services.deliveries.begin({ fileName, mediaType });
  await writeFile(file, svg);
  return { token, fileName, mediaType, bytes: Buffer.byteLength(svg), pages: 1 };
}
