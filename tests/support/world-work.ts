/**
 * Work as two people might do it one after the other, drawn by chance: a step picks what to do and to which thing. What
 * a step asks for may well be refused: the case may be withdrawn, the finding in use, the revision old.
 */
import type { Channel, RequestOf } from '#shared-types/api-contract.ts';
import type { BenchChange } from '#shared-types/bench-change.ts';
import { outcomes } from '#shared-types/case.ts';
import type { ErrorCode } from '#shared-types/errors.ts';
import { damageClasses, type Finding } from '#shared-types/finding.ts';
import { AppError } from '#shared-types/errors.ts';
import type { CaseId, FindingId, MarkId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { stages } from '#shared-types/photo.ts';
import { imagePointSchema } from '#shared-types/points.ts';

import { chanceFrom, type Chance } from './world-chance.ts';
import type { EngineHere } from './world-engine.ts';
import { drawFinding, drawWords } from './world-findings.ts';
import { geometryBetween } from './world-marks.ts';
import { customers, makers } from './world-words.ts';

export const works = [
  'open case',
  'change case',
  'withdraw case',
  'describe photo',
  'put finding',
  'change finding',
  'remove finding',
  'bring finding back',
  'classify finding',
  'draw mark',
  'move mark',
  'remove mark',
  'stale change',
  'enter analyst',
  'change hands',
] as const;
export type Work = (typeof works)[number];
export type Step = { readonly work: Work; readonly seed: number };

/** What became of a step: the case it wrote to, null for the library itself; or the code it was refused with. */
export type Done = { readonly wroteTo: CaseId | null } | { readonly refused: ErrorCode } | 'nothing to do';

type Ask<C extends Channel = Channel> = {
  readonly channel: C;
  readonly request: RequestOf<C>;
  readonly caseId: CaseId | null;
};
const asking = <C extends Channel>(channel: C, request: RequestOf<C>, caseId: CaseId | null): Ask => ({
  channel,
  request,
  caseId,
});

/** Findings that were removed, to be brought back. */
export type Memory = { readonly removed: { readonly caseId: CaseId; readonly finding: Finding }[] };

export async function carryOut(
  engine: EngineHere,
  pack: KnowledgePack,
  memory: Memory,
  step: Step,
): Promise<Done> {
  const order = await orderOf(engine, pack, memory, step);
  if (order === null) return 'nothing to do';
  try {
    const answer = await engine.ask(order.channel, order.request);
    const opened = order.channel === 'cases.open' ? (answer as { caseId: CaseId }).caseId : null;
    return { wroteTo: opened ?? order.caseId };
  } catch (error) {
    if (error instanceof AppError) return { refused: error.code };
    throw error;
  }
}

async function orderOf(
  engine: EngineHere,
  pack: KnowledgePack,
  memory: Memory,
  { work, seed }: Step,
): Promise<Ask | null> {
  const chance = chanceFrom(seed);
  if (work === 'open case') return openCase(chance, pack);
  if (work === 'enter analyst') {
    return asking('analysts.add', { name: `A. ${drawName(chance)}`, qualification: '' }, null);
  }
  if (work === 'change hands') return changeHands(engine, chance);
  const cases = await engine.ask('cases.list', {});
  if (cases.length === 0) return null;
  const caseId = chance.pick(cases).id;
  if (work === 'change case' || work === 'stale change' || work === 'withdraw case') {
    return workOnCase(engine, chance, caseId, work);
  }
  if (work === 'describe photo') return describePhoto(engine, chance, caseId, pack);
  return workAtBench(engine, { chance, caseId, pack, memory, work });
}

const drawName = (chance: Chance) => chance.pick(makers).replace(/\W.*/u, '');

function openCase(chance: Chance, pack: KnowledgePack): Ask {
  const serial = String(chance.integer(90_000));
  return asking(
    'cases.open',
    {
      number: `26-${serial}`,
      unit: { maker: chance.pick(makers), model: `R${serial.slice(0, 2)}`, serial, partNumber: '' },
      customer: chance.pick(customers),
      claim: drawWords(chance, [0, 3]),
      machineKind: pack.id,
    },
    null,
  );
}

async function changeHands(engine: EngineHere, chance: Chance): Promise<Ask | null> {
  const analysts = await engine.ask('analysts.list', {});
  const { revision, currentAnalystId } = await engine.ask('settings.read', {});
  const others = analysts.filter(({ id }) => id !== currentAnalystId);
  if (others.length === 0) return null;
  return asking('settings.change', { revision, fields: { currentAnalystId: chance.pick(others).id } }, null);
}

async function workOnCase(
  engine: EngineHere,
  chance: Chance,
  caseId: CaseId,
  work: 'change case' | 'stale change' | 'withdraw case',
): Promise<Ask> {
  const { revision } = await engine.ask('cases.read', { caseId });
  if (work === 'withdraw case') {
    return asking('cases.withdraw', { caseId, revision, reason: drawWords(chance, [1, 1]) }, caseId);
  }
  const fields = {
    customer: chance.pick(customers),
    conclusion: drawWords(chance, [0, 3]),
    outcome: chance.pick(outcomes),
  };
  return asking(
    'cases.change',
    { caseId, revision: work === 'stale change' ? revision + 1 : revision, fields },
    caseId,
  );
}

async function describePhoto(
  engine: EngineHere,
  chance: Chance,
  caseId: CaseId,
  pack: KnowledgePack,
): Promise<Ask | null> {
  const photos = await engine.ask('photos.list', { caseId });
  if (photos.length === 0) return null;
  const { id: photoId, revision } = chance.pick(photos);
  const fields = {
    caption: drawWords(chance, [0, 2]),
    stage: chance.pick(stages),
    parts: [{ component: chance.pick(pack.components).id, position: null }],
  };
  return asking('photos.change', { photoId, revision, fields }, caseId);
}

type AtBench = { chance: Chance; caseId: CaseId; pack: KnowledgePack; memory: Memory; work: Work };

async function workAtBench(engine: EngineHere, at: AtBench): Promise<Ask | null> {
  const { chance, caseId, memory, work } = at;
  const { findings, marks } = await engine.ask('bench.read', { caseId });
  const finding = findings.length > 0 ? chance.pick(findings) : null;
  if (work === 'classify finding') {
    if (finding === null) return null;
    const others = damageClasses.filter((one) => one !== finding.class);
    const request = {
      findingId: finding.id,
      revision: finding.revision,
      class: chance.pick(others),
      reason: drawWords(chance, [1, 2]),
    };
    return asking('findings.classify', request, caseId);
  }
  if (work === 'bring finding back') {
    const gone = memory.removed.filter((one) => !findings.some(({ id }) => id === one.finding.id));
    if (gone.length === 0) return null;
    const one = chance.pick(gone);
    const { id, number: _number, revision: _revision, ...fields } = one.finding;
    const change: BenchChange = { change: 'put-finding', findingId: id, fields, revision: null };
    return asking('bench.commit', { caseId: one.caseId, changes: [change] }, one.caseId);
  }
  const change = work.endsWith('mark')
    ? await changeOfMark(engine, at, { marks, finding })
    : changeOfFinding(at, finding);
  if (change === null) return null;
  if (change.change === 'remove-finding' && finding !== null) memory.removed.push({ caseId, finding });
  return asking('bench.commit', { caseId, changes: [change] }, caseId);
}

function changeOfFinding({ chance, pack, work }: AtBench, finding: Finding | null): BenchChange | null {
  const fields = drawFinding(pack, chance);
  if (work === 'put finding') {
    return { change: 'put-finding', findingId: chance.uuid() as FindingId, fields, revision: null };
  }
  if (finding === null) return null;
  const { id: findingId, revision } = finding;
  return work === 'remove finding'
    ? { change: 'remove-finding', findingId, revision }
    : { change: 'put-finding', findingId, fields: { ...fields, class: finding.class }, revision };
}

async function changeOfMark(
  engine: EngineHere,
  { chance, caseId, work }: AtBench,
  { marks, finding }: { marks: readonly { id: MarkId; revision: number }[]; finding: Finding | null },
): Promise<BenchChange | null> {
  const photos = await engine.ask('photos.list', { caseId });
  const known = marks.length > 0 ? chance.pick(marks) : null;
  if (work === 'remove mark') {
    return known && { change: 'remove-mark', markId: known.id, revision: known.revision };
  }
  if (photos.length === 0 || (work === 'move mark' && known === null)) return null;
  const moved = work === 'move mark' ? known : null;
  const point = () => imagePointSchema.parse({ x: chance.integer(60), y: chance.integer(40) });
  return {
    change: 'put-mark',
    revision: moved?.revision ?? null,
    mark: {
      id: moved?.id ?? (chance.uuid() as MarkId),
      photoId: chance.pick(photos).id,
      findingId: chance.happens(0.7) ? (finding?.id ?? null) : null,
      geometry: geometryBetween(chance.integer(100), point(), point()),
      order: chance.integer(100),
    },
  };
}
