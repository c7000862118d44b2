/** Brings one original to the size in which it is printed. Runs in a decoder process only, like decodePicture(). */
import type { DurableFiles } from '../files/durable-files.ts';
import { brokenPicture, openOriginal, uprightWithin, writePicture } from './decode-picture.ts';
import type { PlateMade, PlateOrder } from './decoder-messages.ts';
import { plateKind } from './derivative-kinds.ts';
import { sniffPicture } from './sniff.ts';

/**
 * Nothing of the original's metadata is asked for, so none is written: neither place nor camera is printed with a
 * plate. Errors: those of sniffPicture(), `picture-broken`, `disk-full`, `disk-refused`.
 */
export async function makePlate(order: PlateOrder, files: DurableFiles): Promise<PlateMade> {
  const sniffed = await sniffPicture(order.path, order.sourceName);
  const { data, info } = await resampled(order, sniffed);
  await writePicture(data, order.plate, order.sourceName, files);
  return { width: info.width, height: info.height };
}

async function resampled(order: PlateOrder, sniffed: Awaited<ReturnType<typeof sniffPicture>>) {
  try {
    return await uprightWithin(openOriginal(order.path, sniffed), order.width, order.height)
      .jpeg({ quality: plateKind.quality, quantisationTable: plateKind.quantisationTable })
      .toBuffer({ resolveWithObject: true });
  } catch (error) {
    throw brokenPicture(error, order.sourceName);
  }
}
