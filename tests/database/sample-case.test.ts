/** The sample library: its case comes in by the same doors as anyone's, whole, and is one that an analyst would sign. */
import { afterAll, beforeAll, expect, test } from 'vitest';

import { custodyGaps } from '#analysis/custody/custody-gaps.ts';
import { openPoints } from '#analysis/report/open-points.ts';
import type { CaseId } from '#shared-types/ids.ts';
import { openPointTexts } from '#shared-types/texts/open-points.ts';

import { createForkBroker } from '../../electron/processes/fork-broker.ts';
import { readSample, type SampleCase } from '../../electron/services/sample-case-file.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import { startEngineHere, type EngineHere } from '../support/world-engine.ts';

let engine: EngineHere;
let caseId: CaseId;
let sample: SampleCase;

beforeAll(async () => {
  sample = readSample('ferry-auxiliary');
  engine = await startEngineHere(makeTemporaryFolder(), createForkBroker(), 'samples');
  const [job] = await engine.ask('jobs.list', {});
  expect(await engine.ended(job!)).toMatchObject({ kind: 'sample-cases', state: 'done', error: null });
  const [line] = await engine.ask('cases.list', {});
  caseId = line!.id;
});
afterAll(async () => {
  await engine.close();
  removeFolder(engine.folder);
});

test('has every photo, finding, mark, party and entry of its file', async () => {
  const teardownCase = await engine.ask('cases.read', { caseId });
  expect(teardownCase.counts).toMatchObject({
    photos: sample.photos.length,
    findings: sample.findings.length,
    marks: sample.marks.length,
  });
  expect(teardownCase).toMatchObject(sample.told);
  expect(await engine.ask('parties.list', { caseId })).toMatchObject(sample.parties);
  expect((await engine.ask('custody.list', { caseId })).map(({ item }) => item).sort()).toEqual(
    sample.custody.map(({ item }) => item).sort(),
  );
  expect(await engine.ask('report-plan.read', { caseId })).toMatchObject(sample.plan);
});

test('has its chain, with every link between the boxes that the file names', async () => {
  const { nodes, links } = await engine.ask('chain.read', { caseId });
  expect(nodes.length).toBe(sample.chain.nodes.length);
  const said = (id: string) => {
    const at = nodes.findIndex((node) => node.id === id);
    return sample.chain.nodes[at]?.name;
  };
  expect(links.map(({ causeId, effectId }) => `${said(causeId)} > ${said(effectId)}`).sort()).toEqual(
    sample.chain.links.map(({ cause, effect }) => `${cause} > ${effect}`).sort(),
  );
});

test('leaves nothing open but findings that no mark shows yet', async () => {
  const teardownCase = await engine.ask('cases.read', { caseId });
  const { id, version } = teardownCase.pack;
  const { findings, marks } = await engine.ask('bench.read', { caseId });
  const custody = await engine.ask('custody.list', { caseId });
  const photos = await engine.ask('photos.list', { caseId });
  expect(custodyGaps(custody)).toEqual([]);
  const points = openPoints({
    teardownCase,
    custody,
    photos,
    findings,
    marks,
    chain: await engine.ask('chain.read', { caseId }),
    pack: await engine.ask('machine-kinds.read', { id, version }),
  });
  const shown = new Set(marks.map(({ findingId }) => findingId));
  const unshown = findings
    .filter((one) => one.presence === 'present' && one.kind !== 'not-present' && !shown.has(one.id))
    .map(({ number }) => number);
  // Every photo of a sample case says what it is.
  const made = openPointTexts.photosSynthetic(photos.length);
  const allowed = [made, ...(unshown.length === 0 ? [] : [openPointTexts.findings.withoutMark(unshown)])];
  expect(points.map(({ sentence }) => sentence)).toEqual(allowed);
});
