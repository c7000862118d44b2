/**
 * The loopback carrier: the same handlers over HTTP on 127.0.0.1, for a browser on this computer. It carries and does
 * nothing else; no feature lives here.
 */
import { randomBytes, randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';

import { largestRequestBytes } from '#shared-types/api-contract.ts';
import { AppError, type Envelope } from '#shared-types/errors.ts';
import { deliveryTokenSchema } from '#shared-types/ids.ts';
import { hostTexts } from '#shared-types/texts/host.ts';

import type { EngineLink } from '../processes/engine-link.ts';
import type { ServedFile } from '../processes/engine-messages.ts';
import type { EventHub } from '../processes/event-hub.ts';
import { pageHeaders } from '../processes/page-policy.ts';
import { streamEvents } from './event-stream.ts';
import { receiveUpload } from './intake-upload.ts';
import { readPageFile } from './page-files.ts';
import {
  cookieName,
  rightCookie,
  rightHost,
  rightOrigin,
  rightToken,
  same,
  type Secrets,
} from './request-guard.ts';

export type LoopbackHost = {
  /** The first address: opens the page and is exchanged for a cookie. */
  readonly address: string;
  readonly port: number;
  close(): Promise<void>;
};

export type HostParts = {
  readonly link: EngineLink;
  readonly hub: EventHub;
  /** For uploads on their way; emptied of what an earlier run left. */
  readonly uploadFolder: string;
  /** 0 for any free one. */
  readonly port: number;
};

export async function openLoopbackHost(parts: HostParts): Promise<LoopbackHost> {
  await emptyUploads(parts.uploadFolder);
  const secrets: Secrets = { key: secret(), cookie: secret(), pageToken: secret() };
  const server = createServer((request, response) => {
    const port = (server.address() as AddressInfo).port;
    answer({ ...parts, secrets, port }, request, response).catch((error: unknown) => {
      // Whoever asked has gone, in the middle of an upload say: there is nobody to answer.
      if (request.socket.destroyed) return;
      console.error(error);
      if (response.headersSent) response.destroy();
      else refuse(response, 500, hostTexts.failed);
    });
  });
  // Photos of 200 MB over a slow disk take longer than the five minutes a request is given otherwise.
  server.requestTimeout = 0;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(parts.port, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${String(port)}/?key=${secrets.key}`,
    port,
    close: () => closeServer(server),
  };
}

const secret = () => randomBytes(32).toString('base64url');

async function emptyUploads(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const name of await readdir(folder)) if (name.startsWith('upload-')) await rm(join(folder, name));
}

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => {
      resolve();
    });
    server.closeAllConnections();
  });
}

type Scene = HostParts & { readonly secrets: Secrets; readonly port: number };

async function answer(scene: Scene, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const { port, secrets } = scene;
  for (const [name, value] of Object.entries(pageHeaders)) response.setHeader(name, value);
  if (!rightHost(request, port) || !rightOrigin(request, port)) {
    refuse(response, 403, hostTexts.refused);
    return;
  }
  const url = URL.parse(request.url ?? '/', `http://127.0.0.1:${String(port)}`);
  if (url === null) {
    refuse(response, 404, hostTexts.notHere);
    return;
  }
  if (request.method === 'GET' && url.pathname === '/' && url.searchParams.has('key')) {
    exchangeKey(scene, response, url.searchParams.get('key') ?? '');
    return;
  }
  if (!rightCookie(request, port, secrets)) {
    refuse(response, 403, hostTexts.needsAddress);
    return;
  }
  if (request.method === 'GET') await answerReading(scene, request, response, url);
  else if (rightToken(request, secrets)) await answerAsking(scene, request, response, url);
  else refuse(response, 403, hostTexts.refused);
}

function exchangeKey({ secrets, port }: Scene, response: ServerResponse, key: string): void {
  if (!same(key, secrets.key)) {
    refuse(response, 403, hostTexts.needsAddress);
    return;
  }
  response.setHeader(
    'set-cookie',
    `${cookieName(port)}=${secrets.cookie}; HttpOnly; SameSite=Strict; Path=/`,
  );
  response.writeHead(303, { location: '/', 'cache-control': 'no-store' }).end();
}

async function answerReading(
  scene: Scene,
  request: IncomingMessage,
  response: ServerResponse,
  url: URL,
): Promise<void> {
  const { link, hub } = scene;
  const { pathname } = url;
  if (pathname === '/events') {
    streamEvents(hub, request, response, Number(url.searchParams.get('after') ?? 0));
  } else if (pathname.startsWith('/picture/')) {
    const found = await link.ask<ServedFile>({ ask: 'picture', address: pathname.slice('/picture/'.length) });
    // What an address shows never changes: the picture is named by its content.
    await serveFile(response, found, { 'cache-control': 'private, max-age=31536000, immutable' });
  } else if (pathname.startsWith('/document/')) {
    const token = deliveryTokenSchema.safeParse(pathname.slice('/document/'.length));
    if (!token.success) {
      refuse(response, 404, hostTexts.notHere);
      return;
    }
    const found = await link.ask<ServedFile>({ ask: 'document', token: token.data });
    await serveFile(response, found, {
      'cache-control': 'no-store',
      ...(url.searchParams.has('save') && found.ok ? { 'content-disposition': attachment(found.value) } : {}),
    });
  } else {
    const file = await readPageFile(pathname, scene.secrets.pageToken);
    if (!file) refuse(response, 404, hostTexts.notHere);
    else
      response
        .writeHead(200, { 'content-type': file.mediaType, 'cache-control': 'no-cache' })
        .end(file.content);
  }
}

async function answerAsking(
  scene: Scene,
  request: IncomingMessage,
  response: ServerResponse,
  url: URL,
): Promise<void> {
  if (request.method === 'POST' && url.pathname.startsWith('/call/')) {
    const body = await readJson(request);
    const channel = url.pathname.slice('/call/'.length);
    sendEnvelope(response, body.ok ? await scene.link.call(channel, body.value) : body);
  } else if (request.method === 'PUT' && url.pathname === '/intake') {
    sendEnvelope(response, await takeIn(scene, request, url.searchParams.get('name') ?? ''));
  } else {
    refuse(response, 404, hostTexts.notHere);
  }
}

async function takeIn(scene: Scene, request: IncomingMessage, name: string): Promise<Envelope<unknown>> {
  try {
    // A dropped folder's files come with their path: the name is the last part of it.
    const lastPart = name.split(/[\\/]/).at(-1) ?? '';
    const place = { folder: scene.uploadFolder, id: randomUUID(), name: lastPart.slice(0, 255) };
    const upload = await receiveUpload(request, place);
    const taken = await scene.link.ask({ ask: 'take-in', ...upload, temporary: true });
    if (!taken.ok) await rm(upload.path, { force: true });
    return taken;
  } catch (error) {
    if (error instanceof AppError) return { ok: false, error: error.toShape() };
    throw error;
  }
}

async function readJson(request: IncomingMessage): Promise<Envelope<unknown>> {
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    // Read to its end all the same: a browser still sending does not look at an answer.
    if (bytes <= largestRequestBytes) chunks.push(chunk);
  }
  if (bytes > largestRequestBytes) return invalid('too large');
  try {
    return { ok: true, value: JSON.parse(Buffer.concat(chunks).toString('utf8')) };
  } catch (error) {
    return invalid(error instanceof Error ? error.message : 'not JSON');
  }
}

function invalid(reason: string): Envelope<never> {
  return { ok: false, error: new AppError('request-invalid', { field: 'body', reason }).toShape() };
}

function sendEnvelope(response: ServerResponse, envelope: Envelope<unknown>): void {
  response
    .writeHead(200, { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store' })
    .end(JSON.stringify(envelope));
}

async function serveFile(
  response: ServerResponse,
  found: Envelope<ServedFile>,
  headers: Record<string, string>,
): Promise<void> {
  if (!found.ok) {
    refuse(response, 404, found.error.message);
    return;
  }
  const { file, mediaType } = found.value;
  const { size } = await stat(file);
  response.writeHead(200, { ...headers, 'content-type': mediaType, 'content-length': size });
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
}

/** RFC 6266: the name in UTF-8, percent-encoded. */
function attachment(file: ServedFile): string {
  return `attachment; filename*=UTF-8''${encodeURIComponent(file.fileName)}`;
}

function refuse(response: ServerResponse, status: number, words: string): void {
  response
    .writeHead(status, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' })
    .end(words);
}
