import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parseFault } from '../../../electron/processes/fault-point.ts';

const script = fileURLToPath(new URL('../../support/faults/three-steps.ts', import.meta.url));

/** Runs a process that reaches `work.step` three times, with two keys, and prints a line after each. */
function runWith(fault: string | null) {
  const environment = { ...process.env };
  delete environment.TEARDOWN_DOCKET_FAULT;
  if (fault !== null) environment.TEARDOWN_DOCKET_FAULT = fault;
  const child = spawnSync(process.execPath, [script], { encoding: 'utf8', env: environment });
  return { lines: child.stdout.split('\n').filter((line) => line !== ''), signal: child.signal };
}

describe('a fault point', () => {
  const all = ['ba7816bf one', 'e3b0c442 two', 'ba7816bf three'];

  it('does nothing without the variable, and nothing for another step', () => {
    expect(runWith(null)).toEqual({ lines: all, signal: null });
    expect(runWith('')).toEqual({ lines: all, signal: null });
    expect(runWith('other.step:kill@1')).toEqual({ lines: all, signal: null });
    expect(runWith('work.step:kill@4')).toEqual({ lines: all, signal: null });
    expect(runWith('work.step:kill@cdc76e5c9914')).toEqual({ lines: all, signal: null });
  });

  it('kills at the n-th time, or at a key, before the next step', () => {
    expect(runWith('work.step:kill@3')).toEqual({ lines: all.slice(0, 2), signal: 'SIGKILL' });
    expect(runWith('work.step:kill@e3b0c44298fc')).toEqual({ lines: all.slice(0, 1), signal: 'SIGKILL' });
    expect(runWith('work.step:kill@ba7816bf')).toEqual({ lines: [], signal: 'SIGKILL' });
  });

  it.each([
    ['import.original-kept:kill@2', { step: 'import.original-kept', action: 'kill', at: { count: 2 } }],
    [
      'decoder.decode:hang@12345678',
      { step: 'decoder.decode', action: 'hang', at: { keyPrefix: '12345678' } },
    ],
  ])('reads %s', (text, fault) => {
    expect(parseFault(text)).toEqual(fault);
  });

  it.each([
    '',
    'step',
    'step:kill',
    'step:kill@0',
    'step:kill@abc',
    'step:erase@1',
    'step:kill@1,2',
    `s:kill@${'a'.repeat(65)}`,
  ])('refuses %j', (text) => {
    expect(() => parseFault(text)).toThrow('TEARDOWN_DOCKET_FAULT');
  });
});
