/** A plate on the page: the picture, its marks as vectors over it, caption, key, and what the marks show. */
import { drawingToSvg } from '#analysis/report/drawing-to-svg.ts';
import type { PageGeometry } from '#analysis/report/page-geometry.ts';
import type { PlateLegendLine, ReportPlate } from '#analysis/report/report-plates.ts';
import type { Content } from 'pdfmake';

import { lineHeight, voices, type Spoken, type Typesetter } from './typesetting.ts';

const gap = { aboveCaption: 5, aboveKey: 4, aboveLegend: 5 } as const;
const widestMarksColumn = 76;

/** A plate `width` points wide, in the parts that may stand on different pages. */
export type SetPlate = {
  /** What cannot be parted. */
  readonly kept: Content[];
  /** What runs on behind it where there is no room for it on the same page. */
  readonly rest: Content[];
  /** Of what cannot be parted, in points. */
  readonly height: number;
};

/**
 * Picture, caption and key stand on one page, and so does the legend where there is room for it. Only a caption
 * too long for a page of its own runs on to the next.
 */
export function setPlate(plate: ReportPlate, width: number, page: PageGeometry, type: Typesetter): SetPlate {
  const { printed } = plate;
  const picture = [type.anchor(plate.destination), ...pictureOf(plate)];
  const captioned = type.text(captionOf(plate), { margin: [0, gap.aboveCaption, 0, 0], width });
  const key: Content[] =
    plate.key === null ? [] : [{ stack: [type.drawing(plate.key)], margin: [0, gap.aboveKey, 0, 0] }];
  const legend = plate.legend.length === 0 ? [] : [legendTable(plate.legend, width, type)];

  const keyHeight = plate.key === null ? 0 : plate.key.height + gap.aboveKey;
  const withoutLegend =
    printed.height + gap.aboveCaption + type.heightOf(captionOf(plate), width) + keyHeight;
  const whole = withoutLegend + legendHeight(plate.legend, width, type);
  const room = surelyHolds(page);
  if (whole <= room) return { kept: [...picture, captioned, ...key, ...legend], rest: [], height: whole };
  if (withoutLegend <= room) {
    return { kept: [...picture, captioned, ...key], rest: legend, height: withoutLegend };
  }
  const height = printed.height + keyHeight;
  return { kept: [...picture, ...key], rest: [captioned, ...legend], height };
}

/** Height in points that a page holds in any case: kerning may add a line to what the metrics promise. */
export function surelyHolds(page: PageGeometry): number {
  return page.textHeight - 2 * lineHeight(voices.small);
}

function pictureOf(plate: ReportPlate): Content[] {
  const { width, height } = plate.printed;
  const overlay = [...plate.marks.flatMap((mark) => mark.drawing), ...plate.stamp];
  return [
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
}

function captionOf(plate: ReportPlate): Spoken[] {
  return [
    [`${plate.name} `, voices.smallStrong],
    [plate.caption, voices.small],
  ];
}

/** The column of the marks is as wide as they need, half of the plate at most. */
function marksColumn(lines: readonly PlateLegendLine[], width: number, type: Typesetter): number {
  const widest = Math.max(...lines.map(({ marks }) => type.widthOf(marks, voices.smallStrong)));
  return Math.min(widest * 1.03 + 10, widestMarksColumn, width / 2);
}

function legendTable(lines: readonly PlateLegendLine[], width: number, type: Typesetter): Content {
  const marks = marksColumn(lines, width, type);
  return {
    table: {
      widths: [marks, width - marks],
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

function legendHeight(lines: readonly PlateLegendLine[], width: number, type: Typesetter): number {
  if (lines.length === 0) return 0;
  const column = marksColumn(lines, width, type);
  return lines.reduce<number>((sum, line) => {
    const marks = type.heightOf([[line.marks, voices.smallStrong]], column);
    const words = type.heightOf([[line.words, voices.small]], width - column);
    return sum + Math.max(marks, words) + 1;
  }, gap.aboveLegend);
}
