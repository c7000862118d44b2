/** The hub's events as server-sent events; a window that comes back says which one it saw last. */
import type { IncomingMessage, ServerResponse } from 'node:http';

import type { EventHub } from '../processes/event-hub.ts';

export function streamEvents(
  hub: EventHub,
  request: IncomingMessage,
  response: ServerResponse,
  after: number,
): void {
  const seen = Number(request.headers['last-event-id'] ?? after);
  response.writeHead(200, {
    'content-type': 'text/event-stream; charset=utf-8',
    'cache-control': 'no-store',
    connection: 'keep-alive',
  });
  response.write(': listening\n\n');
  const end = hub.subscribe(Number.isSafeInteger(seen) ? seen : 0, (event) => {
    response.write(`id: ${String(event.sequence)}\ndata: ${JSON.stringify(event)}\n\n`);
  });
  response.on('close', end);
}
