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

/** Gap between two plates side by side, and between the rows of them. */
export const plateGap = 16;

/** At most so many plates on one page. */
export type PlatesAPage = 1 | 2 | 4;

/** Caption of a line or two, air, and half of the section's heading: the first plates share their page with it. */
const roomForCaption = 70;
/** Its key, and each line of its legend. */
const roomForKey = 17;
const roomForLegendLine = 12;
/** More lines than these make the picture no smaller: the plate takes more than its share of the page instead. */
const mostLegendLines = 8;
/** Shares of the text's height that the picture of a plate with a page of its own may take, with marks and without. */
const shares = { marked: 0.63, unmarked: 0.78 } as const;

export type PlateRoom = {
  readonly platesAPage: PlatesAPage;
  /** Null for a picture without marks. */
  readonly legendLines: number | null;
};

/**
 * Printed size in points of a picture of `width` x `height` pixels: across its column as far as the height allows.
 * With four to a page there are two columns.
 */
export function plateSize(
  picture: { readonly width: number; readonly height: number },
  page: PageGeometry,
  { platesAPage, legendLines }: PlateRoom,
): { readonly width: number; readonly height: number } {
  const widest = platesAPage === 4 ? (page.measure - plateGap) / 2 : page.measure;
  const highest =
    platesAPage === 1
      ? page.textHeight * (legendLines === null ? shares.unmarked : shares.marked)
      : page.textHeight / 2 - roomForCaption - roomBelow(legendLines);
  const scale = Math.min(widest / picture.width, highest / picture.height);
  return { width: picture.width * scale, height: picture.height * scale };
}

function roomBelow(legendLines: number | null): number {
  return legendLines === null ? 0 : roomForKey + roomForLegendLine * Math.min(legendLines, mostLegendLines);
}

/** Pixels of the page's pictures for each inch it is printed. */
const dotsPerInch = 300;

/** What a picture printed at this size needs in pixels; never more than it has. */
export function printedPixels(
  picture: { readonly width: number; readonly height: number },
  printed: { readonly width: number; readonly height: number },
): { readonly width: number; readonly height: number } {
  const needed = (points: number) => Math.max(1, Math.round((points / 72) * dotsPerInch));
  const width = needed(printed.width);
  return width >= picture.width
    ? { width: picture.width, height: picture.height }
    : { width, height: Math.min(picture.height, needed(printed.height)) };
}
