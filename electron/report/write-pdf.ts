/** Lays the report out and writes it as PDF bytes. Reads the embedded fonts and the given pictures, nothing else. */
import { readFileSync } from 'node:fs';

import type { ReportModel } from '#analysis/report/report-model.ts';
import { faces, type Face } from '#analysis/text/font-metrics.ts';
import pdfmake from 'pdfmake';

import { fontFile } from './font-files.ts';
import { pageLayout } from './page-layout.ts';
import { printableText } from './printable-text.ts';
import { tableLayouts } from './table-layouts.ts';
import { readTrueType, type TrueTypeFile } from './truetype-file.ts';

function readFonts(): Record<Face, TrueTypeFile> {
  const read = faces.map((face) => [face, readTrueType(readFileSync(fontFile(face)))] as const);
  return Object.fromEntries(read) as Record<Face, TrueTypeFile>;
}

let fonts: Record<Face, TrueTypeFile> | null = null;

/**
 * `pictures`: absolute path of an upright JPEG for each blob id, and for each name of a thumbnail. The same model and pictures give the same bytes.
 * pdfmake is one object for the whole thread: do not call this again before it has answered.
 */
export async function writePdf(
  model: ReportModel,
  pictures: Readonly<Record<string, string>>,
): Promise<Uint8Array> {
  fonts ??= readFonts();
  const readable = new Set([...faces.map(fontFile), ...Object.values(pictures)]);
  pdfmake.setFonts({
    sans: {
      normal: fontFile('sans-400'),
      bold: fontFile('sans-600'),
      italics: fontFile('sans-400-italic'),
    },
    serif: {
      normal: fontFile('serif-400'),
      bold: fontFile('serif-600'),
      italics: fontFile('serif-400-italic'),
    },
  });
  pdfmake.setTableLayouts(tableLayouts);
  pdfmake.setLocalAccessPolicy((path) => readable.has(path));
  pdfmake.setUrlAccessPolicy(() => false);
  return await pdfmake.createPdf(pageLayout(model, pictures, printableText(fonts))).getBuffer();
}
