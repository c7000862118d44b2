/**
 * Run as a process of its own, under another user than root, whom no permission refuses:
 * tries to add argv[3] to a photo store in the folder argv[2] and prints the error's shape as JSON, or null.
 */
import { AppError } from '#shared-types/errors.ts';
import { createDurableFiles } from '../../../electron/files/durable-files.ts';
import { createPhotoStore } from '../../../electron/files/photo-store.ts';

const [, , folder = '', source = ''] = process.argv;

try {
  await createPhotoStore(folder, createDurableFiles()).addOriginal(source, 'front.jpg');
  process.stdout.write('null');
} catch (error) {
  if (!(error instanceof AppError)) throw error;
  process.stdout.write(JSON.stringify(error.toShape()));
}
