/** The link's word to its callers: each question is answered once, by the engine that was asked or by the link itself. */
import { describe, expect, it } from 'vitest';

import { AppError } from '#shared-types/errors.ts';
import type { AppEvent } from '#shared-types/events.ts';

import { createEngineLink } from '../../../electron/processes/engine-link.ts';
import { playedProcesses, type PlayedProcess } from './played-processes.ts';

const ready = { kind: 'ready' };
const locked = new AppError('library-locked', { program: 'p', pid: 7, host: 'h', since: 's' }).toShape();
const stopped = { ok: false, error: { code: 'engine-stopped', retryable: true } };

function linked() {
  const { broker, started } = playedProcesses();
  const events: AppEvent[] = [];
  const link = createEngineLink({
    broker,
    folders: { own: '/own', samples: '/samples' },
    carrier: 'loopback',
    library: 'own',
    publish: (event) => events.push(event),
  });
  const told = () =>
    events.map((event) => (event.name === 'engine-state' ? event.payload.state : event.name));
  const engine = (nth: number): PlayedProcess => {
    const found = started.filter(({ entry }) => entry === 'engine')[nth - 1];
    if (!found) throw new Error(`engine ${nth} was not started`);
    return found;
  };
  const engines = () => started.filter(({ entry }) => entry === 'engine').length;
  return { link, started, engine, engines, told, events };
}

type Call = { kind: string; id: number; channel: string };
const callsOf = (engine: PlayedProcess) => (engine.sent as Call[]).filter(({ kind }) => kind === 'call');
const answer = (engine: PlayedProcess, call: Call | undefined, value: unknown) => {
  engine.say({ kind: 'answer', id: call?.id, envelope: { ok: true, value } });
};

describe('a question', () => {
  it('waits for the engine to be ready, and its answer finds whoever asked', async () => {
    const { link, engine } = linked();
    const [one, two] = [link.call('cases.list', {}), link.call('jobs.list', {})];
    expect(engine(1).sent.map((message) => (message as Call).kind)).toEqual(['start']);
    engine(1).say(ready);
    const [first, second] = callsOf(engine(1));
    expect([first?.channel, second?.channel]).toEqual(['cases.list', 'jobs.list']);
    answer(engine(1), second, 'jobs');
    answer(engine(1), first, 'cases');
    expect(await one).toEqual({ ok: true, value: 'cases' });
    expect(await two).toEqual({ ok: true, value: 'jobs' });
    expect(await link.started).toEqual({ ok: true, value: null });
  });

  it('that the engine was asked when it died is told so, and never asked again', async () => {
    const { link, engine } = linked();
    engine(1).say(ready);
    const asked = link.call('cases.open', {});
    engine(1).end();
    expect(await asked).toMatchObject(stopped);
    engine(2).say(ready);
    expect(callsOf(engine(2))).toEqual([]);
  });

  it('that no engine was asked yet is kept through deaths, and asked once', async () => {
    const { link, engine } = linked();
    const held = link.call('cases.open', {});
    engine(1).end();
    engine(2).end();
    engine(3).say(ready);
    expect([callsOf(engine(1)), callsOf(engine(2))]).toEqual([[], []]);
    expect(callsOf(engine(3))).toHaveLength(1);
    answer(engine(3), callsOf(engine(3))[0], 'opened');
    expect(await held).toEqual({ ok: true, value: 'opened' });
  });

  it('is not answered, nor anything begun, by what a dead engine said too late', async () => {
    const { link, engine, started, told } = linked();
    engine(1).end();
    const held = link.call('cases.list', {});
    engine(1).say(ready);
    engine(1).say({ kind: 'child-start', child: 1, entry: 'decoder' });
    engine(1).say({ kind: 'event', event: { name: 'shelf-changed', payload: {} } });
    expect(told()).toEqual(['restarting']);
    expect(started).toHaveLength(2);
    expect(callsOf(engine(2))).toEqual([]);
    engine(2).say(ready);
    answer(engine(2), callsOf(engine(2))[0], 'from the living');
    expect(await held).toEqual({ ok: true, value: 'from the living' });
  });
});

describe('every window', () => {
  it('is told of a death and a new engine, and to read anew what may have been written untold', () => {
    const { engine, told } = linked();
    engine(1).say(ready);
    engine(1).end();
    engine(2).say(ready);
    expect(told()).toEqual(['ready', 'restarting', 'ready', 'resync']);
  });
});

describe('an engine that cannot open the library', () => {
  it('is not started again: whoever asks is told why, at once', async () => {
    const { link, engine, engines, told } = linked();
    const held = link.call('cases.list', {});
    engine(1).say({ kind: 'failed', error: locked });
    const refused = { ok: false, error: locked };
    expect(await held).toEqual(refused);
    expect(await link.started).toEqual(refused);
    expect(await link.ask({ ask: 'picture', address: 'x' })).toEqual(refused);
    expect(engine(1).sent.at(-1)).toEqual({ kind: 'close' });
    engine(1).end({ code: 0, signal: null });
    expect(engines()).toBe(1);
    expect(told()).toEqual(['stopped']);
    await link.close();
  });
});

describe('the other library', () => {
  it('is opened by an engine of its own; questions asked meanwhile go to that one', async () => {
    const { link, engine, told } = linked();
    engine(1).say(ready);
    const opening = link.call('library.open', { library: 'samples' });
    engine(1).say({ kind: 'open-library', library: 'samples' });
    answer(engine(1), callsOf(engine(1))[0], null);
    expect(await opening).toEqual({ ok: true, value: null });
    const meanwhile = link.call('cases.list', {});
    expect(engine(1).sent.at(-1)).toEqual({ kind: 'close' });
    engine(1).end({ code: 0, signal: null });
    expect(engine(2).sent[0]).toMatchObject({ config: { library: 'samples', folder: '/samples' } });
    engine(2).say(ready);
    answer(engine(2), callsOf(engine(2))[0], 'samples');
    expect(await meanwhile).toEqual({ ok: true, value: 'samples' });
    expect(told()).toEqual(['ready', 'restarting', 'ready', 'resync']);
  });

  it('whose engine dies at every start is given up like any other', () => {
    const { engine, engines, told } = linked();
    engine(1).say(ready);
    engine(1).say({ kind: 'open-library', library: 'samples' });
    engine(1).end({ code: 0, signal: null });
    for (const nth of [2, 3, 4]) engine(nth).end();
    expect(engines()).toBe(4);
    expect(told().at(-1)).toBe('stopped');
  });
});

describe('closing', () => {
  it('asks the engine to close, waits for its end, and answers every question', async () => {
    const { link, engine, engines } = linked();
    engine(1).say(ready);
    const before = link.call('cases.list', {});
    const [one, two] = [link.close(), link.close()];
    const after = link.call('cases.list', {});
    expect(await after).toMatchObject(stopped);
    expect(callsOf(engine(1))).toHaveLength(1);
    expect(engine(1).sent.at(-1)).toEqual({ kind: 'close' });
    engine(1).end({ code: 0, signal: null });
    expect(await before).toMatchObject(stopped);
    await Promise.all([one, two]);
    expect(engines()).toBe(1);
  });

  it('before the engine was ready answers what waits for it', async () => {
    const { link, engine } = linked();
    const held = link.call('cases.list', {});
    const closed = link.close();
    engine(1).end({ code: 0, signal: null });
    expect(await held).toMatchObject(stopped);
    await closed;
  });
});

describe('an engine’s children', () => {
  it('are started, spoken to and ended for it, and end with it', () => {
    const { engine, started } = linked();
    engine(1).say(ready);
    engine(1).say({ kind: 'child-start', child: 1, entry: 'decoder' });
    engine(1).say({ kind: 'child-start', child: 2, entry: 'decoder' });
    engine(1).say({ kind: 'child-send', child: 2, message: { order: 1 } });
    const [, first, second] = started;
    expect(second?.sent).toEqual([{ order: 1 }]);
    second?.say({ done: 1 });
    expect(engine(1).sent.at(-1)).toEqual({ kind: 'child-message', child: 2, message: { done: 1 } });
    engine(1).say({ kind: 'child-kill', child: 2 });
    expect([first?.killed(), second?.killed()]).toEqual([false, true]);
    engine(1).end();
    expect(first?.killed()).toBe(true);
  });
});
