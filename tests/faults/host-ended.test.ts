/** However the program is ended, nothing of it is left running and the library can be opened again. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import type { CaseId } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

import { exchanges, jobEnded, valueOf } from '../support/exchanges.ts';
import { enterLoopbackHost, type LoopbackClient } from '../support/loopback-client.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { startHost, type HostOptions } from './host-process.ts';
import { openProgram } from './program-under-test.ts';
import { smallPictures } from './small-pictures.ts';
import { expectWholeLibrary } from './whole-library.ts';

async function beginImport(client: LoopbackClient, pictures: readonly string[]) {
  await client.call('analysts.add', exchanges['analysts.add']({} as never));
  const opened = await client.call('cases.open', exchanges['cases.open']({} as never));
  const { caseId } = valueOf(opened) as { caseId: CaseId };
  const tokens = [];
  for (const path of pictures) tokens.push(valueOf(await client.takeIn(path)).token);
  const job = valueOf(await client.call('photos.import', { caseId, tokens })) as Job;
  return { caseId, job };
}

/** The program with an import of eight photos under way, over the loopback host; one at least has landed. */
async function programAtWork(options: HostOptions) {
  const folder = temporaryFolder();
  const pictures = await smallPictures(folder, 8);
  const library = join(folder, 'own');
  const host = startHost(library, options);
  const client = await enterLoopbackHost(await host.address);
  const begun = await beginImport(client, pictures);
  // A signal that meets a decoder in its first moment, before it has a process group of its own, is not what is tried.
  while ((valueOf(await client.call('jobs.read', { jobId: begun.job.id })) as Job).items.length === 0);
  return { folder, library, pictures, host, ...begun };
}

type LogLine = { readonly event: string; readonly closedCleanly?: boolean };

function logOf(library: string): LogLine[] {
  const text = readFileSync(join(library, 'log', 'engine.log'), 'utf8');
  return text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as LogLine);
}

describe('a host that is killed in the middle of an import', () => {
  test('takes engine and decoders with it, and leaves whole photos', async () => {
    const { folder, library, pictures, host, caseId, job } = await programAtWork({});
    host.child.kill('SIGKILL');
    // Settles only when the last process that writes to the host's standard error has ended.
    expect((await host.gone).signal).toBe('SIGKILL');
    // The engine, which lived on for a moment, let go of the library itself.
    expect(logOf(library).at(-1)?.event).toBe('engine closed');
    expect(existsSync(join(library, 'library.sqlite-wal'))).toBe(false);

    const program = openProgram(folder);
    const ended = await jobEnded({ call: program.answer }, job.id);
    expect(ended.state).toBeOneOf(['stopped', 'done']);
    expect(ended.items).toHaveLength(8);
    const blamed = ended.items.filter(({ error }) => error !== null && error.code !== 'job-stopped');
    expect(blamed).toEqual([]);
    const photos = await expectWholeLibrary(program, caseId);
    expect(ended.items.filter(({ outcome }) => outcome === 'added')).toHaveLength(photos.length);
    await program.importAll(caseId, pictures);
    expect(await expectWholeLibrary(program, caseId)).toHaveLength(8);
    expect(program.library).toBe(library);
  });
});

describe('Ctrl-C at the terminal, and its end, which reach every process of its group', () => {
  test.each(['SIGINT', 'SIGHUP'])('%s ends it in good order: no photo is blamed', async (signal) => {
    const { folder, library, host, caseId, job } = await programAtWork({ ownGroup: true });
    process.kill(-(host.child.pid ?? 0), signal);
    expect(await host.gone).toMatchObject({ code: 0, errors: '' });
    expect(logOf(library).at(-1)?.event).toBe('engine closed');
    expect(existsSync(join(library, 'library.sqlite-wal'))).toBe(false);

    const program = openProgram(folder);
    const ended = await jobEnded({ call: program.answer }, job.id);
    expect(ended.state).toBeOneOf(['stopped', 'done']);
    expect(ended.items).toHaveLength(8);
    expect(ended.items.filter(({ outcome }) => outcome === 'failed')).toEqual([]);
    await expectWholeLibrary(program, caseId);
    expect(logOf(library).at(-1)).toMatchObject({ event: 'engine started', closedCleanly: true });
  });
});
