/** Looks at the pictures of a report before it is laid out, so that a bad one is named and not found out midway. */
import { open } from 'node:fs/promises';

import { AppError } from '#shared-types/errors.ts';
import { reportTexts } from '#shared-types/texts/report.ts';

import { thumbnailName } from './annex-layout.ts';
import type { ReportOrder } from './report-order.ts';

type Pictures = Pick<ReportOrder, 'model' | 'pictures' | 'thumbnails'>;

/** Throws `report-picture-missing` for the first photo whose picture is not given, not there, or no JPEG. */
export async function checkPictures({ model, pictures, thumbnails }: Pictures): Promise<void> {
  const { pictureReasons } = reportTexts;
  for (const { blobId, photoNumber } of model.plates.plates) {
    await refuse(pictures[blobId], photoNumber, pictureReasons.notGiven);
  }
  for (const { blobId, number } of model.sheet?.photos ?? []) {
    await refuse(thumbnails[blobId], number, pictureReasons.noThumbnail);
  }
}

/** Every picture by the name under which the layout asks for it. */
export function namedPictures({ pictures, thumbnails }: Pictures): Record<string, string> {
  const small = Object.entries(thumbnails).map(([blobId, path]) => [thumbnailName(blobId), path] as const);
  return { ...pictures, ...Object.fromEntries(small) };
}

async function refuse(path: string | undefined, number: number, notGiven: string): Promise<void> {
  const reason = path === undefined ? notGiven : await trouble(path);
  if (reason !== null) {
    throw new AppError('report-picture-missing', { number, reason }, { retryable: true });
  }
}

async function trouble(path: string): Promise<string | null> {
  try {
    const file = await open(path, 'r');
    try {
      const { buffer, bytesRead } = await file.read(Buffer.alloc(3), 0, 3, 0);
      // ISO/IEC 10918-1: a JPEG begins with the marker SOI (FF D8), and another marker (FF ..) follows.
      const jpeg = bytesRead === 3 && buffer[0] === 0xff && buffer[1] === 0xd8 && buffer[2] === 0xff;
      return jpeg ? null : reportTexts.pictureReasons.notJpeg;
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof Error && 'code' in error)
      return reportTexts.pictureReasons.unreadable(String(error.code));
    throw error;
  }
}
