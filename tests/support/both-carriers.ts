/** The same program twice, once behind each carrier, each with a library and an engine process of its own. */
import { join } from 'node:path';

import type { Channel } from '#shared-types/api-contract.ts';
import type { TakenIn } from '#shared-types/carrier.ts';
import type { Envelope } from '#shared-types/errors.ts';
import type { NumberedEvent } from '#shared-types/events.ts';

import { openLoopbackHost } from '../../electron/host/loopback-host.ts';
import { createEngineLink, type EngineLink } from '../../electron/processes/engine-link.ts';
import { createEventHub, type EventHub } from '../../electron/processes/event-hub.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';
import { createBridge } from '../../electron/shell/bridge.ts';
import { pageOrigin } from '../../electron/shell/bridge-channels.ts';
import { registerChannels } from '../../electron/shell/registration.ts';
import { enterLoopbackHost } from './loopback-client.ts';
import { createRecordedLine, type RecordedLine } from './recorded-line.ts';

export type CarrierUnderTest = {
  readonly name: 'loopback' | 'desktop';
  call(channel: Channel, request: unknown): Promise<Envelope<unknown>>;
  takeIn(path: string): Promise<Envelope<TakenIn>>;
  readonly events: readonly NumberedEvent[];
  readonly link: EngineLink;
  close(): Promise<void>;
};

type Behind = { readonly hub: EventHub; readonly link: EngineLink; readonly events: NumberedEvent[] };

function engineBehind(folder: string, carrier: 'loopback' | 'desktop'): Behind {
  const hub = createEventHub();
  const events: NumberedEvent[] = [];
  hub.subscribe(0, (event) => events.push(event));
  const link = createEngineLink({
    broker: createForkBroker(),
    folders: { own: join(folder, 'own'), samples: join(folder, 'samples') },
    carrier,
    library: 'own',
    publish: hub.publish,
  });
  return { hub, link, events };
}

export async function openLoopback(folder: string): Promise<CarrierUnderTest> {
  const { hub, link, events } = engineBehind(folder, 'loopback');
  const host = await openLoopbackHost({ link, hub, uploadFolder: join(folder, 'uploads'), port: 0 });
  const client = await enterLoopbackHost(host.address);
  return {
    name: 'loopback',
    call: client.call,
    takeIn: client.takeIn,
    events,
    link,
    async close() {
      await host.close();
      await link.close();
    },
  };
}

export type DesktopUnderTest = CarrierUnderTest & { readonly line: RecordedLine; readonly saved: string[] };

/** A dropped file as the page holds it: the path is only known to whoever may ask the runtime for it. */
type PageFile = { readonly name: string; readonly size: number; readonly path: string };

export function openDesktop(folder: string): DesktopUnderTest {
  const { hub, link, events: published } = engineBehind(folder, 'desktop');
  const line = createRecordedLine(`${pageOrigin}/`);
  const saved: string[] = [];
  registerChannels(line.main, {
    link,
    hub,
    saveAs: (document) => {
      saved.push(document.file);
      return Promise.resolve(true);
    },
  });
  const bridge = createBridge<PageFile>(line.renderer, (file) => file.path);
  const events: NumberedEvent[] = [];
  bridge.listen((event) => events.push(event));
  return {
    name: 'desktop',
    line,
    saved,
    call: (channel, request) => bridge.call(channel, request),
    takeIn: (path) => bridge.takeIn({ name: path.split('/').at(-1) ?? '', size: 0, path }),
    events: published,
    link,
    close: () => link.close(),
  };
}
