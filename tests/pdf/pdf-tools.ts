/** The outside judges of a PDF: qpdf and the Poppler programs. */
import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { promisify } from 'node:util';

import sharp from 'sharp';

const run = promisify(execFile);
const options = { maxBuffer: 256 * 1024 * 1024 };

/** Rejects with qpdf's findings when the file has any, warnings too (qpdf ends with code 3 then). */
export async function qpdfCheck(file: string): Promise<string> {
  return (await run('qpdf', ['--check', file], options)).stdout;
}

/** Everything on the pages in reading order, a form feed after each page. */
export async function textOf(file: string, ...more: string[]): Promise<string> {
  return (await run('pdftotext', [...more, file, '-'], options)).stdout;
}

/** Each page's text between head and foot, by the page's margins in points. */
export async function bodyTexts(
  file: string,
  page: { width: number; height: number; margins: { top: number; bottom: number } },
): Promise<string[]> {
  const top = Math.floor(page.margins.top) - 4;
  const height = Math.ceil(page.height - page.margins.bottom) - top;
  const crop = ['-x', '0', '-y', `${top}`, '-W', `${Math.ceil(page.width)}`, '-H', `${height}`];
  const pages = (await textOf(file, ...crop)).split('\f');
  return pages.slice(0, -1);
}

export type EmbeddedFont = { readonly name: string; readonly embedded: boolean; readonly toUnicode: boolean };

export async function fontsOf(file: string): Promise<EmbeddedFont[]> {
  const { stdout } = await run('pdffonts', [file], options);
  return stdout
    .trim()
    .split('\n')
    .slice(2)
    .map((line) => {
      const fields = line.trim().split(/\s+/);
      // From the right: object number and generation, uni, sub, emb.
      return { name: fields[0] ?? '', embedded: fields.at(-5) === 'yes', toUnicode: fields.at(-3) === 'yes' };
    });
}

/** What pdfinfo reports, by its labels. */
export async function infoOf(file: string): Promise<Map<string, string>> {
  const { stdout } = await run('pdfinfo', ['-isodates', file], options);
  return new Map(
    stdout.split('\n').map((line) => {
      const colon = line.indexOf(':');
      return [line.slice(0, colon), line.slice(colon + 1).trim()];
    }),
  );
}

/** XMP and document properties as ExifTool reads them, "XMP-dc:Title" and the like. */
export async function exifToolOf(file: string): Promise<Record<string, unknown>> {
  const { stdout } = await run('exiftool', ['-json', '-G1', file], options);
  const [first] = JSON.parse(stdout) as Record<string, unknown>[];
  return first ?? {};
}

export type Raster = {
  readonly width: number;
  readonly height: number;
  /** Red, green and blue at a pixel, 0 to 255. */
  at(x: number, y: number): readonly [number, number, number];
};

/** One page, counted from 1, as pdftoppm draws it. */
export async function rasterOf(file: string, page: number, dpi: number, target: string): Promise<Raster> {
  await run('pdftoppm', ['-r', `${dpi}`, '-f', `${page}`, '-singlefile', '-png', file, target], options);
  const { data, info } = await sharp(readFileSync(`${target}.png`))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return {
    width: info.width,
    height: info.height,
    at: (x, y) => {
      const place = (y * info.width + x) * info.channels;
      return [data.readUInt8(place), data.readUInt8(place + 1), data.readUInt8(place + 2)];
    },
  };
}
