/** The shell's end of the bridge: every channel of the contract passed on to the engine, from our own page only. */
import { stat } from 'node:fs/promises';
import { basename } from 'node:path';

import { channels } from '#shared-types/api-contract.ts';
import { AppError, type Envelope } from '#shared-types/errors.ts';
import { deliveryTokenSchema } from '#shared-types/ids.ts';
import { z } from '#shared-types/schema.ts';

import type { EngineLink } from '../processes/engine-link.ts';
import type { ServedFile } from '../processes/engine-messages.ts';
import type { EventHub } from '../processes/event-hub.ts';
import { toldError } from '../services/told-error.ts';
import {
  callPrefix,
  deliverChannel,
  eventChannel,
  listenChannel,
  pageOrigin,
  takeInChannel,
} from './bridge-channels.ts';

/** The part of ipcMain's event that is looked at: read at once, since a frame may be gone a moment later. */
export type CallEvent = {
  readonly senderFrame: { readonly url: string } | null;
  readonly sender: {
    send(channel: string, ...values: unknown[]): void;
    once(event: 'destroyed', receive: () => void): unknown;
    isDestroyed(): boolean;
  };
};

/** The part of ipcMain that the registration uses. */
export type MainLine = {
  handle(channel: string, answer: (event: CallEvent, ...values: unknown[]) => unknown): void;
};

export type RegistrationParts = {
  readonly link: EngineLink;
  readonly hub: EventHub;
  /** Asks the user where to put a document and puts it there; answers whether they did. */
  readonly saveAs: (document: ServedFile) => Promise<boolean>;
};

const takeInSchema = z.strictObject({ path: z.string().min(1), name: z.string().max(255) });

export function registerChannels(line: MainLine, parts: RegistrationParts): void {
  const { link, hub } = parts;
  const register = (channel: string, answer: (event: CallEvent, value: unknown) => unknown) => {
    line.handle(channel, (event, value) => (fromOurPage(event) ? answer(event, value) : refused()));
  };
  for (const channel of channels) {
    register(callPrefix + channel, (_event, request) => link.call(channel, request));
  }
  register(takeInChannel, (_event, value) => takeIn(link, value));
  register(deliverChannel, (_event, value) => deliver(parts, value));
  const listening = new Map<CallEvent['sender'], () => void>();
  register(listenChannel, ({ sender }) => {
    // A reloaded page listens anew: the line it had before is ended.
    listening.get(sender)?.();
    const end = hub.subscribe(0, (event) => {
      if (!sender.isDestroyed()) sender.send(eventChannel, event);
    });
    if (!listening.has(sender)) sender.once('destroyed', () => listening.get(sender)?.());
    listening.set(sender, end);
    return { ok: true, value: null } satisfies Envelope<null>;
  });
}

function fromOurPage(event: CallEvent): boolean {
  const url = event.senderFrame?.url ?? '';
  return url === pageOrigin || url.startsWith(`${pageOrigin}/`);
}

function refused(): Envelope<never> {
  return { ok: false, error: new AppError('carrier-refused').toShape() };
}

async function takeIn(link: EngineLink, value: unknown): Promise<Envelope<unknown>> {
  const parsed = takeInSchema.safeParse(value);
  const found = parsed.success ? await stat(parsed.data.path).catch(() => null) : null;
  if (!parsed.success || !found?.isFile()) return { ok: false, error: new AppError('intake-gone').toShape() };
  const { path } = parsed.data;
  return link.ask({ ask: 'take-in', path, name: basename(path), bytes: found.size, temporary: false });
}

async function deliver(parts: RegistrationParts, value: unknown): Promise<Envelope<unknown>> {
  const token = deliveryTokenSchema.safeParse(value);
  if (!token.success) return { ok: false, error: new AppError('delivery-gone').toShape() };
  const found = await parts.link.ask<ServedFile>({ ask: 'document', token: token.data });
  if (!found.ok) return found;
  try {
    return { ok: true, value: { delivered: await parts.saveAs(found.value) } };
  } catch (error) {
    return { ok: false, error: toldError(error, found.value.fileName).toShape() };
  }
}
