/** The page under a scheme of our own, with the same policy and the same addresses as in the loopback host. */
import { net, protocol } from 'electron';
import { extname, join, normalize, sep } from 'node:path';
import { pathToFileURL } from 'node:url';

import type { Envelope } from '#shared-types/errors.ts';
import { deliveryTokenSchema } from '#shared-types/ids.ts';

import type { EngineLink } from '../processes/engine-link.ts';
import type { ServedFile } from '../processes/engine-messages.ts';
import { shippedPath } from '../processes/entry-table.ts';
import { pageHeaders, pageMediaTypes } from '../processes/page-policy.ts';
import { pageScheme } from './bridge-channels.ts';

/** Before the program is ready: a standard, secure scheme, so that 'self' in the policy means it. */
export function announcePageScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: pageScheme, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ]);
}

export function servePageScheme(link: EngineLink): void {
  protocol.handle(pageScheme, async (request) => {
    const { pathname, host } = new URL(request.url);
    if (host !== 'app' || request.method !== 'GET') return notHere();
    if (pathname.startsWith('/picture/')) {
      const found = await link.ask<ServedFile>({
        ask: 'picture',
        address: pathname.slice('/picture/'.length),
      });
      return fileOf(found, 'private, max-age=31536000, immutable');
    }
    if (pathname.startsWith('/document/')) {
      const token = deliveryTokenSchema.safeParse(pathname.slice('/document/'.length));
      if (!token.success) return notHere();
      return fileOf(await link.ask<ServedFile>({ ask: 'document', token: token.data }), 'no-store');
    }
    return pageFile(pathname);
  });
}

async function pageFile(pathname: string): Promise<Response> {
  const relative = normalize(pathname === '/' ? 'index.html' : pathname.slice(1));
  const mediaType = pageMediaTypes[extname(relative)];
  if (relative.startsWith('..') || relative.startsWith(sep) || mediaType === undefined) {
    return notHere();
  }
  return respond(join(shippedPath('dist', 'renderer'), relative), mediaType, 'no-cache');
}

async function fileOf(found: Envelope<ServedFile>, caching: string): Promise<Response> {
  if (!found.ok) return notHere(found.error.message);
  return respond(found.value.file, found.value.mediaType, caching);
}

async function respond(file: string, mediaType: string, caching: string): Promise<Response> {
  // A file that is not there is an error of the network to this fetch.
  const found = await net.fetch(pathToFileURL(file).href).catch(() => null);
  if (!found?.ok) return notHere();
  return new Response(found.body, {
    headers: { ...pageHeaders, 'content-type': mediaType, 'cache-control': caching },
  });
}

function notHere(words: string | null = null): Response {
  return new Response(words, {
    status: 404,
    headers: { ...pageHeaders, 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' },
  });
}
