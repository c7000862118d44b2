/** What the engine tells reaches every page in order, once, by either carrier; a page that missed some is told so. */
import fc from 'fast-check';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';

import type { AppEvent, NumberedEvent } from '#shared-types/events.ts';
import type { CaseId } from '#shared-types/ids.ts';

import { createEventHub, type EventHub } from '../../electron/processes/event-hub.ts';
import { createBridge } from '../../electron/shell/bridge.ts';
import { eventChannel } from '../../electron/shell/bridge-channels.ts';
import { openDesktop, type DesktopUnderTest } from '../support/both-carriers.ts';
import { goThrough } from '../support/exchanges.ts';
import { enterLoopbackHost, type LoopbackClient } from '../support/loopback-client.ts';
import { markedJpeg } from '../support/pictures/marked-picture.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import { listenOverHttp } from './event-source.ts';
import { openHost, type HostUnderTest } from './host-under-test.ts';

const shelf: AppEvent = { name: 'shelf-changed', payload: {} };
const about = (number: number): AppEvent => ({
  name: 'case-changed',
  payload: { caseId: `00000000-0000-4000-8000-${String(number).padStart(12, '0')}` as CaseId, what: 'bench' },
});
const sequences = (events: readonly NumberedEvent[]) => events.map(({ sequence }) => sequence);

function received(hub: EventHub, after: number): NumberedEvent[] {
  const events: NumberedEvent[] = [];
  hub.subscribe(after, (event) => events.push(event));
  return events;
}

describe('the hub', () => {
  test('numbers what it tells from 1 on, and tells a page that saw nothing only what comes', () => {
    const hub = createEventHub();
    hub.publish(shelf);
    const events = received(hub, 0);
    hub.publish(about(1));
    hub.publish(shelf);
    expect(events).toEqual([
      { ...about(1), sequence: 2 },
      { ...shelf, sequence: 3 },
    ]);
  });

  test('tells a page that comes back what it missed, and then what comes', () => {
    const hub = createEventHub();
    for (const number of [1, 2, 3, 4]) hub.publish(about(number));
    const events = received(hub, 2);
    hub.publish(about(5));
    expect(events).toEqual([3, 4, 5].map((number) => ({ ...about(number), sequence: number })));
    expect(received(hub, 5)).toEqual([]);
  });

  test('tells a page that missed more than is kept to read everything anew, and nothing old', () => {
    const hub = createEventHub(3);
    for (const number of [1, 2, 3, 4, 5]) hub.publish(about(number));
    expect(received(hub, 2)).toEqual([3, 4, 5].map((number) => ({ ...about(number), sequence: number })));
    const missed = received(hub, 1);
    hub.publish(about(6));
    expect(missed).toEqual([
      { name: 'resync', payload: {}, sequence: 5 },
      { ...about(6), sequence: 6 },
    ]);
  });

  test('tells a page of an earlier run, whose count is ahead, to read everything anew', () => {
    expect(received(createEventHub(), 7)).toEqual([{ name: 'resync', payload: {}, sequence: 0 }]);
    const hub = createEventHub();
    hub.publish(shelf);
    expect(received(hub, 2)).toEqual([{ name: 'resync', payload: {}, sequence: 1 }]);
  });

  test('never leaves a gap: each page sees every number after the last, or is told to read anew', () => {
    const step = fc.oneof(
      { weight: 5, arbitrary: fc.constant({ do: 'publish' } as const) },
      { weight: 2, arbitrary: fc.record({ do: fc.constant('leave' as const), page: fc.nat({ max: 2 }) }) },
      { weight: 2, arbitrary: fc.record({ do: fc.constant('come' as const), page: fc.nat({ max: 2 }) }) },
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        const hub = createEventHub(4);
        const pages = [0, 1, 2].map(() => ({ last: 0, here: null as (() => void) | null }));
        let published = 0;
        const come = (page: (typeof pages)[number]) => {
          page.here ??= hub.subscribe(page.last, (event) => {
            if (event.name === 'resync') expect(event.sequence).toBe(published);
            else if (page.last !== 0) expect(event.sequence).toBe(page.last + 1);
            page.last = event.sequence;
          });
        };
        pages.forEach(come);
        for (const one of steps) {
          if (one.do === 'publish') {
            published += 1;
            hub.publish(shelf);
          } else {
            const page = pages[one.page];
            if (page === undefined) continue;
            if (one.do === 'come') come(page);
            else {
              page.here?.();
              page.here = null;
            }
          }
        }
        for (const page of pages)
          if (page.here !== null && page.last !== 0) expect(page.last).toBe(published);
      }),
      { numRuns: 300, seed: 4711 },
    );
  });
});

describe('over HTTP', () => {
  let folder: string;
  let under: HostUnderTest;
  let client: LoopbackClient;
  let pages = 0;
  const left = new Set<() => void>();

  beforeAll(async () => {
    folder = makeTemporaryFolder();
    under = await openHost(folder, (hub) => ({
      ...hub,
      subscribe(after, receive) {
        const end = hub.subscribe(after, receive);
        pages += 1;
        return () => {
          end();
          pages -= 1;
          for (const tell of [...left]) tell();
        };
      },
    }));
    await under.link.started;
    client = await enterLoopbackHost(under.host.address);
  });
  afterAll(async () => {
    await under.close();
    removeFolder(folder);
  });

  const listen = (headers: Record<string, string> = {}, path?: string) =>
    listenOverHttp(under.host.port, { ...client.headers, ...headers }, path);

  /** Settles when the host has noticed that each page is gone. */
  const nobodyListens = () =>
    new Promise<void>((resolve) => {
      const tell = () => {
        if (pages > 0) return;
        left.delete(tell);
        resolve();
      };
      left.add(tell);
      tell();
    });

  /** What the host's hub has told so far: the next event's number less one. */
  const told = async () => {
    const page = await listen();
    under.hub.publish(shelf);
    const [event] = await page.until((events) => events.length === 1);
    page.close();
    return event?.sequence ?? 0;
  };

  test('a page receives what happens from then on, with its number as the id', async () => {
    const before = await told();
    const page = await listen();
    under.hub.publish(about(1));
    under.hub.publish({ ...about(2) });
    await page.until((events) => events.length === 2);
    expect(page.received).toEqual([
      { ...about(1), sequence: before + 1 },
      { ...about(2), sequence: before + 2 },
    ]);
    expect(page.lastEventId()).toBe(String(before + 2));
    page.close();
  });

  test('a page that was cut off comes back with the last id and receives what it missed', async () => {
    const page = await listen();
    under.hub.publish(about(1));
    await page.until((events) => events.length === 1);
    page.close();
    under.hub.publish(about(2));
    under.hub.publish(about(3));
    const back = await listen({ 'last-event-id': page.lastEventId() });
    under.hub.publish(about(4));
    await back.until((events) => events.length === 3);
    const last = Number(page.lastEventId());
    expect(sequences(back.received)).toEqual([last + 1, last + 2, last + 3]);
    expect(back.received[0]).toMatchObject(about(2));
    back.close();
    // A page that reloads has no such header; it says so in the address.
    const reloaded = await listen({}, `/events?after=${page.lastEventId()}`);
    await reloaded.until((events) => events.length === 3);
    expect(sequences(reloaded.received)).toEqual(sequences(back.received));
    reloaded.close();
  });

  test('a page that missed too much is told to read everything anew', async () => {
    const last = await told();
    for (let number = 0; number < 501; number += 1) under.hub.publish(shelf);
    const page = await listen({ 'last-event-id': String(last) });
    await page.until((events) => events.length > 0);
    expect(page.received).toEqual([{ name: 'resync', payload: {}, sequence: last + 501 }]);
    page.close();
    const fromElsewhere = await listen({ 'last-event-id': String(last + 10_000) });
    await fromElsewhere.until((events) => events.length > 0);
    expect(fromElsewhere.received[0]?.name).toBe('resync');
    fromElsewhere.close();
  });

  test('a page that is gone is forgotten', async () => {
    await nobodyListens();
    const page = await listen();
    expect(pages).toBe(1);
    page.close();
    await nobodyListens();
    expect(pages).toBe(0);
  });

  test('an ill-formed id counts as none', async () => {
    const page = await listen({ 'last-event-id': 'x' });
    under.hub.publish(shelf);
    await page.until((events) => events.length === 1);
    expect(page.received[0]?.name).toBe('shelf-changed');
    page.close();
  });
});

describe('both carriers', () => {
  /** What is told of, and of jobs their beginning and end: how often progress is told is a matter of time. */
  function names(events: readonly NumberedEvent[]): string[] {
    const seen = new Set<string>();
    return events.flatMap((event) => {
      if (event.name === 'case-changed') return [`case-changed ${event.payload.what}`];
      if (event.name === 'engine-state') return [`engine-state ${event.payload.state}`];
      if (event.name !== 'job-changed') return [event.name];
      const { id, kind, state } = event.payload.job;
      const told = `${id} ${state}`;
      if (seen.has(told)) return [];
      seen.add(told);
      return [`job-changed ${kind} ${state}`];
    });
  }

  test('tell the same of the same work, in the same order, each once', async () => {
    const folder = makeTemporaryFolder();
    const picture = join(folder, 'front-face.jpg');
    writeFileSync(picture, await markedJpeg());
    const under = await openHost(join(folder, 'loopback'));
    const desktop: DesktopUnderTest = openDesktop(join(folder, 'desktop'));
    onTestFinished(async () => {
      await under.close();
      await desktop.close();
      removeFolder(folder);
    });
    await Promise.all([under.link.started, desktop.link.started]);
    const client = await enterLoopbackHost(under.host.address);
    const told = received(under.hub, 0);
    const page = await listenOverHttp(under.host.port, client.headers);
    const overDesktop: NumberedEvent[] = [];
    const sentSoFar = () => desktop.line.messages.filter(({ channel }) => channel === eventChannel).length;
    const sentBefore = sentSoFar();
    const before = desktop.events.length;
    createBridge(desktop.line.renderer, () => '').listen((event) => overDesktop.push(event));

    await goThrough(client, picture);
    await goThrough(desktop, picture);

    await page.until((events) => events.length === told.length);
    expect(page.received).toEqual(told);
    expect(overDesktop).toEqual(desktop.events.slice(before));
    expect(names(overDesktop)).toEqual(names(page.received));
    expect(names(page.received)).toEqual(
      expect.arrayContaining([
        'settings-changed',
        'shelf-changed',
        'job-changed photo-import running',
        'case-changed photos',
        'job-changed photo-import done',
        'case-changed bench',
        'job-changed report done',
        'case-changed fields',
      ]),
    );
    // The page listened a second time, as after a reload: the line it had before was ended.
    expect(sentSoFar() - sentBefore).toBe(overDesktop.length);
  });
});
