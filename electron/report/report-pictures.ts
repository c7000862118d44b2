/** Looks at the pictures of a report before it is laid out, so that a bad one is named and not found out midway. */
import { open } from 'node:fs/promises';

import { AppError } from '#shared-types/errors.ts';
import { reportTexts } from '#shared-types/texts/report.ts';

import type { ReportOrder } from './report-order.ts';

/** Throws `report-picture-missing` for the first plate whose picture is not given, not there, or no JPEG. */
export async function checkPictures({
  model,
  pictures,
}: Pick<ReportOrder, 'model' | 'pictures'>): Promise<void> {
  for (const plate of model.plates.plates) {
    const reason = await trouble(pictures[plate.blobId]);
    if (reason !== null) {
      throw new AppError(
        'report-picture-missing',
        { number: plate.photoNumber, reason },
        { retryable: true },
      );
    }
  }
}

async function trouble(path: string | undefined): Promise<string | null> {
  if (path === undefined) return reportTexts.pictureReasons.notGiven;
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
