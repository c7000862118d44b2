/** A page's event stream over HTTP, read as the HTML standard (9.2, server-sent events) says, without a browser. */
import { request as httpRequest } from 'node:http';

import type { NumberedEvent } from '#shared-types/events.ts';

export type EventSource = {
  readonly received: readonly NumberedEvent[];
  /** Settles when the events received so far fit. */
  until(fits: (received: readonly NumberedEvent[]) => boolean): Promise<readonly NumberedEvent[]>;
  /** What a browser would send as Last-Event-ID when it comes back. */
  lastEventId(): string;
  close(): void;
};

/** Settles when the host listens: what happens from then on is received. */
export function listenOverHttp(
  port: number,
  headers: Readonly<Record<string, string>>,
  path = '/events',
): Promise<EventSource> {
  const received: NumberedEvent[] = [];
  const waiting = new Set<() => void>();
  let lastId = '';
  let text = '';

  const take = (block: string) => {
    const lines = block.split('\n').filter((line) => !line.startsWith(':'));
    const fields = new Map(lines.map((line) => line.split(/: (.*)/s).slice(0, 2) as [string, string]));
    const data = fields.get('data');
    if (data === undefined) return;
    lastId = fields.get('id') ?? lastId;
    received.push(JSON.parse(data) as NumberedEvent);
    for (const tell of [...waiting]) tell();
  };

  return new Promise((resolve, reject) => {
    const request = httpRequest({ host: '127.0.0.1', port, path, headers, agent: false }, (response) => {
      if (response.headers['content-type'] !== 'text/event-stream; charset=utf-8') {
        reject(new Error(`no event stream: ${String(response.statusCode)}`));
        request.destroy();
        return;
      }
      response.setEncoding('utf8').on('data', (chunk: string) => {
        const blocks = (text + chunk).split('\n\n');
        text = blocks.pop() ?? '';
        blocks.forEach(take);
        resolve(source);
      });
      // Closed by the test, or with the host when the test is over.
      response.on('error', () => undefined);
    });
    request.on('error', reject);
    request.end();

    const source: EventSource = {
      received,
      until: (fits) =>
        new Promise((settle) => {
          const tell = () => {
            if (!fits(received)) return;
            waiting.delete(tell);
            settle(received);
          };
          waiting.add(tell);
          tell();
        }),
      lastEventId: () => lastId,
      close: () => request.destroy(),
    };
  });
}
