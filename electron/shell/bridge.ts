/**
 * What the preload gives the page: the contract's channels, one function each, and nothing else of the desktop.
 * A file's path is asked of the runtime for a real File object; a string from the page is never taken for one.
 */
import { channels, isChannel, type Channel } from '#shared-types/api-contract.ts';
import type { Carrier, FileLike, TakenIn } from '#shared-types/carrier.ts';
import { AppError, type Envelope } from '#shared-types/errors.ts';
import type { NumberedEvent } from '#shared-types/events.ts';

import { callPrefix, deliverChannel, eventChannel, listenChannel, takeInChannel } from './bridge-channels.ts';

/** The part of ipcRenderer that the bridge uses. */
export type RendererLine = {
  invoke(channel: string, ...values: unknown[]): Promise<unknown>;
  on(channel: string, receive: (event: unknown, ...values: unknown[]) => void): unknown;
  removeListener(channel: string, receive: (event: unknown, ...values: unknown[]) => void): unknown;
};

export type Bridge<PageFile extends FileLike> = Carrier<PageFile> & {
  readonly calls: Readonly<Record<Channel, (request: unknown) => Promise<Envelope<unknown>>>>;
};

export function createBridge<PageFile extends FileLike>(
  line: RendererLine,
  pathOf: (file: PageFile) => string,
): Bridge<PageFile> {
  const calls = Object.fromEntries(
    channels.map((channel) => [
      channel,
      (request: unknown) => line.invoke(callPrefix + channel, request) as Promise<Envelope<unknown>>,
    ]),
  ) as Bridge<PageFile>['calls'];
  return {
    kind: 'desktop',
    calls,
    call(channel, request) {
      if (isChannel(channel)) return calls[channel](request);
      const refused = new AppError('request-invalid', { field: 'channel', reason: 'unknown' });
      return Promise.resolve({ ok: false, error: refused.toShape() });
    },
    takeIn(file) {
      const path = pathOf(file);
      if (path === '') return Promise.resolve({ ok: false, error: new AppError('intake-gone').toShape() });
      return line.invoke(takeInChannel, { path, name: file.name }) as Promise<Envelope<TakenIn>>;
    },
    deliver: (token) => line.invoke(deliverChannel, token) as Promise<Envelope<{ delivered: boolean }>>,
    listen(receive) {
      const pass = (_event: unknown, numbered: unknown) => {
        receive(numbered as NumberedEvent);
      };
      line.on(eventChannel, pass);
      void line.invoke(listenChannel);
      return () => {
        line.removeListener(eventChannel, pass);
      };
    },
    pictureBase: '/picture/',
    documentBase: '/document/',
  };
}
