/** Who the loopback host answers, and that whoever else asks gets nothing: not the page, not a picture, not a call. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { largestRequestBytes } from '#shared-types/api-contract.ts';
import type { Envelope } from '#shared-types/errors.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';
import type { Photo } from '#shared-types/photo.ts';
import { hostTexts } from '#shared-types/texts/host.ts';

import { pictureLimits } from '../../electron/images/picture-limits.ts';
import { shippedPath } from '../../electron/processes/entry-table.ts';
import { pageMediaTypes } from '../../electron/processes/page-policy.ts';
import { exchanges, jobEnded, valueOf } from '../support/exchanges.ts';
import { enterLoopbackHost, type LoopbackClient } from '../support/loopback-client.ts';
import { markedJpeg } from '../support/pictures/marked-picture.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import { ask, openHost, type HostUnderTest, type RawAnswer, type RawRequest } from './host-under-test.ts';

let folder: string;
let under: HostUnderTest;
let client: LoopbackClient;
let photo: Photo;
let token: string;
const answers: RawAnswer[] = [];

const ownHost = () => `127.0.0.1:${String(under.host.port)}`;
const cookieOnly = () => ({ cookie: client.headers.cookie ?? '' });
const listCases = { method: 'POST', path: '/call/cases.list', body: ['{}'] };

/** Every answer is kept: what must stand in each is looked at in the end. */
async function raw(request: RawRequest): Promise<RawAnswer> {
  const answer = await ask(under.host.port, request);
  answers.push(answer);
  return answer;
}

/** As the page itself asks. */
const asPage = (request: RawRequest) =>
  raw({ ...request, headers: { ...client.headers, ...request.headers } });

function expectRefused(answer: RawAnswer): void {
  expect(answer.status).toBe(403);
  expect([hostTexts.refused, hostTexts.needsAddress]).toContain(answer.body.toString());
  expect(answer.headers['set-cookie']).toBeUndefined();
}

const envelopeOf = (answer: RawAnswer) => JSON.parse(answer.body.toString()) as Envelope<unknown>;

beforeAll(async () => {
  folder = makeTemporaryFolder();
  const path = join(folder, 'front-face.jpg');
  writeFileSync(path, await markedJpeg());
  under = await openHost(folder);
  client = await enterLoopbackHost(under.host.address);
  await client.call('analysts.add', exchanges['analysts.add']({} as never));
  const opened = await client.call('cases.open', exchanges['cases.open']({} as never));
  const { caseId } = valueOf(opened) as { caseId: CaseId };
  const taken = valueOf(await client.takeIn(path));
  const begun = await client.call('photos.import', { caseId, tokens: [taken.token] });
  await jobEnded(client, (valueOf(begun) as Job).id);
  photo = (valueOf(await client.call('photos.list', { caseId })) as Photo[])[0] as Photo;
  const report = valueOf(await client.call('reports.make', { caseId, paper: 'A4' })) as Job;
  token = String((await jobEnded(client, report.id)).document?.token);
});

afterAll(async () => {
  await under.close();
  removeFolder(folder);
});

/** Everything there is to be read, and a call: each must be closed to each stranger below. */
const everyAddress: [string, () => RawRequest][] = [
  ['the page', () => ({ path: '/' })],
  ['a file of the page', () => ({ path: '/index.html' })],
  ['the events', () => ({ path: '/events' })],
  ['a picture', () => ({ path: `/picture/${photo.derivatives.display}` })],
  ['a document', () => ({ path: `/document/${token}` })],
  ['a call', () => listCases],
  ['an upload', () => ({ method: 'PUT', path: '/intake?name=a.jpg', body: ['x'] })],
];

describe.each(everyAddress)('%s', (_what, request) => {
  /** The page's own headers, but for one. */
  const but = (headers: Record<string, string>) => {
    const { path, method, body } = request();
    const kept = Object.fromEntries(
      Object.entries({ ...client.headers, ...headers }).filter(([, value]) => value !== ''),
    );
    return raw({ path, ...(method && { method }), ...(body && { body }), headers: kept });
  };

  test('is closed to whoever has no cookie, or another', async () => {
    expectRefused(await but({ cookie: '' }));
    expectRefused(await but({ cookie: `docket-${String(under.host.port)}=${'A'.repeat(43)}` }));
    expectRefused(await but({ cookie: `docket-${String(under.host.port)}=` }));
    // The right secret under the name of another port's cookie.
    const secret = (client.headers.cookie ?? '').split('=')[1] ?? '';
    expectRefused(await but({ cookie: `docket-${String(under.host.port + 1)}=${secret}` }));
    expectRefused(await but({ cookie: `docket-${String(under.host.port)}=${secret.slice(1)}` }));
  });

  test('is closed under any other name of this computer', async () => {
    const { port } = under.host;
    for (const host of [`localhost:${port}`, `docket.example.org:${port}`, '127.0.0.1', `127.0.0.1:1`]) {
      expectRefused(await but({ host }));
    }
  });

  test('is closed to another page of the same browser', async () => {
    for (const origin of ['https://example.org', 'null', `http://localhost:${String(under.host.port)}`]) {
      expectRefused(await but({ origin }));
    }
    expectRefused(await but({ 'sec-fetch-site': 'cross-site' }));
    expectRefused(await but({ 'sec-fetch-site': 'same-site' }));
    expectRefused(await but({ origin: `https://${ownHost()}` }));
  });
});

describe('anything but reading', () => {
  test.each([
    ['no token', {}],
    ['another token', { 'x-docket-token': 'B'.repeat(43) }],
    ['an empty token', { 'x-docket-token': '' }],
  ])('is closed to a request with %s', async (_case, headers) => {
    for (const request of [listCases, { method: 'PUT', path: '/intake?name=a.jpg', body: ['x'] }]) {
      expectRefused(await raw({ ...request, headers: { ...cookieOnly(), ...headers } }));
    }
  });

  test('is open to the page, whose origin and site are its own', async () => {
    const headers = { origin: `http://${ownHost()}`, 'sec-fetch-site': 'same-origin' };
    expect(envelopeOf(await asPage({ ...listCases, headers }))).toMatchObject({ ok: true });
  });

  test('is not to be had by reading, nor reading by another method', async () => {
    for (const request of [
      { method: 'GET', path: '/call/cases.list' },
      { method: 'GET', path: '/intake?name=a.jpg' },
      { method: 'POST', path: '/intake?name=a.jpg', body: ['x'] },
      { method: 'PUT', path: '/call/cases.list', body: ['{}'] },
      { method: 'DELETE', path: `/picture/${photo.derivatives.display}` },
      { method: 'POST', path: `/picture/${photo.derivatives.display}` },
      { method: 'POST', path: '/' },
      { method: 'OPTIONS', path: '/call/cases.list' },
      { method: 'PATCH', path: '/' },
    ]) {
      const answer = await asPage(request);
      expect([request.method, request.path, answer.status]).toEqual([request.method, request.path, 404]);
      expect(answer.headers['access-control-allow-origin']).toBeUndefined();
    }
  });
});

describe('the key in the first address', () => {
  test('is exchanged for a cookie that no script reads and no other site sends', async () => {
    const { pathname, search } = new URL(under.host.address);
    const answer = await raw({ path: pathname + search });
    expect(answer.status).toBe(303);
    expect(answer.headers.location).toBe('/');
    const [cookie = ''] = answer.headers['set-cookie'] ?? [];
    expect(cookie).toMatch(new RegExp(`^docket-${String(under.host.port)}=[\\w-]{43}; `));
    expect(cookie.split('; ').slice(1)).toEqual(['HttpOnly', 'SameSite=Strict', 'Path=/']);
  });

  test('opens nothing when it is another, or at another place', async () => {
    const key = new URL(under.host.address).searchParams.get('key') ?? '';
    expectRefused(await raw({ path: '/?key=' }));
    expectRefused(await raw({ path: `/?key=${'C'.repeat(43)}` }));
    expectRefused(await raw({ path: `/?key=${key}x` }));
    expectRefused(await raw({ path: `/index.html?key=${key}` }));
    expectRefused(await raw({ method: 'POST', path: `/?key=${key}`, body: [''] }));
    expectRefused(await raw({ path: `/?key=${key}`, headers: { host: 'example.org' } }));
    expectRefused(await raw({ path: `/?key=${key}`, headers: { 'sec-fetch-site': 'cross-site' } }));
  });
});

describe('the page', () => {
  const root = shippedPath('dist', 'renderer');
  const files = () =>
    readdirSync(root, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.name.endsWith('.map'))
      .map((entry) =>
        join(entry.parentPath, entry.name)
          .slice(root.length + 1)
          .replaceAll('\\', '/'),
      );

  test('is served, every file that it was built of, as what it is', async () => {
    expect(files()).toContain('index.html');
    for (const file of files().filter((name) => name !== 'index.html')) {
      const answer = await asPage({ path: `/${file}` });
      expect([file, answer.status]).toEqual([file, 200]);
      expect(answer.headers['content-type']).toBe(pageMediaTypes[file.slice(file.lastIndexOf('.'))]);
      expect(answer.body.equals(readFileSync(join(root, file)))).toBe(true);
    }
  });

  test('holds the token for its calls, and is kept by no cache', async () => {
    const answer = await raw({ path: '/', headers: cookieOnly() });
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answer.headers['cache-control']).toMatch(/^no-(store|cache)$/);
    expect(answer.body.toString()).toContain(
      `<meta name="docket-token" content="${client.headers['x-docket-token'] ?? ''}">`,
    );
  });
});

describe('an address that leads out of its folder', () => {
  const up = [
    '..',
    '%2e%2e',
    '.%2e',
    '..%2f',
    '..%5c',
    '..\\',
    '%252e%252e',
    '....//',
    '..;',
    '%c0%ae%c0%ae',
  ];
  const wanted = ['package.json', 'electron/main.ts', 'own/library.sqlite', 'etc/passwd'];
  const prefixes = ['/', '//', '/assets/', '/picture/', '/picture/display/', '/document/', '/./'];
  const addresses = prefixes.flatMap((prefix) =>
    up.flatMap((step) => wanted.map((file) => `${prefix}${step}/${step}/${file}`)),
  );

  test('finds nothing, however it is written', async () => {
    for (const path of [
      ...addresses,
      ...['/%00', '/index.html%00', '/%', '//', '///', '/\\', 'http://example.org/package.json'],
      ...['/C:/Windows/win.ini', '/etc/passwd', '/../../../../../../etc/passwd', '/%2fetc%2fpasswd'],
    ]) {
      const answer = await asPage({ path });
      expect([path, answer.status]).toEqual([path, 404]);
      expect([path, answer.body.length < 400]).toEqual([path, true]);
    }
  });

  test('finds nothing among pictures and documents either', async () => {
    const [kind = '', id = ''] = photo.derivatives.display.split('/');
    for (const path of [
      ...[`/picture/original/${id}`, `/picture/${kind}/${photo.sha256}`, `/picture/${kind}/${id}/x`],
      ...[
        `/picture/${kind}`,
        `/picture/${kind}/`,
        '/picture/',
        `/picture/${kind}/${id}.jpg`,
        '/picture/__proto__/x',
      ],
      ...[`/picture/${kind}/00000000-0000-4000-8000-000000000001`, `/picture//${id}`],
      ...[
        '/document/',
        '/document/x',
        `/document/${token}x`,
        `/document/../document`,
        `/document/${photo.id}`,
      ],
      ...[`/document/${token}/..`, '/document/00000000-0000-4000-8000-000000000001'],
    ]) {
      expect([path, (await asPage({ path })).status]).toEqual([path, 404]);
    }
  });

  test('while the picture and the document themselves are there', async () => {
    const picture = await asPage({ path: `/picture/${photo.derivatives.display}` });
    expect([picture.status, picture.headers['content-type']]).toEqual([200, 'image/jpeg']);
    const document = await asPage({ path: `/document/${token}` });
    expect([document.status, document.headers['content-type']]).toEqual([200, 'application/pdf']);
    expect(document.body.subarray(0, 5).toString()).toBe('%PDF-');
    expect(document.headers['content-disposition']).toBeUndefined();
    const saved = await asPage({ path: `/document/${token}?save` });
    expect(saved.headers['content-disposition']).toBe("attachment; filename*=UTF-8''report-26-0147.pdf");
  });
});

describe('a body that is too large', () => {
  function* bytes(count: number): Iterable<Uint8Array> {
    const piece = Buffer.alloc(1 << 20, 0x20);
    for (let sent = 0; sent < count; sent += piece.length)
      yield piece.subarray(0, Math.min(piece.length, count - sent));
  }

  test('of a call is refused in a sentence, and one of just the largest size is not', async () => {
    const tooLarge = await asPage({ ...listCases, body: bytes(largestRequestBytes + 1) });
    expect(envelopeOf(tooLarge)).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
    expect(tooLarge.body.toString()).toContain('too large');
    // Blanks are no fault in JSON.
    const largest = ['{}', ...bytes(largestRequestBytes - 2)];
    expect(envelopeOf(await asPage({ ...listCases, body: largest }))).toMatchObject({ ok: true });
  });

  test('of an upload is refused by the name of the file, and leaves nothing behind', async () => {
    const limit = pictureLimits.megabytes * 1e6;
    const path = '/intake?name=folder%2Fhuge.jpg';
    const refused = envelopeOf(await asPage({ method: 'PUT', path, body: bytes(limit + 1) }));
    expect(refused).toMatchObject({
      error: {
        code: 'file-too-large',
        details: { name: 'huge.jpg', megabytes: pictureLimits.megabytes + 1, limit: pictureLimits.megabytes },
      },
    });
    expect(readdirSync(under.uploadFolder)).toEqual([]);
  });

  test('that is no JSON is refused in a sentence', async () => {
    for (const body of ['', '{', 'null', '[]', '"x"', '{"__proto__":1}']) {
      const answer = await asPage({ ...listCases, body: [body] });
      expect(envelopeOf(answer)).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
    }
  });
});

test('every answer carries the policy of the page, and is never guessed at', async () => {
  const kinds: [number, RawRequest][] = [
    ...everyAddress.map(([, request]): [number, RawRequest] => [200, request()]),
    [200, { path: `/document/${token}?save` }],
    [303, { path: new URL(under.host.address).pathname + new URL(under.host.address).search }],
    [404, { path: '/none' }],
    [404, { path: '/%' }],
    [404, { path: '//' }],
    [404, { method: 'DELETE', path: '/' }],
    [403, { path: '/', headers: { cookie: '' } }],
    [403, { path: '/', headers: { host: 'example.org' } }],
    [403, { path: '/?key=x' }],
    [403, { ...listCases, headers: { 'x-docket-token': '' } }],
  ];
  for (const [status, request] of kinds) {
    expect([request.path, (await asPage(request)).status]).toEqual([request.path, status]);
  }
  // Those of all the other tests that ran are looked at, too.
  for (const { headers } of answers) {
    const policy = String(headers['content-security-policy']).split('; ');
    expect(policy[0]).toBe("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy.join(' ')).not.toMatch(/unsafe|http:|https:|\*|data:/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['cross-origin-resource-policy']).toBe('same-origin');
    expect(headers['cache-control'] ?? 'none').not.toContain('public');
  }
});
