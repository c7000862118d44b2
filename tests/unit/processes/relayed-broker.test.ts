/** Both ends of the relay, back to back: a child of the engine seen through its parent. */
import { describe, expect, it } from 'vitest';

import type { ExitReport } from '../../../electron/processes/child-port.ts';
import type { ToEngine } from '../../../electron/processes/engine-messages.ts';
import { createRelay, createRelayedBroker } from '../../../electron/processes/relayed-broker.ts';
import { playedProcesses } from './played-processes.ts';

function relayed() {
  const { broker, started } = playedProcesses();
  const toEngine = (message: ToEngine) => {
    if (message.kind === 'child-message' || message.kind === 'child-exit') engineEnd.receive(message);
  };
  const relay = createRelay(broker, toEngine);
  const engineEnd = createRelayedBroker((message) => {
    if (message.kind === 'child-start' || message.kind === 'child-send' || message.kind === 'child-kill') {
      relay.receive(message);
    }
  });
  return { engineEnd, relay, started };
}

function watched(port: ReturnType<ReturnType<typeof relayed>['engineEnd']['broker']['start']>) {
  const heard: unknown[] = [];
  const ends: ExitReport[] = [];
  const ended = new Promise<void>((resolve) => {
    port.onExit((exit) => {
      ends.push(exit);
      resolve();
    });
  });
  port.onMessage((message) => heard.push(message));
  return { heard, ends, ended };
}

describe('a relayed child', () => {
  it('hears and is heard, apart from its siblings, and its end is told once', () => {
    const { engineEnd, started } = relayed();
    const [one, other] = [engineEnd.broker.start('decoder'), engineEnd.broker.start('decoder')];
    const [seen, seenOther] = [watched(one), watched(other)];
    one.send('to one');
    other.send('to other');
    expect(started.map(({ sent }) => sent)).toEqual([['to one'], ['to other']]);
    started[0]?.say('from one');
    expect([seen.heard, seenOther.heard]).toEqual([['from one'], []]);
    started[0]?.end({ code: null, signal: 'SIGSEGV' });
    started[0]?.say('too late');
    expect(seen.ends).toEqual([{ code: null, signal: 'SIGSEGV' }]);
    expect(seen.heard).toEqual(['from one']);
    expect(seenOther.ends).toEqual([]);
  });

  it('of a parent that is gone has ended as soon as it is killed or started', async () => {
    const { engineEnd, started } = relayed();
    const running = engineEnd.broker.start('decoder');
    const seen = watched(running);
    engineEnd.loseParent();
    running.kill();
    // Not within the call: whoever kills it first says why.
    expect(seen.ends).toEqual([]);
    await seen.ended;
    const late = watched(engineEnd.broker.start('decoder'));
    await late.ended;
    expect(seen.ends).toEqual([{ code: null, signal: null }]);
    expect(late.ends).toEqual([{ code: null, signal: null }]);
    expect(started).toHaveLength(1);
    expect(started[0]?.killed()).toBe(false);
  });
});
