/** A page's side of the loopback host, as the browser plays it: key for cookie, token from the page, then calls. */
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';

import type { Channel } from '#shared-types/api-contract.ts';
import type { TakenIn } from '#shared-types/carrier.ts';
import type { Envelope } from '#shared-types/errors.ts';

export type LoopbackClient = {
  readonly origin: string;
  readonly headers: Readonly<Record<string, string>>;
  call(channel: Channel | (string & {}), request: unknown): Promise<Envelope<unknown>>;
  takeIn(path: string): Promise<Envelope<TakenIn>>;
};

/** @param address the first address, with its key */
export async function enterLoopbackHost(address: string): Promise<LoopbackClient> {
  const { origin } = new URL(address);
  const first = await fetch(address, { redirect: 'manual' });
  const cookie = (first.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  const page = await (await fetch(`${origin}/`, { headers: { cookie } })).text();
  const token = /name="docket-token" content="([^"]+)"/.exec(page)?.[1];
  if (token === undefined) throw new Error(`no token in the page: ${page.slice(0, 200)}`);
  const headers = { cookie, 'x-docket-token': token };
  return {
    origin,
    headers,
    async call(channel, request) {
      const response = await fetch(`${origin}/call/${channel}`, {
        method: 'POST',
        headers,
        body: JSON.stringify(request),
      });
      return (await response.json()) as Envelope<unknown>;
    },
    async takeIn(path) {
      const name = encodeURIComponent(basename(path));
      const response = await fetch(`${origin}/intake?name=${name}`, {
        method: 'PUT',
        headers,
        body: await readFile(path),
      });
      return (await response.json()) as Envelope<TakenIn>;
    },
  };
}
