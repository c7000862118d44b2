/** Real decoder processes for tests, and files to hand to them. */
import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { createDecoderPool, type DecoderPoolOptions } from '../../../electron/images/decoder-pool.ts';
import type { DecodeOrder } from '../../../electron/images/decoder-messages.ts';
import { createForkBroker } from '../../../electron/processes/fork-broker.ts';

export type PoolForTest = Partial<DecoderPoolOptions> & {
  readonly environment?: Readonly<Record<string, string>>;
};

/** A pool of forked decoders that ends with the test. `started` counts the processes. */
export function decoderPool(options: PoolForTest = {}) {
  const { environment = {}, ...limits } = options;
  const started: (number | undefined)[] = [];
  const broker = createForkBroker({
    environment,
    onStart: (_entry, processNumber) => started.push(processNumber),
  });
  const pool = createDecoderPool(broker, { size: 2, timeoutMs: 60_000, ...limits });
  onTestFinished(() => pool.close());
  return { pool, started };
}

/** Writes the file into the folder and makes the order to decode it there. */
export function orderFor(folder: string, name: string, content: string | Buffer): DecodeOrder {
  const path = join(folder, name);
  writeFileSync(path, content);
  return {
    sha256: createHash('sha256').update(content).digest('hex'),
    sourceName: name,
    path,
    thumbnail: `${path}.thumbnail`,
    display: `${path}.display`,
  };
}
