/** The laid out document made whole: its pictures, and what it says of itself. */
import type { ReportModel } from '#analysis/report/report-model.ts';
import { PDFDocument, PDFName, PDFRef } from 'pdf-lib';

import { addOutline, headingsOf } from './outline-of-pdf.ts';
import { placePictures } from './picture-places.ts';
import { xmpPacket } from './xmp-packet.ts';

/**
 * Puts the pictures in; sets title, author, subject, language, producer, dates and outline; leaves the pages as they are.
 * `pictures`: absolute path of an upright JPEG for every name that the layout was given. Throws what reading them throws.
 */
export async function finishPdf(
  bytes: Uint8Array,
  model: ReportModel,
  pictures: Readonly<Record<string, string>>,
): Promise<{ readonly bytes: Uint8Array; readonly pages: number }> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  await placePictures(document, pictures);
  const { title, subject, author, language, producer } = model.properties;
  const madeAt = new Date(model.madeAt);
  document.setTitle(title, { showInWindowTitleBar: true });
  document.setSubject(subject);
  document.setAuthor(author);
  document.setLanguage(language);
  document.setProducer(producer);
  document.setCreator(producer);
  document.setCreationDate(madeAt);
  document.setModificationDate(madeAt);
  replaceMetadata(document, xmpPacket(model));
  addOutline(document, headingsOf(model));
  const finished = await document.save({ addDefaultPage: false, updateFieldAppearances: false });
  return { bytes: finished, pages: document.getPageCount() };
}

/** The layout's own packet neither escapes what it prints nor knows who made the document. */
function replaceMetadata(document: PDFDocument, packet: string): void {
  const { context, catalog } = document;
  const name = PDFName.of('Metadata');
  const old = catalog.get(name);
  if (old instanceof PDFRef) context.delete(old);
  const stream = context.stream(new TextEncoder().encode(packet), { Type: 'Metadata', Subtype: 'XML' });
  catalog.set(name, context.register(stream));
}
