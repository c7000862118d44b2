/** Where pictures stand on a page, read from the page's own operators by pdf.js. */
import { readFileSync } from 'node:fs';

import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** PDF user space: points from the bottom left of the page. */
export type Placement = {
  /** Counted from 1. */
  readonly page: number;
  readonly pageHeight: number;
  /** ISO 32000-1, 8.9.5: an image fills the unit square; [a b c d e f] takes that square to the page. */
  readonly matrix: Matrix;
};

export type Matrix = readonly [number, number, number, number, number, number];
type XY = { readonly x: number; readonly y: number };

/** Placements of all pictures in the order they are painted. */
export async function placementsOf(file: string): Promise<Placement[]> {
  const loading = getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 });
  const document = await loading.promise;
  try {
    const found: Placement[] = [];
    for (let number = 1; number <= document.numPages; number++) {
      const page = await document.getPage(number);
      const { fnArray, argsArray } = await page.getOperatorList();
      const pageHeight = page.getViewport({ scale: 1 }).height;
      let matrix: Matrix = [1, 0, 0, 1, 0, 0];
      const stack: Matrix[] = [];
      fnArray.forEach((operator, index) => {
        if (operator === OPS.save) stack.push(matrix);
        else if (operator === OPS.restore) matrix = stack.pop() ?? [1, 0, 0, 1, 0, 0];
        else if (operator === OPS.transform) matrix = product(argsArray[index] as Matrix, matrix);
        else if (operator === OPS.paintImageXObject) found.push({ page: number, pageHeight, matrix });
      });
    }
    return found;
  } finally {
    await loading.destroy();
  }
}

/** `first` applied before `then` (ISO 32000-1, 8.3.4). */
function product(first: Matrix, then: Matrix): Matrix {
  const [a, b, c, d, e, f] = first;
  const [A, B, C, D, E, F] = then;
  return [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];
}

/** Where a point of the picture (pixels from its top left) falls on the page, in pixels of a raster of it. */
export function onRaster(
  placement: Placement,
  picture: { readonly width: number; readonly height: number },
  point: XY,
  dpi: number,
): XY {
  const u = point.x / picture.width;
  const v = 1 - point.y / picture.height;
  const [a, b, c, d, e, f] = placement.matrix;
  const scale = dpi / 72;
  return { x: (a * u + c * v + e) * scale, y: (placement.pageHeight - (b * u + d * v + f)) * scale };
}
