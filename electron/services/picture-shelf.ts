/** The pictures a page may see: made by us from the originals, and made again whenever the cache has lost them. */
import { AppError } from '#shared-types/errors.ts';
import { blobIdSchema } from '#shared-types/ids.ts';

import { findStoredPicture, type StoredPicture } from '../database/repositories/blobs.ts';
import { derivativeKinds, type DerivativeKind } from '../images/derivative-kinds.ts';
import type { DecodedPicture, DecodeOrder } from '../images/decoder-messages.ts';
import type { ServedFile } from '../processes/engine-messages.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import type { Services } from './services.ts';

/**
 * Decodes a picture outside this process and puts its thumbnail and display copy into the store.
 * @throws AppError file-*, picture-*, disk-full, disk-refused, naming `sourceName`
 */
export async function decodeIntoStore(
  services: Pick<Services, 'store' | 'decoders'>,
  picture: Pick<DecodeOrder, 'path' | 'sourceName' | 'sha256'>,
): Promise<DecodedPicture> {
  const { store, decoders } = services;
  const thumbnail = store.derivativeTempPath(picture.sha256, 'thumbnail');
  const display = store.derivativeTempPath(picture.sha256, 'display');
  try {
    const decoded = await decoders.decode({ ...picture, thumbnail, display });
    await store.commitDerivative(thumbnail, picture.sha256, 'thumbnail');
    reachFaultPoint('picture.thumbnail-kept', picture.sha256);
    await store.commitDerivative(display, picture.sha256, 'display');
    return decoded;
  } catch (error) {
    throw named(error, picture.sourceName);
  } finally {
    await store.discardTemp(thumbnail);
    await store.discardTemp(display);
  }
}

/**
 * The file behind `thumbnail/<blob id>` or `display/<blob id>`.
 * @throws AppError not-found, original-missing, picture-*
 */
export async function servePicture(services: Services, address: string): Promise<ServedFile> {
  const [kindWord = '', idWord = '', ...more] = address.split('/');
  const id = blobIdSchema.safeParse(idWord);
  if (!isDerivativeKind(kindWord) || !id.success || more.length > 0) {
    throw new AppError('not-found', { thing: 'picture' });
  }
  const picture = findStoredPicture(services.db, id.data);
  if (picture === null) throw new AppError('not-found', { thing: 'picture' });
  await rebuildIfLost(services, picture, kindWord);
  const { extension, mediaType } = derivativeKinds[kindWord];
  return {
    file: services.store.derivativePath(picture.sha256, kindWord),
    mediaType,
    fileName: `${kindWord}.${extension}`,
  };
}

/** Absolute path of a picture's upright copy of a kind, made again if the cache has lost it. */
export async function derivedCopy(
  services: Services,
  picture: StoredPicture,
  kind: DerivativeKind,
): Promise<string> {
  await rebuildIfLost(services, picture, kind);
  return services.store.derivativePath(picture.sha256, kind);
}

async function rebuildIfLost(
  services: Services,
  { sha256, sourceName }: StoredPicture,
  kind: DerivativeKind,
): Promise<void> {
  const { store } = services;
  if (await store.hasDerivative(sha256, kind)) return;
  if (!(await store.hasOriginal(sha256))) throw new AppError('original-missing', { name: sourceName });
  await decodeIntoStore(services, { path: store.originalPath(sha256), sourceName, sha256 });
  services.log.note('derived pictures made again');
}

/** The user knows the picture's name, not the store's paths. */
export function named(error: unknown, sourceName: string): unknown {
  const isOfDisk = error instanceof AppError && (error.code === 'disk-full' || error.code === 'disk-refused');
  if (!isOfDisk) return error;
  const { code, details, retryable } = error;
  return new AppError(code, { ...details, what: sourceName }, { retryable, cause: error });
}

function isDerivativeKind(word: string): word is DerivativeKind {
  return Object.hasOwn(derivativeKinds, word);
}
