/** The page: sizes in PDF points (1/72 inch). */
import type { PaperSize } from '#shared-types/settings.ts';

export type PageGeometry = {
  readonly width: number;
  readonly height: number;
  readonly margins: {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
  };
  /** Width of the text. */
  readonly measure: number;
  /** Height of the text, between what stands at the head and at the foot of the page. */
  readonly textHeight: number;
};

/** ISO 216 A4 is 210 mm x 297 mm; ANSI/ASME Y14.1 size A (Letter) is 8.5 in x 11 in. */
const papers: Readonly<Record<PaperSize, { readonly width: number; readonly height: number }>> = {
  A4: { width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 },
  Letter: { width: 612, height: 792 },
};

/** Wider on the left, where a report is filed. */
const margins = { left: 60, top: 78, right: 51, bottom: 62 };

export function pageGeometry(paper: PaperSize): PageGeometry {
  const { width, height } = papers[paper];
  return {
    width,
    height,
    margins,
    measure: width - margins.left - margins.right,
    textHeight: height - margins.top - margins.bottom,
  };
}

/** Head, caption and air of a photo without marks: two such plates share a page. */
const roomForCaption = 58;
/** Share of the text's height that the picture of a marked plate may take; its key and legend stand below. */
const markedShare = 0.63;

/**
 * Printed size in points of a picture of `width` x `height` pixels: across the measure as far as the height
 * allows. A plate with marks may be higher than one without.
 */
export function plateSize(
  picture: { readonly width: number; readonly height: number },
  page: PageGeometry,
  marked: boolean,
): { readonly width: number; readonly height: number } {
  const highest = marked ? page.textHeight * markedShare : page.textHeight / 2 - roomForCaption;
  const scale = Math.min(page.measure / picture.width, highest / picture.height);
  return { width: picture.width * scale, height: picture.height * scale };
}
