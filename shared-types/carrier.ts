/** What the page needs of whatever carries its calls: the loopback host's client and the preload's bridge both give it. */
import type { Channel } from './api-contract.ts';
import type { Envelope } from './errors.ts';
import type { NumberedEvent } from './events.ts';
import type { DeliveryToken, IntakeToken } from './ids.ts';

export type TakenIn = { readonly token: IntakeToken; readonly name: string; readonly bytes: number };

/** `File` of the page, as far as a carrier needs it; the real one only exists in the page and the preload. */
export type FileLike = { readonly name: string; readonly size: number };

export type Carrier<PageFile extends FileLike> = {
  readonly kind: 'desktop' | 'loopback';
  call(channel: Channel, request: unknown): Promise<Envelope<unknown>>;
  /** Hands one dropped or chosen file to the program. */
  takeIn(file: PageFile): Promise<Envelope<TakenIn>>;
  /** Gives a finished document to the user: a save dialog, or a download. Answers whether it was taken. */
  deliver(token: DeliveryToken): Promise<Envelope<{ delivered: boolean }>>;
  /** Every event from now on; answers a function that ends it. */
  listen(receive: (event: NumberedEvent) => void): () => void;
  /** Address of a derived picture, from Photo.derivatives or a blob id. */
  readonly pictureBase: string;
  /** Address under which a finished document can be read for the preview. */
  readonly documentBase: string;
};
