/**
 * Carries calls over HTTP to the host on this computer that served the page.
 * The session cookie goes along by itself; the token in the page proves that a call comes from this page.
 */
import type { Channel } from '#shared-types/api-contract.ts';
import type { Carrier, TakenIn } from '#shared-types/carrier.ts';
import { AppError, type Envelope } from '#shared-types/errors.ts';
import type { DeliveryToken } from '#shared-types/ids.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { listenToStream } from './event-stream.ts';

const tokenHeader = 'x-docket-token';

/** The token that the host wrote into the page's head; null in a page that no host served. */
export function pageToken(): string | null {
  return document.querySelector<HTMLMetaElement>('meta[name="docket-token"]')?.content ?? null;
}

/** Bytes that the fetch standard lets all requests have together that outlive their page; some are left for others. */
const mostOutliving = 60_000;

/** At `pagehide` the page still counts as visible, so it is noted before anybody else hears of it. */
let pageGoes = false;
window.addEventListener('pagehide', () => (pageGoes = true), { capture: true });
window.addEventListener('pageshow', () => (pageGoes = false), { capture: true });

/** What is sent while the page goes away still arrives; too much of it would not even be sent. */
function outlivesThePage(body: string): boolean {
  const going = pageGoes || document.visibilityState === 'hidden';
  return going && new TextEncoder().encode(body).length <= mostOutliving;
}

export function createLoopbackCarrier(token: string): Carrier<File> {
  const headers = { [tokenHeader]: token };
  return {
    kind: 'loopback',
    pictureBase: '/picture/',
    documentBase: '/document/',

    call(channel: Channel, request: unknown) {
      const body = JSON.stringify(request);
      return exchange<unknown>(`/call/${channel}`, {
        method: 'POST',
        headers: { ...headers, 'content-type': 'application/json' },
        body,
        keepalive: outlivesThePage(body),
      });
    },

    takeIn(file: File) {
      return exchange<TakenIn>(`/intake?name=${encodeURIComponent(file.name)}`, {
        method: 'PUT',
        headers: { ...headers, 'content-type': 'application/octet-stream' },
        body: file,
      });
    },

    deliver(documentToken: DeliveryToken) {
      const link = document.createElement('a');
      link.href = `/document/${documentToken}?save=1`;
      link.download = '';
      document.body.append(link);
      link.click();
      link.remove();
      return Promise.resolve({ ok: true, value: { delivered: true } } as const);
    },

    listen: listenToStream,
  };
}

async function exchange<Value>(address: string, options: RequestInit): Promise<Envelope<Value>> {
  let answer: Response;
  try {
    answer = await fetch(address, { ...options, credentials: 'same-origin', cache: 'no-store' });
  } catch (cause) {
    return refusal('engine-unavailable', { reason: shellTexts.hostGone }, cause);
  }
  if (answer.status === 403) return refusal('carrier-refused', {});
  try {
    return (await answer.json()) as Envelope<Value>;
  } catch (cause) {
    return refusal('unexpected', { status: answer.status }, cause);
  }
}

function refusal(
  code: 'engine-unavailable' | 'carrier-refused' | 'unexpected',
  details: Record<string, string | number>,
  cause?: unknown,
): { ok: false; error: ReturnType<AppError['toShape']> } {
  const options = { retryable: code === 'engine-unavailable', cause };
  return { ok: false, error: new AppError(code, details, options).toShape() };
}
