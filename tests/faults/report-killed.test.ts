/**
 * The engine dies while a report is gathered, its plates are made, its document is made, kept and handed out. A document
 * is for this run of the program: none is left half, the job says how it ended, and asking again makes it.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';

import type { DeliveryToken } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

import type { ServedFile } from '../../electron/processes/engine-messages.ts';
import { valueOf } from '../support/exchanges.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { makeExampleLibrary } from './example-case.ts';
import { codeOf, endOf, openProgram } from './program-under-test.ts';
import { contentOf, expectWholeLibrary, tablesUnlike } from './whole-library.ts';

/** Files of the plates that are kept. */
function platesOf(library: string): string[] {
  const folder = join(library, 'plates');
  if (!existsSync(folder)) return [];
  return readdirSync(folder).flatMap((shelf) =>
    readdirSync(join(folder, shelf)).map((name) => join(folder, shelf, name)),
  );
}

/** What the job says after the engine died at that step, and what its document answers. */
const steps = [
  ['plate.made', 'interrupted'],
  ['copy.synced', 'interrupted'],
  ['plate.kept', 'interrupted'],
  ['report.gathered', 'interrupted'],
  ['report.laid-out', 'interrupted'],
  ['report.written', 'interrupted'],
  ['report.made', 'interrupted'],
  ['job.ended', 'done'],
  ['document.found', 'done'],
] as const;

test('an engine killed at every step of a report, one after the other', async () => {
  const folder = temporaryFolder();
  const { caseId } = await makeExampleLibrary(folder);
  const program = openProgram(folder, (entry, start) => {
    const step = steps[start - 1];
    return entry === 'engine' && step !== undefined ? `${step[0]}:kill@1` : null;
  });
  await program.started;
  const before = contentOf(program.library);
  const report = () => program.call('reports.make', { caseId, paper: 'A4' });
  const documentOf = ({ document }: Job) =>
    program.ask({ ask: 'document', token: document?.token ?? ('none' as DeliveryToken) });

  for (const [index, [step, state]] of steps.entries()) {
    const job = await endOf(program, report);
    if (step === 'document.found') expect(codeOf(await documentOf(job))).toBe('engine-stopped');
    expect(await program.call('jobs.read', { jobId: job.id }), step).toEqual(job);
    expect(program.engineStarts(), step).toBe(index + 2);
    expect(job, step).toMatchObject({ state, error: null });
    if (state === 'interrupted') expect(job.document, step).toBeNull();
    // One that was done is told to be made again: a document is for one run of the program.
    else expect(codeOf(await documentOf(job)), step).toBe('delivery-gone');
    expect(readdirSync(join(program.library, 'deliveries')), step).toEqual([]);
    expect(readdirSync(join(program.library, 'incoming')), step).toEqual([]);
    const plates = platesOf(program.library);
    expect(plates, step).toHaveLength(step === 'plate.made' || step === 'copy.synced' ? 0 : 1);
    for (const plate of plates) await sharp(plate).stats();
    expect(tablesUnlike(before, contentOf(program.library)), step).toEqual(['job']);
    expect(await expectWholeLibrary(program, caseId), step).toHaveLength(1);
  }

  const made = await endOf(program, report);
  expect(made).toMatchObject({ state: 'done', document: { mediaType: 'application/pdf' } });
  const pdf = readFileSync((valueOf(await documentOf(made)) as ServedFile).file);
  expect(pdf.length).toBe(made.document?.bytes);
  // ISO 32000-1, 7.5.2 and 7.5.5: how a whole file begins and ends.
  expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-');
  expect(pdf.subarray(-8).toString('latin1').trimEnd()).toMatch(/%%EOF$/);
});
