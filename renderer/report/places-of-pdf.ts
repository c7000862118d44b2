/** Where the named places of a document stand on its pages, and which of them a point on a page belongs to. */
import type { PDFDocumentProxy } from 'pdfjs-dist';

export type PlaceOnPage = {
  readonly name: string;
  /** Counted from 1. */
  readonly page: number;
  /** Points from the page's left and upper edge. */
  readonly x: number;
  readonly y: number;
};

/** ISO 32000-1, 12.3.2.2: [page /XYZ left top zoom], from the lower left corner of the page. */
export async function placesOfPdf(pdf: PDFDocumentProxy): Promise<PlaceOnPage[]> {
  const named = (await pdf.getDestinations()) as ReadonlyMap<string, readonly unknown[] | null>;
  const pages = new Map<string, Promise<number>>();
  const places = await Promise.all(
    [...named].map(async ([name, place]): Promise<PlaceOnPage[]> => {
      const [ref, , left, top] = place ?? [];
      if (typeof left !== 'number' || typeof top !== 'number') return [];
      const key = JSON.stringify(ref);
      const index = pages.get(key) ?? pdf.getPageIndex(ref as Parameters<typeof pdf.getPageIndex>[0]);
      pages.set(key, index);
      const page = (await index) + 1;
      const { height } = (await pdf.getPage(page)).getViewport({ scale: 1 });
      return [{ name, page, x: left, y: height - top }];
    }),
  );
  return places.flat();
}

/** A click may be a little above the line it means. */
const above = 6;
/** And a little left of a column. */
const beside = 8;

/**
 * The place that begins nearest before a point: on its page the lowest one above it whose column the point is in or
 * right of; else the last on the pages before. Null where there is none.
 */
export function placeAt(
  places: readonly PlaceOnPage[],
  point: { readonly page: number; readonly x: number; readonly y: number },
): PlaceOnPage | null {
  const before = places.filter(
    ({ page, x, y }) =>
      page < point.page || (page === point.page && y <= point.y + above && x <= point.x + beside),
  );
  const [first] = before.sort((one, other) => other.page - one.page || other.y - one.y || other.x - one.x);
  return first ?? null;
}
