/** A dropped file streamed to a temporary one, never longer than the largest photo allowed. */
import { open, rm, type FileHandle } from 'node:fs/promises';
import type { IncomingMessage } from 'node:http';
import { join } from 'node:path';

import { AppError } from '#shared-types/errors.ts';

import { asDiskError } from '../files/disk-error.ts';
import { pictureLimits } from '../images/picture-limits.ts';
import { toldError } from '../services/told-error.ts';

export type Upload = { readonly path: string; readonly name: string; readonly bytes: number };

/** @throws AppError file-too-large, disk-full, disk-refused; the temporary file is gone then */
export async function receiveUpload(
  request: IncomingMessage,
  place: { folder: string; id: string; name: string },
): Promise<Upload> {
  const { name } = place;
  const path = join(place.folder, `upload-${place.id}`);
  try {
    const file = await open(path, 'wx');
    try {
      return { path, name, bytes: await copyTo(file, request, name) };
    } finally {
      await file.close();
    }
  } catch (error) {
    await rm(path, { force: true });
    throw asDiskError(error, name);
  }
}

/** Reads the request to its end even when it is refused: a browser still sending does not look at an answer. */
async function copyTo(file: FileHandle, request: IncomingMessage, name: string): Promise<number> {
  const limit = pictureLimits.megabytes;
  let bytes = 0;
  let refused: AppError | null = null;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (refused !== null || bytes > limit * 1e6) continue;
    try {
      await file.writeFile(chunk);
    } catch (error) {
      refused = toldError(error, name);
    }
  }
  if (bytes > limit * 1e6) {
    throw new AppError('file-too-large', { name, megabytes: Math.ceil(bytes / 1e6), limit });
  }
  if (refused !== null) throw refused;
  return bytes;
}
