/** An engine that does not come up is started three times and no more; nobody waits for it for ever. */
import { describe, expect, test } from 'vitest';

import { temporaryFolder } from '../support/temporary-folder.ts';
import { codeOf, openProgram } from './program-under-test.ts';

const diesAtOnce = 'engine.starting:kill@1';

describe('an engine that dies at every start', () => {
  test('is given up after three, and calls are answered at once then', async () => {
    const program = openProgram(temporaryFolder(), (entry) => (entry === 'engine' ? diesAtOnce : null));
    const waiting = program.answer('cases.list', {});
    const stopped = await program.state('stopped');
    expect(program.engineStarts()).toBe(3);
    expect(program.engineStates()).toEqual(['restarting', 'restarting', 'stopped']);
    expect(stopped).toMatchObject({
      payload: { error: { code: 'engine-unavailable', details: { reason: 'signal SIGKILL' } } },
    });
    expect(codeOf(await waiting)).toBe('engine-unavailable');
    expect(codeOf(await program.started)).toBe('engine-unavailable');
    expect(codeOf(await program.answer('cases.list', {}))).toBe('engine-unavailable');
    await program.close();
    expect(program.engineStarts()).toBe(3);
  });

  test('after it once worked is given up after three more', async () => {
    const program = openProgram(temporaryFolder(), (entry, start) => {
      if (entry !== 'engine') return null;
      return start === 1 ? 'bench.changed:kill@1' : diesAtOnce;
    });
    const caseId = await program.openCase();
    const findingId = 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a01';
    const fields = {
      ...{ component: 'thrust-bearing', position: null, zone: null, kind: 'worn-away', class: 'undecided' },
      ...{ presence: 'present', severity: null, extent: null, bend: null, note: '' },
    };
    const change = { change: 'put-finding', findingId, fields, revision: null };
    expect(codeOf(await program.answer('bench.commit', { caseId, changes: [change] }))).toBe(
      'engine-stopped',
    );
    await program.state('stopped');
    expect(program.engineStarts()).toBe(4);
    expect(program.engineStates()).toEqual(['ready', 'restarting', 'restarting', 'restarting', 'stopped']);
    expect(codeOf(await program.answer('cases.list', {}))).toBe('engine-unavailable');
  });
});
