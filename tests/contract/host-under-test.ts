/** A loopback host over a real engine, and the requests that no browser makes: byte for byte as they are sent. */
import { request as httpRequest, type IncomingHttpHeaders } from 'node:http';
import { join } from 'node:path';

import { openLoopbackHost, type LoopbackHost } from '../../electron/host/loopback-host.ts';
import { createEngineLink, type EngineLink } from '../../electron/processes/engine-link.ts';
import { createEventHub, type EventHub } from '../../electron/processes/event-hub.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';

export type HostUnderTest = {
  readonly host: LoopbackHost;
  readonly hub: EventHub;
  readonly link: EngineLink;
  readonly uploadFolder: string;
  close(): Promise<void>;
};

export async function openHost(
  folder: string,
  watched: (hub: EventHub) => EventHub = (hub) => hub,
): Promise<HostUnderTest> {
  const hub = watched(createEventHub());
  const link = createEngineLink({
    broker: createForkBroker(),
    folders: { own: join(folder, 'own'), samples: join(folder, 'samples') },
    carrier: 'loopback',
    library: 'own',
    publish: hub.publish,
  });
  const uploadFolder = join(folder, 'uploads');
  const host = await openLoopbackHost({ link, hub, uploadFolder, port: 0 });
  return {
    host,
    hub,
    link,
    uploadFolder,
    async close() {
      await host.close();
      await link.close();
    },
  };
}

export type RawRequest = {
  readonly method?: string;
  /** As it stands in the request line: nothing is decoded or resolved. */
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: Iterable<Uint8Array | string>;
};

export type RawAnswer = {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
};

/** Rejects where the connection breaks before the whole answer has come. */
export function ask(port: number, { method = 'GET', path, headers, body }: RawRequest): Promise<RawAnswer> {
  return new Promise((resolve, reject) => {
    const request = httpRequest(
      { host: '127.0.0.1', port, method, path, headers, agent: false },
      (response) => {
        // A stream of events has no end to wait for: that it was opened is the answer.
        if (response.headers['content-type']?.startsWith('text/event-stream')) {
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.alloc(0) });
          request.destroy();
          return;
        }
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('error', reject);
        response.on('end', () => {
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            body: Buffer.concat(chunks),
          });
        });
      },
    );
    request.on('error', reject);
    void send(request, body ?? []);
  });
}

async function send(
  request: ReturnType<typeof httpRequest>,
  body: Iterable<Uint8Array | string>,
): Promise<void> {
  for (const piece of body) {
    if (request.destroyed) return;
    if (!request.write(piece)) await new Promise((resolve) => request.once('drain', resolve));
  }
  request.end();
}
