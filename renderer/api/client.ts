/** Everything the page asks of the program goes through here, whichever carrier took it. */
import type { Channel, RequestOf, ResponseOf } from '#shared-types/api-contract.ts';
import type { TakenIn } from '#shared-types/carrier.ts';
import { AppError, type Envelope } from '#shared-types/errors.ts';
import type { DeliveryToken } from '#shared-types/ids.ts';
import { chooseCarrier } from './carriers/choose-carrier.ts';

export const carrier = chooseCarrier();

/** Sends one request. Throws AppError when the program refuses it or cannot be reached. */
export async function call<C extends Channel>(channel: C, request: RequestOf<C>): Promise<ResponseOf<C>> {
  return unwrap((await carrier.call(channel, request)) as Envelope<ResponseOf<C>>);
}

/** Hands a dropped or chosen file to the program; the token goes into `photos.import`. */
export async function takeIn(file: File): Promise<TakenIn> {
  return unwrap(await carrier.takeIn(file));
}

/** Gives a finished document to the user. Answers false when they closed the save dialog. */
export async function deliver(token: DeliveryToken): Promise<boolean> {
  return unwrap(await carrier.deliver(token)).delivered;
}

/** Address of a picture: `path` is one of Photo.derivatives, or `thumbnail/<blobId>`. */
export function pictureAddress(path: string): string {
  return joined(carrier.pictureBase, path);
}

/** Address under which a finished document is shown in place. */
export function documentAddress(token: DeliveryToken): string {
  return joined(carrier.documentBase, token);
}

function unwrap<Value>(envelope: Envelope<Value>): Value {
  if (envelope.ok) return envelope.value;
  throw AppError.fromShape(envelope.error);
}

function joined(base: string, rest: string): string {
  return `${base.replace(/\/$/, '')}/${rest.replace(/^\//, '')}`;
}
