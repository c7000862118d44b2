/** The engine's process: waits for its configuration, then answers until it is told to close or its parent is gone. */
import { AppError } from '#shared-types/errors.ts';

import type { EngineConfig, FromEngine, ToEngine } from '../processes/engine-messages.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { parentPort, whenParentGone } from '../processes/parent-port.ts';
import { createRelayedBroker } from '../processes/relayed-broker.ts';
import { toldError } from '../services/told-error.ts';
import { startEngine, type CloseHow, type Engine } from './engine.ts';

const port = parentPort();
const send = (message: FromEngine) => {
  port.send(message);
};
const relayed = createRelayedBroker(send);
let engine: Engine | null = null;
let closing: Promise<void> | null = null;

port.onMessage((raw) => {
  void receive(raw as ToEngine);
});
whenParentGone(() => {
  relayed.loseParent();
  void close('at once');
});

async function receive(message: ToEngine): Promise<void> {
  switch (message.kind) {
    case 'start':
      await start(message.config);
      return;
    case 'call':
      if (engine) answer(message.id, await engine.call(message.channel, message.request));
      return;
    case 'ask':
      if (engine) answer(message.id, await engine.ask(message.ask));
      return;
    case 'child-message':
    case 'child-exit':
      relayed.receive(message);
      return;
    case 'close':
      await close('in good order');
  }
}

function answer(id: number, envelope: Extract<FromEngine, { kind: 'answer' }>['envelope']): void {
  send({ kind: 'answer', id, envelope });
}

async function start(config: EngineConfig): Promise<void> {
  reachFaultPoint('engine.starting');
  try {
    engine = await startEngine({
      config,
      broker: relayed.broker,
      publish: (event) => {
        send({ kind: 'event', event });
      },
      openLibrary: (library) => {
        send({ kind: 'open-library', library });
      },
    });
    send({ kind: 'ready' });
  } catch (error) {
    const seen = toldError(error, config.folder);
    const isFault = seen.code === 'unexpected';
    const reason = error instanceof Error ? error.message : String(error);
    const told = isFault ? new AppError('engine-unavailable', { reason }) : seen;
    send({ kind: 'failed', error: told.toShape() });
    if (isFault) console.error(error);
  }
}

function close(how: CloseHow): Promise<void> {
  closing ??= closeEngine(how);
  return closing;
}

async function closeEngine(how: CloseHow): Promise<void> {
  await engine?.close(how);
  process.exit(0);
}
