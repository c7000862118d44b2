import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { DecodeOrder } from '../../../electron/images/decoder-messages.ts';
import { AppError } from '#shared-types/errors.ts';
import { scratchFolder } from '../../support/files/scratch-folder.ts';
import { decoderPool, orderFor } from '../../support/pictures/decoding.ts';
import { writeTags } from '../../support/pictures/exiftool.ts';
import { markedJpeg, noisyJpeg } from '../../support/pictures/marked-picture.ts';

async function batch(folder: string, count: number): Promise<DecodeOrder[]> {
  const pictures = await Promise.all(Array.from({ length: count }, (_none, index) => noisyJpeg(index)));
  return pictures.map((picture, index) => orderFor(folder, `photo-${index}.jpg`, picture));
}

/** Name -> 'decoded' or the error's code. */
function outcomes(
  orders: readonly DecodeOrder[],
  settled: readonly PromiseSettledResult<unknown>[],
): Record<string, string> {
  return Object.fromEntries(
    settled.map((outcome, index): [string, string] => {
      const name = orders[index]?.sourceName ?? '';
      if (outcome.status === 'fulfilled') return [name, 'decoded'];
      if (!(outcome.reason instanceof AppError)) throw outcome.reason;
      expect(outcome.reason.details.name).toBe(name);
      expect(outcome.reason.message).not.toMatch(/[{}]/);
      return [name, outcome.reason.code];
    }),
  );
}

const allDecodedBut = (code: string, culprit: number, count: number) =>
  Object.fromEntries(
    Array.from({ length: count }, (_none, index) => [
      `photo-${index}.jpg`,
      index === culprit ? code : 'decoded',
    ]),
  );

const faultOf = (action: string, order: DecodeOrder | undefined) => ({
  TEARDOWN_DOCKET_FAULT: `decoder.decode:${action}@${order?.sha256.slice(0, 12)}`,
});

describe('decoders', () => {
  it('decode a batch in no more processes than they may be', async () => {
    const orders = await batch(scratchFolder(), 7);
    const { pool, started } = decoderPool({ size: 2 });
    const settled = await Promise.allSettled(orders.map((order) => pool.decode(order)));
    expect(outcomes(orders, settled)).toEqual(allDecodedBut('', -1, 7));
    expect(started).toHaveLength(2);
    for (const order of orders) {
      expect([existsSync(order.display), existsSync(order.thumbnail)]).toEqual([true, true]);
    }
  });

  it('keep the time a camera wrote whatever zone this computer is in', async () => {
    const order = orderFor(scratchFolder(), 'front.jpg', await markedJpeg());
    writeTags({ path: order.path, tags: { DateTimeOriginal: '2025:06:30 00:30:00' } });
    const { pool } = decoderPool({ environment: { TZ: 'Pacific/Auckland' } });
    expect((await pool.decode(order)).takenAt).toEqual({
      local: '2025-06-30T00:30:00',
      offsetMinutes: null,
      precision: 'second',
    });
  });

  it('say what is wrong with a picture, and go on with the next in the same process', async () => {
    const folder = scratchFolder();
    const orders = [
      orderFor(folder, 'photo-0.jpg', await noisyJpeg(0)),
      orderFor(folder, 'photo-1.jpg', (await noisyJpeg(1)).subarray(0, 5_000)),
      orderFor(folder, 'photo-2.jpg', await noisyJpeg(2)),
    ];
    const { pool, started } = decoderPool({ size: 1 });
    const settled = await Promise.allSettled(orders.map((order) => pool.decode(order)));
    expect(outcomes(orders, settled)).toEqual(allDecodedBut('picture-broken', 1, 3));
    expect(started).toHaveLength(1);
  });
});

describe('a decoder that dies', () => {
  it.each([1, 2])('costs its own picture and is replaced (%i at a time)', async (size) => {
    const orders = await batch(scratchFolder(), 6);
    const { pool, started } = decoderPool({ size, environment: faultOf('kill', orders[2]) });
    const settled = await Promise.allSettled(orders.map((order) => pool.decode(order)));
    expect(outcomes(orders, settled)).toEqual(allDecodedBut('picture-killed-decoder', 2, 6));
    expect(started).toHaveLength(size + 1);
  });

  it('before it ever worked is said to, for each picture', async () => {
    const orders = await batch(scratchFolder(), 2);
    const { pool } = decoderPool({ size: 1, environment: { TEARDOWN_DOCKET_FAULT: 'decoder.start:kill@1' } });
    const settled = await Promise.allSettled(orders.map((order) => pool.decode(order)));
    expect(outcomes(orders, settled)).toEqual({
      'photo-0.jpg': 'decoder-unavailable',
      'photo-1.jpg': 'decoder-unavailable',
    });
  });
});

describe('a picture that takes too long', () => {
  it('is given up by name, its decoder killed and replaced', async () => {
    const orders = await batch(scratchFolder(), 4);
    const { pool, started } = decoderPool({
      size: 1,
      timeoutMs: 5_000,
      environment: faultOf('hang', orders[1]),
    });
    const settled = await Promise.allSettled(orders.map((order) => pool.decode(order)));
    expect(outcomes(orders, settled)).toEqual(allDecodedBut('picture-too-slow', 1, 4));
    expect(settled[1]).toMatchObject({ reason: { details: { seconds: 5 } } });
    expect(started).toHaveLength(2);
  });
});

describe('closing the pool', () => {
  it('ends what is at work and what waits, and leaves no process', async () => {
    const orders = await batch(scratchFolder(), 3);
    const { pool, started } = decoderPool({ size: 1, environment: faultOf('hang', orders[0]) });
    const all = Promise.allSettled(orders.map((order) => pool.decode(order)));
    await pool.close();
    expect((await all).map((one) => one.status === 'rejected' && (one.reason as AppError).code)).toEqual([
      'job-stopped',
      'job-stopped',
      'job-stopped',
    ]);
    const [processNumber = 0] = started;
    expect(processNumber).toBeGreaterThan(0);
    expect(() => process.kill(processNumber, 0)).toThrow('ESRCH');
    await expect(pool.decode(orders[0] as DecodeOrder)).rejects.toMatchObject({ code: 'job-stopped' });
  });

  it('is not needed when the parent dies: its decoders end with it', async () => {
    const folder = scratchFolder();
    const order = orderFor(folder, 'front.jpg', await noisyJpeg(0));
    writeFileSync(`${folder}/order.json`, JSON.stringify(order));
    const script = fileURLToPath(new URL('../../support/pictures/dying-parent.ts', import.meta.url));
    const parent = spawn(process.execPath, [script, `${folder}/order.json`, `${folder}/pid`], {
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    const exited = once(parent, 'exit');
    parent.stderr.resume();
    // The decoder holds the other end of this pipe: it is closed when the decoder, too, is gone.
    await once(parent.stderr, 'close');
    expect(await exited).toEqual([null, 'SIGKILL']);
    expect(existsSync(order.display)).toBe(true);
    expect(Number(readFileSync(`${folder}/pid`, 'utf8'))).toBeGreaterThan(0);
  });
});
