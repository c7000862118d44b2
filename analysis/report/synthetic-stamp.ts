/** What is stamped across a plate whose file says of itself that no camera took it. */
import type { Drawing } from '#shared-types/drawing.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import { filled, roundedBox, stroked } from '../marks/drawing-path.ts';
import { textWidth } from '../text/font-metrics.ts';

/** In drawing points. */
const type = { size: 12, off: 10, side: 9, half: 11 } as const;
const ink = '#1a1a1a';
/** Of the picture's width, at most. */
const widest = 0.9;

/** In pixels of the picture, at its top left. `unit`: pixels of the picture for each drawing point. */
export function syntheticStamp(unit: number, picture: { readonly width: number }): Drawing {
  const words = reportTexts.synthetic.stamp;
  const natural = textWidth(words, type.size, 'sans-600') + 2 * (type.side + type.off);
  const scale = unit * Math.min(1, (picture.width * widest) / (natural * unit));
  const half = textWidth(words, type.size, 'sans-600') / 2 + type.side;
  const middle = { x: (type.off + half) * scale, y: (type.off + type.half) * scale };
  const box = roundedBox(middle, half * scale, type.half * scale, 2 * scale);
  return [
    filled(box, '#ffffff'),
    stroked(box, ink, 1.5 * scale, []),
    {
      type: 'text',
      text: words,
      x: (type.off + type.side) * scale,
      y: middle.y + type.size * 0.35 * scale,
      size: type.size * scale,
      weight: 600,
      fill: ink,
    },
  ];
}
