/** Prints an invented case through the worker, with plain pictures of the sizes its photos say. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import sharp from 'sharp';

import { pageGeometry } from '#analysis/report/page-geometry.ts';
import { buildReportModel, type ReportInput, type ReportModel } from '#analysis/report/report-model.ts';

import type { MadeReport, ReportMaker } from '../../electron/report/report-maker.ts';
import { bodyTexts } from './pdf-tools.ts';

export type PrintedReport = {
  readonly file: string;
  readonly bytes: Buffer;
  readonly made: MadeReport;
  readonly model: ReportModel;
  /** Text of each page between head and foot. */
  readonly bodies: readonly string[];
};

export async function plainPicture(file: string, width: number, height: number): Promise<string> {
  await sharp({ create: { width, height, channels: 3, background: '#7c8088' } })
    .jpeg()
    .toFile(file);
  return file;
}

/** Maker and folder are the caller's; the file in it is named `name`.pdf. */
export async function printReport(
  maker: ReportMaker,
  folder: string,
  input: ReportInput,
  name = 'report',
): Promise<PrintedReport> {
  const pictures: Record<string, string> = {};
  for (const photo of input.photos) {
    const file = join(folder, `${name}-${photo.blobId}.jpg`);
    pictures[photo.blobId] = await plainPicture(file, photo.displayWidth, photo.displayHeight);
  }
  const model = buildReportModel(input);
  const file = join(folder, `${name}.pdf`);
  const made = await maker.make({ model, pictures, thumbnails: pictures, outFile: file });
  const bodies = await bodyTexts(file, pageGeometry(input.paper));
  return { file, bytes: readFileSync(file), made, model, bodies };
}

/** Words alone: how a text is broken into lines and pages says nothing of what it says. */
export function withoutSpaces(text: string): string {
  return text.replace(/\s+/g, '');
}
