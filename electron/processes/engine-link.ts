/**
 * A carrier's hold on the engine process: starts it, calls it, and starts it again when it dies. Whoever waited for
 * an answer then is told so; nobody waits for ever. What no engine was given yet is kept for the next one.
 */
import { AppError, type Envelope } from '#shared-types/errors.ts';
import type { AppEvent, EngineState } from '#shared-types/events.ts';
import type { LibraryName } from '#shared-types/library.ts';

import type { ChildPort, ProcessBroker } from './child-port.ts';
import type { CarrierAsk, EngineConfig, FromEngine, ToEngine } from './engine-messages.ts';
import { createRelay } from './relayed-broker.ts';

export type EngineLink = {
  call(channel: string, request: unknown): Promise<Envelope<unknown>>;
  ask<Value>(ask: CarrierAsk): Promise<Envelope<Value>>;
  /** Settles when the engine is ready for the first time, or cannot be started. */
  readonly started: Promise<Envelope<null>>;
  /** Settles when the engine is gone; calls from now on are answered `engine-stopped`. */
  close(): Promise<void>;
};

export type EngineLinkOptions = {
  readonly broker: ProcessBroker;
  /** Where each of the two libraries lies. */
  readonly folders: Readonly<Record<LibraryName, string>>;
  readonly carrier: EngineConfig['carrier'];
  readonly library: LibraryName;
  readonly publish: (event: AppEvent) => void;
};

/** After so many starts in a row that ended before the engine was ready, starting it again is given up. */
const mostVainStarts = 3;

type Settle = (envelope: Envelope<unknown>) => void;
type Question = { readonly id: number; readonly message: ToEngine; readonly settle: Settle };

export function createEngineLink(options: EngineLinkOptions): EngineLink {
  /** What the running engine was asked and has not answered. */
  const asked = new Map<number, Settle>();
  /** What no engine was asked yet. */
  const held: Question[] = [];
  const started = Promise.withResolvers<Envelope<null>>();
  let library = options.library;
  let running: ChildPort | null = null;
  let state: EngineState = 'starting';
  let stoppedBy: AppError | null = null;
  let vainStarts = 0;
  let lastId = 0;
  let wasReady = false;
  let changingLibrary = false;
  let closing: PromiseWithResolvers<void> | null = null;

  const tellState = (next: EngineState, error: AppError | null = null) => {
    state = next;
    options.publish({ name: 'engine-state', payload: { state: next, error: error?.toShape() ?? null } });
  };

  function start() {
    const port = options.broker.start('engine');
    const relay = createRelay(options.broker, (message) => {
      port.send(message);
    });
    running = port;
    port.onMessage((message) => {
      // What a dead engine said may arrive after its death was told: its successor has not said it.
      if (running === port) receive(message as FromEngine, relay);
    });
    port.onExit(({ code, signal }) => {
      relay.endAll();
      onExit(signal === null ? `exit code ${String(code)}` : `signal ${signal}`);
    });
    port.send({
      kind: 'start',
      config: { library, folder: options.folders[library], carrier: options.carrier },
    } satisfies ToEngine);
  }

  function receive(message: FromEngine, relay: ReturnType<typeof createRelay>) {
    switch (message.kind) {
      case 'ready':
        onReady();
        return;
      case 'failed':
        giveUp(AppError.fromShape(message.error));
        running?.send({ kind: 'close' } satisfies ToEngine);
        return;
      case 'answer': {
        const settle = asked.get(message.id);
        asked.delete(message.id);
        settle?.(message.envelope);
        return;
      }
      case 'event':
        options.publish(message.event);
        return;
      case 'open-library':
        library = message.library;
        changingLibrary = true;
        running?.send({ kind: 'close' } satisfies ToEngine);
        return;
      default:
        relay.receive(message);
    }
  }

  function onReady() {
    vainStarts = 0;
    tellState('ready');
    // Another library, or what a dead engine wrote and could not tell any more: every window reads anew.
    if (wasReady) options.publish({ name: 'resync', payload: {} });
    wasReady = true;
    for (const question of held.splice(0)) pass(question);
    started.resolve({ ok: true, value: null });
  }

  function onExit(how: string) {
    running = null;
    const stopped = new AppError('engine-stopped', {}, { retryable: true });
    fail(asked, stopped);
    if (closing) {
      failHeld(stopped);
      closing.resolve();
      return;
    }
    if (state === 'stopped') return;
    // An engine that went to make room for the other library, or after it was ready, did not start in vain.
    vainStarts = changingLibrary || state === 'ready' ? 0 : vainStarts + 1;
    changingLibrary = false;
    if (vainStarts >= mostVainStarts) {
      giveUp(new AppError('engine-unavailable', { reason: how }));
      return;
    }
    tellState('restarting');
    start();
  }

  function giveUp(error: AppError) {
    stoppedBy = error;
    fail(asked, error);
    failHeld(error);
    tellState('stopped', error);
    started.resolve({ ok: false, error: error.toShape() });
  }

  function failHeld(error: AppError) {
    for (const { settle } of held.splice(0)) settle({ ok: false, error: error.toShape() });
  }

  function pass({ id, message, settle }: Question) {
    asked.set(id, settle);
    running?.send(message);
  }

  function request(make: (id: number) => ToEngine): Promise<Envelope<unknown>> {
    if (stoppedBy) return Promise.resolve({ ok: false, error: stoppedBy.toShape() });
    return new Promise((settle) => {
      const id = (lastId += 1);
      const question = { id, message: make(id), settle };
      if (state === 'ready' && !changingLibrary) pass(question);
      else held.push(question);
    });
  }

  function close(): Promise<void> {
    if (closing) return closing.promise;
    closing = Promise.withResolvers<void>();
    stoppedBy ??= new AppError('engine-stopped', {}, { retryable: true });
    if (running) running.send({ kind: 'close' } satisfies ToEngine);
    else closing.resolve();
    return closing.promise;
  }

  start();
  return {
    started: started.promise,
    call: (channel, body) => request((id) => ({ kind: 'call', id, channel, request: body })),
    ask: <Value>(ask: CarrierAsk) => request((id) => ({ kind: 'ask', id, ask })) as Promise<Envelope<Value>>,
    close,
  };
}

function fail(asked: Map<number, Settle>, error: AppError): void {
  const settlers = [...asked.values()];
  asked.clear();
  for (const settle of settlers) settle({ ok: false, error: error.toShape() });
}
