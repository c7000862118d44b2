/** A plate on the page: the picture, its marks as vectors over it, caption, key, and what the marks show. */
import { drawingToSvg } from '#analysis/report/drawing-to-svg.ts';
import type { PageGeometry } from '#analysis/report/page-geometry.ts';
import type { PlateLegendLine, ReportPlate } from '#analysis/report/report-plates.ts';
import type { Content } from 'pdfmake';

import { lineHeight, voices, type Spoken, type Typesetter } from './typesetting.ts';

const gap = { aboveCaption: 5, aboveKey: 4, aboveLegend: 5, belowPlate: 18 } as const;
const marksColumn = 76;

/**
 * Picture, caption and key stand on one page, and so does the legend where there is room for it. Only a caption
 * too long for a page of its own runs on to the next.
 */
export function plateContent(plate: ReportPlate, page: PageGeometry, type: Typesetter): Content[] {
  const { width, height } = plate.printed;
  const overlay = plate.marks.flatMap((mark) => mark.drawing);
  const picture: Content[] = [
    { image: plate.blobId, width, height },
    ...(overlay.length === 0
      ? []
      : [
          {
            svg: drawingToSvg(overlay, plate.picture, plate.printed, 'sans'),
            width,
            height,
            relativePosition: { x: 0, y: -height },
          },
        ]),
  ];
  const captioned = type.text(captionOf(plate), { margin: [0, gap.aboveCaption, 0, 0], width: page.measure });
  const key: Content[] =
    plate.key === null ? [] : [{ stack: [type.drawing(plate.key)], margin: [0, gap.aboveKey, 0, 0] }];
  const legend = plate.legend.length === 0 ? [] : [legendTable(plate.legend, page, type)];
  const air: Content = { text: '', fontSize: 1, margin: [0, 0, 0, gap.belowPlate - 1] };

  const { whole, withoutLegend, room } = heights(plate, page, type);
  if (whole <= room) return [{ stack: [...picture, captioned, ...key, ...legend], unbreakable: true }, air];
  if (withoutLegend <= room) {
    return [{ stack: [...picture, captioned, ...key], unbreakable: true }, ...legend, air];
  }
  return [{ stack: [...picture, ...key], unbreakable: true }, captioned, ...legend, air];
}

/** Height in points of what cannot be parted. */
export function plateHeight(plate: ReportPlate, page: PageGeometry, type: Typesetter): number {
  const { whole, withoutLegend, room } = heights(plate, page, type);
  return [whole, withoutLegend].find((height) => height <= room) ?? plate.printed.height;
}

function heights(plate: ReportPlate, page: PageGeometry, type: Typesetter) {
  const keyHeight = plate.key === null ? 0 : plate.key.height + gap.aboveKey;
  const caption = type.heightOf(captionOf(plate), page.measure);
  const withoutLegend = plate.printed.height + gap.aboveCaption + caption + keyHeight;
  return {
    withoutLegend,
    whole: withoutLegend + legendHeight(plate.legend, page, type),
    // Kerning may add a line to what the metrics promise.
    room: page.textHeight - 2 * lineHeight(voices.small),
  };
}

function captionOf(plate: ReportPlate): Spoken[] {
  return [
    [`${plate.name} `, voices.smallStrong],
    [plate.caption, voices.small],
  ];
}

function legendTable(lines: readonly PlateLegendLine[], page: PageGeometry, type: Typesetter): Content {
  return {
    table: {
      widths: [marksColumn, page.measure - marksColumn],
      dontBreakRows: true,
      body: lines.map((line) => [
        type.text([[line.marks, voices.smallStrong]]),
        type.text([[line.words, voices.small]]),
      ]),
    },
    layout: 'legend',
    margin: [0, gap.aboveLegend, 0, 0],
  };
}

function legendHeight(lines: readonly PlateLegendLine[], page: PageGeometry, type: Typesetter): number {
  if (lines.length === 0) return 0;
  return lines.reduce<number>((sum, line) => {
    const marks = type.heightOf([[line.marks, voices.smallStrong]], marksColumn);
    const words = type.heightOf([[line.words, voices.small]], page.measure - marksColumn);
    return sum + Math.max(marks, words) + 1;
  }, gap.aboveLegend);
}
