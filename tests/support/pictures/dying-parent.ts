/** Run as a process of its own: decodes the order in the file argv[2], writes its decoder's number to argv[3], dies. */
import { readFileSync, writeFileSync } from 'node:fs';
import { createDecoderPool } from '../../../electron/images/decoder-pool.ts';
import type { DecodeOrder } from '../../../electron/images/decoder-messages.ts';
import { createForkBroker } from '../../../electron/processes/fork-broker.ts';

const [, , orderFile = '', numberFile = ''] = process.argv;
const order = JSON.parse(readFileSync(orderFile, 'utf8')) as DecodeOrder;
const broker = createForkBroker({
  onStart: (_entry, processNumber) => {
    writeFileSync(numberFile, String(processNumber));
  },
});
await createDecoderPool(broker, { size: 1, timeoutMs: 60_000 }).decode(order);
process.kill(process.pid, 'SIGKILL');
