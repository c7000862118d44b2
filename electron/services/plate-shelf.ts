/** The plates' pictures: each original brought to the size in which it is printed, kept, and made again when lost. */
import { AppError } from '#shared-types/errors.ts';

import type { StoredPicture } from '../database/repositories/blobs.ts';
import type { PlateCut } from '../files/plate-cache.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { named } from './picture-shelf.ts';
import type { Services } from './services.ts';

/**
 * How many bytes of plates are kept from one start to the next: some fifteen reports of 300 plates. What was not used
 * for longest goes first.
 */
export const plateBytesKept = 2_000_000_000;

/**
 * Absolute path of a picture in this size, upright and without anything the camera wrote into it.
 * @throws AppError original-missing, file-*, picture-*, disk-full, disk-refused
 */
export async function plateOf(
  services: Pick<Services, 'store' | 'decoders'>,
  { sha256, sourceName }: StoredPicture,
  cut: PlateCut,
): Promise<string> {
  const { store, decoders } = services;
  if (await store.usePlate(sha256, cut)) return store.platePath(sha256, cut);
  if (!(await store.hasOriginal(sha256))) throw new AppError('original-missing', { name: sourceName });
  const plate = store.plateTempPath();
  try {
    await decoders.makePlate({ sha256, sourceName, path: store.originalPath(sha256), plate, ...cut });
    reachFaultPoint('plate.made', sha256);
    await store.commitPlate(plate, sha256, cut);
    reachFaultPoint('plate.kept', sha256);
  } catch (error) {
    throw named(error, sourceName);
  } finally {
    await store.discardTemp(plate);
  }
  return store.platePath(sha256, cut);
}
