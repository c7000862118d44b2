/** Lays the report out and writes it as PDF bytes, with stand-ins for its pictures. Reads the embedded fonts, nothing else. */
import { readFileSync } from 'node:fs';

import type { ReportModel } from '#analysis/report/report-model.ts';
import { faces, type Face } from '#analysis/text/font-metrics.ts';
import pdfmake from 'pdfmake';

import { fontFile } from './font-files.ts';
import { pageLayout } from './page-layout.ts';
import { standIn } from './picture-places.ts';
import { printableText } from './printable-text.ts';
import { tableLayouts } from './table-layouts.ts';
import { readTrueType, type TrueTypeFile } from './truetype-file.ts';

function readFonts(): Record<Face, TrueTypeFile> {
  const read = faces.map((face) => [face, readTrueType(readFileSync(fontFile(face)))] as const);
  return Object.fromEntries(read) as Record<Face, TrueTypeFile>;
}

let fonts: Record<Face, TrueTypeFile> | null = null;

/**
 * `pictures`: the names under which the layout may ask for a picture. The same model gives the same bytes.
 * pdfmake is one object for the whole thread: do not call this again before it has answered.
 */
export async function writePdf(model: ReportModel, pictures: readonly string[]): Promise<Uint8Array> {
  fonts ??= readFonts();
  const readable = new Set(faces.map(fontFile));
  const images = Object.fromEntries(pictures.map((name) => [name, standIn(name)]));
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
  return await pdfmake.createPdf(pageLayout(model, images, printableText(fonts))).getBuffer();
}
