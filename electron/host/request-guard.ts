/**
 * Who may ask. The host listens on the loopback address only; beyond that a request must name this very host and
 * port, come from this program's own page, carry the cookie that the first address was exchanged for and, for
 * anything but reading, the page's token. Any other page open in the same browser has none of these.
 */
import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

export type Secrets = {
  /** In the first address, printed once on the terminal. */
  readonly key: string;
  /** Exchanged for it; HttpOnly, so no script ever reads it. */
  readonly cookie: string;
  /** Stands in the page; sent as a header with every call. */
  readonly pageToken: string;
};

export const pageTokenHeader = 'x-docket-token';

/** The cookie's name holds the port: two hosts on one computer do not overwrite each other's. */
export const cookieName = (port: number) => `docket-${String(port)}`;

export function rightHost(request: IncomingMessage, port: number): boolean {
  return request.headers.host === `127.0.0.1:${String(port)}`;
}

/** An Origin, where the browser sends one, must be ours; where it sends none, Sec-Fetch-Site must not be foreign. */
export function rightOrigin(request: IncomingMessage, port: number): boolean {
  const { origin } = request.headers;
  if (origin !== undefined) return origin === `http://127.0.0.1:${String(port)}`;
  const site = request.headers['sec-fetch-site'];
  return site === undefined || site === 'same-origin' || site === 'none';
}

export function rightCookie(request: IncomingMessage, port: number, secrets: Secrets): boolean {
  const cookies = (request.headers.cookie ?? '').split(';').map((one) => one.trim());
  const prefix = `${cookieName(port)}=`;
  const given = cookies.find((one) => one.startsWith(prefix));
  return given !== undefined && same(given.slice(prefix.length), secrets.cookie);
}

export function rightToken(request: IncomingMessage, secrets: Secrets): boolean {
  const given = request.headers[pageTokenHeader];
  return typeof given === 'string' && same(given, secrets.pageToken);
}

export function same(given: string, secret: string): boolean {
  const one = Buffer.from(given);
  const other = Buffer.from(secret);
  return one.length === other.length && timingSafeEqual(one, other);
}
