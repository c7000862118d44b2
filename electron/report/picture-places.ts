/**
 * Pictures stay out of the layout: it is given a stand-in of a few bytes for each, and the pictures take their places
 * when the document is finished. Hundreds of them are then held once, and copied once, instead of at every step.
 */
import { readFileSync } from 'node:fs';

import { JpegEmbedder, PDFName, PDFRawStream, type PDFDocument } from 'pdf-lib';

/** ISO/IEC 10918-1: start of image, comment, start of frame (8 bits, 1 x 1, three components), end of image. */
const start = [0xff, 0xd8];
const comment = [0xff, 0xfe];
const frame = [0xff, 0xc0, 0, 17, 8, 0, 1, 0, 1, 3, 1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0];
const end = [0xff, 0xd9];
/** Bytes from the beginning to the name: the two markers and the comment's length. */
const beforeName = 6;

/** What the layout is given for a picture: the head of a JPEG with the picture's name in a comment, as a data URL. */
export function standIn(name: string): string {
  const words = Buffer.from(name, 'utf8');
  const length = words.length + 2;
  const parts = [start, comment, [length >> 8, length & 0xff], [...words], frame, end];
  return `data:image/jpeg;base64,${Buffer.from(parts.flat()).toString('base64')}`;
}

function nameOf(bytes: Uint8Array): string {
  const data = Buffer.from(bytes);
  return data.toString('utf8', beforeName, beforeName - 2 + data.readUInt16BE(beforeName - 2));
}

/**
 * Puts the picture in the place of each stand-in of the document. `pictures`: absolute path of a JPEG for each name.
 * Throws an Error for a stand-in whose picture was not given, and what reading its file throws.
 */
export async function placePictures(
  document: PDFDocument,
  pictures: Readonly<Record<string, string>>,
): Promise<void> {
  const { context } = document;
  for (const [ref, object] of context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFRawStream) || object.dict.get(PDFName.of('Subtype')) !== image) continue;
    const name = nameOf(object.contents);
    const path = pictures[name];
    if (path === undefined) throw new Error(`the layout asks for a picture that was not given: ${name}`);
    // A copy of its own: small files are read into a part of a larger block, from whose beginning the embedder reads.
    const picture = await JpegEmbedder.for(new Uint8Array(readFileSync(path)));
    await picture.embedIntoContext(context, ref);
  }
}

const image = PDFName.of('Image');
