/** The chain of cause and effect in the library: a commit is there whole or not at all, and says why not. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { ChainChange, ChainLinkFields, ChainNodeFields } from '#shared-types/chain.ts';
import type { ChainLinkId, ChainNodeId, FindingId } from '#shared-types/ids.ts';

import { engineOverWorld, openEngineOverWorld, type EngineOverWorld } from '../support/engine-for-test.ts';
import { libraryContent } from '../support/library-content.ts';
import { testId } from '../support/open-test-library.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import type { EngineHere } from '../support/world-engine.ts';
import type { WorldCase } from '../support/world.ts';

const size = { cases: 2, findings: [3, 3], photos: [1, 1], marks: [0, 0] } as const;

type Bench = { engine: EngineHere; here: WorldCase; elsewhere: WorldCase };

const chainBench = async () => asBench(await engineOverWorld(31, size));

function asBench({ engine, world }: EngineOverWorld): Bench {
  const [here, elsewhere] = world.cases;
  if (!here || !elsewhere) throw new Error('the world has two cases');
  return { engine, here, elsewhere };
}

const node = (number: number) => testId<ChainNodeId>(800 + number);
const linkOf = (number: number) => testId<ChainLinkId>(900 + number);

const written = (number: number, words: string): ChainNodeFields => ({
  id: node(number),
  kind: 'event',
  findingId: null,
  term: null,
  words,
});
const standsFor = (number: number, findingId: FindingId): ChainNodeFields => ({
  id: node(number),
  kind: 'finding',
  findingId,
  term: null,
  words: '',
});
const claim = (number: number): ChainNodeFields => ({
  id: node(number),
  kind: 'claim',
  findingId: null,
  term: null,
  words: '',
});
const link = (number: number, cause: number, effect: number, reason = 'so it was'): ChainLinkFields => ({
  id: linkOf(number),
  causeId: node(cause),
  effectId: node(effect),
  reason,
  certainty: 'likely',
});
const put = (fields: ChainNodeFields, revision: number | null = null): ChainChange => ({
  change: 'put-node',
  node: fields,
  revision,
});
const lay = (fields: ChainLinkFields, revision: number | null = null): ChainChange => ({
  change: 'put-link',
  link: fields,
  revision,
});
const drop = (number: number, revision = 1): ChainChange => ({
  change: 'remove-node',
  nodeId: node(number),
  revision,
});
const cut = (number: number, revision = 1): ChainChange => ({
  change: 'remove-link',
  linkId: linkOf(number),
  revision,
});

/** Grit, the first finding it led to, the claim that came of it. */
const begun = (here: WorldCase): ChainChange[] => [
  put(written(1, 'grit in the oil')),
  put(standsFor(2, here.findings[0]!.id)),
  put(claim(3)),
  lay(link(1, 1, 2)),
  lay(link(2, 2, 3)),
];

/** For commits that are refused: they leave it as it was, which is what they are tested for. */
let shared: Bench;
let folder: string;
beforeAll(async () => {
  folder = makeTemporaryFolder();
  shared = asBench(await openEngineOverWorld(folder, 31, size));
  await shared.engine.ask('chain.commit', { caseId: shared.here.id, changes: begun(shared.here) });
});
afterAll(async () => {
  await shared.engine.close();
  removeFolder(folder);
});

describe('a commit to the chain', () => {
  test('is there whole, answers what it put, and tells journal and windows', async () => {
    const { engine, here } = await chainBench();
    expect(await engine.ask('chain.read', { caseId: here.id })).toEqual({ nodes: [], links: [] });
    const outcome = await engine.ask('chain.commit', { caseId: here.id, changes: begun(here) });
    expect(outcome.nodes.map(({ id, revision }) => [id, revision])).toEqual([
      [node(1), 1],
      [node(2), 1],
      [node(3), 1],
    ]);
    expect(outcome.links).toEqual([
      { ...link(1, 1, 2), revision: 1 },
      { ...link(2, 2, 3), revision: 1 },
    ]);
    expect(await engine.ask('chain.read', { caseId: here.id })).toEqual({
      nodes: outcome.nodes,
      links: outcome.links,
    });
    expect(engine.events.at(-1)).toEqual({
      name: 'case-changed',
      payload: { caseId: here.id, what: 'chain' },
    });
    const [line] = await engine.ask('journal.list', { caseId: here.id, most: 1 });
    expect(line?.what).toBe('chain');
    expect(JSON.stringify(line?.details)).toContain(node(1));
    expect(JSON.stringify(line)).not.toContain('grit');
  });

  test('changes, removes first, and brings back under the old ids', async () => {
    const { engine, here } = await chainBench();
    const caseId = here.id;
    await engine.ask('chain.commit', { caseId, changes: begun(here) });
    const outcome = await engine.ask('chain.commit', {
      caseId,
      changes: [
        lay(link(3, 1, 2, 'another reason')),
        put(written(1, 'grit, and much of it'), 1),
        cut(1),
        lay({ ...link(2, 2, 3), certainty: 'possible' }, 1),
      ],
    });
    expect(outcome.nodes).toEqual([{ ...written(1, 'grit, and much of it'), revision: 2 }]);
    expect(outcome.links.map((one) => [one.id, one.certainty, one.revision])).toEqual([
      [linkOf(2), 'possible', 2],
      [linkOf(3), 'likely', 1],
    ]);
    expect(outcome.removedLinkIds).toEqual([linkOf(1)]);
    const gone: ChainChange[] = [drop(1, 2), cut(3), drop(2), cut(2, 2), drop(3)];
    expect((await engine.ask('chain.commit', { caseId, changes: gone })).removedNodeIds).toEqual([
      node(1),
      node(2),
      node(3),
    ]);
    expect(await engine.ask('chain.read', { caseId })).toEqual({ nodes: [], links: [] });
    await engine.ask('chain.commit', { caseId, changes: begun(here) });
    expect((await engine.ask('chain.read', { caseId })).nodes).toHaveLength(3);
  });

  type Refused = readonly [
    name: string,
    code: string,
    changes: (bench: Bench) => readonly ChainChange[],
    words: string,
  ];
  const refused: readonly Refused[] = [
    [
      'a loop',
      'chain-loop',
      () => [lay(link(3, 3, 1))],
      'the claim → “grit in the oil” → finding 1 → the claim',
    ],
    ['a link to itself', 'chain-self-link', () => [lay(link(3, 1, 1))], '“grit in the oil” cannot be'],
    ['a second link between the same two', 'chain-link-twice', () => [lay(link(3, 1, 2))], 'to finding 1'],
    ['a second claim', 'chain-claim-twice', () => [put(claim(4))], 'The claim stands'],
    [
      'a finding twice',
      'chain-finding-twice',
      ({ here }) => [put(standsFor(4, here.findings[0]!.id))],
      'Finding 1 stands',
    ],
    [
      'a finding of another case',
      'chain-finding-elsewhere',
      ({ elsewhere }) => [put(standsFor(4, elsewhere.findings[0]!.id))],
      'belongs to another case',
    ],
    [
      'a finding that is gone',
      'not-found',
      () => [put(standsFor(4, testId<FindingId>(77)))],
      'This finding is not',
    ],
    [
      'a link to what is not there',
      'chain-link-loose',
      () => [lay(link(3, 1, 9))],
      'does not stand in the chain',
    ],
    [
      'a box taken out from under its links',
      'chain-link-loose',
      () => [drop(1)],
      'does not stand in the chain',
    ],
    [
      'a link turned round',
      'chain-link-turned',
      ({ here }) => [put(standsFor(4, here.findings[1]!.id)), lay(link(1, 1, 4), 1)],
      'keeps its cause and its effect',
    ],
    ['an older box', 'stale-revision', () => [put(written(1, 'sand'), 7)], 'This box of the chain'],
    [
      'a box that is there already',
      'stale-revision',
      () => [put(written(1, 'sand'))],
      'This box of the chain',
    ],
    ['an older link', 'stale-revision', () => [lay(link(1, 1, 2, 'why'), 2)], 'This link of the chain'],
    [
      'a mechanism the machine kind does not have',
      'term-unknown',
      () => [put({ id: node(4), kind: 'root-cause', findingId: null, term: 'no-such-thing', words: '' })],
      'no mechanism “no-such-thing”',
    ],
    ['a box without words', 'request-invalid', () => [put(written(4, '  '))], 'neither words nor a term'],
    [
      'the same thing twice',
      'request-invalid',
      () => [put(written(4, 'a')), put(written(4, 'b'))],
      'the same thing twice',
    ],
  ];

  test.each(refused)(
    '%s is refused, and nothing of the commit is there',
    async (_name, code, changes, words) => {
      const { engine, here } = shared;
      const before = libraryContent(engine.db);
      const refusal = await engine.refusalOf('chain.commit', {
        caseId: here.id,
        changes: [put(written(5, 'in order')), ...changes(shared)],
      });
      expect(refusal.code).toBe(code);
      expect(refusal.message).toContain(words);
      expect(libraryContent(engine.db)).toEqual(before);
    },
  );

  test('another case’s chain cannot be reached', async () => {
    const { engine, elsewhere } = shared;
    const before = libraryContent(engine.db);
    for (const changes of [[put(written(1, 'sand'), 1)], [cut(1)], [lay(link(1, 1, 2), 1)], [drop(3)]]) {
      const refusal = await engine.refusalOf('chain.commit', { caseId: elsewhere.id, changes });
      expect(['not-found', 'chain-link-loose']).toContain(refusal.code);
    }
    expect(libraryContent(engine.db)).toEqual(before);
    expect(await engine.ask('chain.read', { caseId: elsewhere.id })).toEqual({ nodes: [], links: [] });
  });

  test('a closed case keeps its chain', async () => {
    const { engine, here } = await chainBench();
    const caseId = here.id;
    await engine.ask('chain.commit', { caseId, changes: begun(here) });
    const { revision } = await engine.ask('cases.read', { caseId });
    await engine.ask('cases.withdraw', { caseId, revision, reason: 'opened twice' });
    expect((await engine.refusalOf('chain.commit', { caseId, changes: [cut(1)] })).code).toBe('case-closed');
    expect((await engine.ask('chain.read', { caseId })).links).toHaveLength(2);
  });
});

describe('a finding that stands in the chain', () => {
  const remove = (findingId: FindingId, revision: number) => ({
    change: 'remove-finding' as const,
    findingId,
    revision,
  });

  test('cannot be removed at the bench until its box is gone; undo brings both back', async () => {
    const { engine, here } = await chainBench();
    const caseId = here.id;
    const finding = here.findings[0]!;
    await engine.ask('chain.commit', { caseId, changes: [put(standsFor(2, finding.id))] });
    const refusal = await engine.refusalOf('bench.commit', { caseId, changes: [remove(finding.id, 1)] });
    expect(refusal.code).toBe('finding-in-chain');
    expect(refusal.message).toContain('Finding 1 stands in the chain');
    await engine.ask('chain.commit', { caseId, changes: [drop(2)] });
    await engine.ask('bench.commit', { caseId, changes: [remove(finding.id, 1)] });
    const gone = await engine.refusalOf('chain.commit', {
      caseId,
      changes: [put(standsFor(2, finding.id))],
    });
    expect(gone.code).toBe('not-found');
    await engine.ask('bench.commit', {
      caseId,
      changes: [
        {
          change: 'put-finding',
          findingId: finding.id,
          fields: finding.fields,
          revision: null,
        },
      ],
    });
    const back = await engine.ask('chain.commit', { caseId, changes: [put(standsFor(2, finding.id))] });
    expect(back.nodes).toMatchObject([{ findingId: finding.id, revision: 1 }]);
  });
});

describe('the figure of the chain', () => {
  test('is an SVG under a delivery token, with every box in it', async () => {
    const { engine, here } = await chainBench();
    const caseId = here.id;
    expect((await engine.refusalOf('chain.figure', { caseId })).code).toBe('chain-empty');
    await engine.ask('chain.commit', { caseId, changes: begun(here) });
    const document = await engine.ask('chain.figure', { caseId });
    expect(document.mediaType).toBe('image/svg+xml');
    expect(document.fileName).toMatch(/^chain-[\p{L}\p{N}._-]+\.svg$/u);
    const svg = readFileSync(join(engine.folder, 'deliveries', document.token), 'utf8');
    expect(Buffer.byteLength(svg)).toBe(document.bytes);
    expect(svg).toMatch(
      /^<\?xml version="1\.0" encoding="UTF-8"\?>\n<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/,
    );
    for (const head of ['>Event<', '>grit in the oil<', '>Claim<']) expect(svg).toContain(head);
    expect(svg.match(/>Finding 1, /g)).toHaveLength(1);
  });
});
