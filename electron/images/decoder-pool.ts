/**
 * A few decoder processes that take pictures from one queue. A decoder that dies or takes too long costs the picture
 * it had and is replaced; the others never notice.
 */
import { AppError } from '#shared-types/errors.ts';
import type { ChildPort, ProcessBroker } from '../processes/child-port.ts';
import {
  decoderMessageSchema,
  type DecodedPicture,
  type DecodeOrder,
  type PlateMade,
  type PlateOrder,
} from './decoder-messages.ts';

export type DecoderPoolOptions = {
  /** Decoders at work at the same time, at most. Each is started when it is first needed. */
  readonly size: number;
  /** Longest time for one picture, in milliseconds, from when a ready decoder was given it. */
  readonly timeoutMs: number;
  /** Longest time for a decoder to start, in milliseconds. */
  readonly startTimeoutMs?: number;
};

export type DecoderPool = {
  /**
   * Errors: what decodePicture() throws, and `picture-too-slow`, `picture-killed-decoder`, `decoder-unavailable`;
   * `job-stopped` for pictures that were waiting or at work when the pool was closed.
   */
  decode(order: DecodeOrder): Promise<DecodedPicture>;
  /** Errors: what makePlate() throws, and those of a decoder as above. */
  makePlate(order: PlateOrder): Promise<PlateMade>;
  /** Ends every decoder and returns when all are gone. */
  close(): Promise<void>;
};

type Settle<Value> = {
  readonly resolve: (value: Value) => void;
  readonly reject: (error: unknown) => void;
};

type Task =
  | { readonly make: 'copies'; readonly order: DecodeOrder; readonly settle: Settle<DecodedPicture> }
  | { readonly make: 'plate'; readonly order: PlateOrder; readonly settle: Settle<PlateMade> };

type Decoder = {
  readonly port: ChildPort;
  readonly gone: Promise<void>;
  ready: boolean;
  /** The picture it has, with its number; null while it is idle. */
  work: { readonly id: number; readonly task: Task } | null;
  timer: NodeJS.Timeout | null;
  /** Why it is being killed, where it is the pool that does it. */
  verdict: AppError | null;
};

export function createDecoderPool(broker: ProcessBroker, options: DecoderPoolOptions): DecoderPool {
  const startTimeoutMs = options.startTimeoutMs ?? 30_000;
  const queue: Task[] = [];
  const decoders = new Set<Decoder>();
  let lastId = 0;
  let closed = false;

  const stopTimer = (decoder: Decoder) => {
    if (decoder.timer !== null) clearTimeout(decoder.timer);
    decoder.timer = null;
  };

  const killAfter = (decoder: Decoder, milliseconds: number, verdict: () => AppError) => {
    stopTimer(decoder);
    decoder.timer = setTimeout(() => {
      decoder.verdict = verdict();
      decoder.port.kill();
    }, milliseconds);
  };

  function start(): Decoder {
    const port = broker.start('decoder');
    let tellGone: () => void = () => undefined;
    const gone = new Promise<void>((resolve) => (tellGone = resolve));
    const decoder: Decoder = { port, gone, ready: false, work: null, timer: null, verdict: null };
    decoders.add(decoder);
    port.onMessage((message) => {
      hear(decoder, message);
    });
    port.onExit(() => {
      stopTimer(decoder);
      decoders.delete(decoder);
      const lost = decoder.work?.task;
      lost?.settle.reject(decoder.verdict ?? deathOf(decoder, lost));
      tellGone();
      handOut();
    });
    return decoder;
  }

  function deathOf(decoder: Decoder, task: Task): AppError {
    const code = decoder.ready ? 'picture-killed-decoder' : 'decoder-unavailable';
    return new AppError(code, { name: task.order.sourceName });
  }

  function give(decoder: Decoder, task: Task): void {
    lastId += 1;
    decoder.work = { id: lastId, task };
    if (decoder.ready) send(decoder);
    else {
      killAfter(
        decoder,
        startTimeoutMs,
        () => new AppError('decoder-unavailable', { name: task.order.sourceName }),
      );
    }
  }

  function send(decoder: Decoder): void {
    if (decoder.work === null) return;
    const { id, task } = decoder.work;
    const seconds = options.timeoutMs / 1000;
    killAfter(
      decoder,
      options.timeoutMs,
      () => new AppError('picture-too-slow', { name: task.order.sourceName, seconds }),
    );
    decoder.port.send({ id, order: task.order });
  }

  function hear(decoder: Decoder, message: unknown): void {
    const parsed = decoderMessageSchema.safeParse(message);
    if (!parsed.success) {
      // A decoder that talks nonsense has been damaged by its picture.
      decoder.verdict ??= new AppError('picture-killed-decoder', {
        name: decoder.work?.task.order.sourceName ?? '',
      });
      decoder.port.kill();
      return;
    }
    const said = parsed.data;
    if (said.say === 'ready') {
      decoder.ready = true;
      send(decoder);
      return;
    }
    // Killed in the very moment it answered: its exit decides what becomes of the picture.
    if (decoder.work?.id !== said.id || decoder.verdict !== null) return;
    const { task } = decoder.work;
    decoder.work = null;
    stopTimer(decoder);
    if (said.say === 'failed') task.settle.reject(AppError.fromShape(said.error));
    else if (said.say === 'decoded' && task.make === 'copies') task.settle.resolve(said.picture);
    else if (said.say === 'plate-made' && task.make === 'plate') task.settle.resolve(said.plate);
    else task.settle.reject(deathOf(decoder, task));
    handOut();
  }

  function handOut(): void {
    while (!closed && queue.length > 0) {
      const idle = [...decoders].find((decoder) => decoder.work === null && decoder.verdict === null);
      if (idle === undefined && decoders.size >= options.size) return;
      const task = queue.shift();
      if (task !== undefined) give(idle ?? start(), task);
    }
  }

  function take<Value>(taskOf: (settle: Settle<Value>) => Task): Promise<Value> {
    return new Promise<Value>((resolve, reject) => {
      if (closed) {
        reject(new AppError('job-stopped'));
        return;
      }
      queue.push(taskOf({ resolve, reject }));
      handOut();
    });
  }

  return {
    decode: (order) => take((settle) => ({ make: 'copies', order, settle })),
    makePlate: (order) => take((settle) => ({ make: 'plate', order, settle })),
    close: async () => {
      closed = true;
      for (const task of queue.splice(0)) task.settle.reject(new AppError('job-stopped'));
      const all = [...decoders];
      for (const decoder of all) {
        stopTimer(decoder);
        decoder.verdict = new AppError('job-stopped');
        decoder.port.kill();
      }
      await Promise.all(all.map((decoder) => decoder.gone));
    },
  };
}
