/** The decoder process: decodes the pictures it is sent, one after the other. Whatever happens here costs one picture. */
import { AppError, type ErrorShape } from '#shared-types/errors.ts';
import { createDurableFiles } from '../files/durable-files.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { parentPort, whenParentGone } from '../processes/parent-port.ts';
import { decodePicture, restrainImageLibrary } from './decode-picture.ts';
import { makePlate } from './make-plate.ts';
import { decodeOrderMessageSchema, isPlateOrder, type DecoderMessage } from './decoder-messages.ts';

const port = parentPort();
const files = createDurableFiles();
const say = (message: DecoderMessage) => {
  port.send(message);
};

restrainImageLibrary();
// Nothing here is worth finishing without a parent, and an orderly exit would wait for native code.
whenParentGone(() => {
  process.kill(process.pid, 'SIGKILL');
});

let before: Promise<void> = Promise.resolve();
port.onMessage((message) => {
  before = before.then(() => obey(message));
});
reachFaultPoint('decoder.start');
say({ say: 'ready' });

async function obey(message: unknown): Promise<void> {
  const { id, order } = decodeOrderMessageSchema.parse(message);
  try {
    reachFaultPoint('decoder.decode', order.sha256);
    if (isPlateOrder(order)) say({ say: 'plate-made', id, plate: await makePlate(order, files) });
    else say({ say: 'decoded', id, picture: await decodePicture(order, files) });
  } catch (error) {
    say({ say: 'failed', id, error: asShape(error) });
  }
}

function asShape(error: unknown): ErrorShape {
  if (error instanceof AppError) return error.toShape();
  // A bug, not the picture's fault: its trace goes to the log by way of standard error.
  console.error(error);
  return new AppError('unexpected').toShape();
}
