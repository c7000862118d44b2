/**
 * Words on the picture: set in one line on a white band, underlined as their class is dashed, the label before them. A
 * note stands there in plain ink alone.
 */
import { textWidth } from '../../text/font-metrics.ts';
import { classStyles, haloColour } from '#shared-types/class-style.ts';
import type { TextGeometry } from '#shared-types/mark.ts';
import { filled, pointDigits, roundedBox, stroked } from '../drawing-path.ts';
import { fitsWithin } from '../label-around.ts';
import { labelBeside } from '../mark-label-drawing.ts';
import { noteColour, type MarkLook } from '../mark-look.ts';
import { imagePoint, type Size } from '../planes.ts';
import type { MarkKindRules } from './mark-kind-rules.ts';

/** Measures in drawing points. */
export const wordsSize = 14;
const above = 12;
const below = 7;
const beside = 4;
const underlineDepth = 3.6;
const underlineWidth = 1.6;
const bandCorner = 2;

export const textRules: MarkKindRules<TextGeometry> = {
  body(text, look) {
    const { colour: classColour, dash } = classStyles[look.class];
    const { unit, note = false } = look;
    const colour = note ? noteColour : classColour;
    const { at, width, band } = placed(text, look);
    const depth = at.y + underlineDepth * unit;
    const underline = `M${pointDigits({ x: at.x, y: depth })}L${pointDigits({ x: at.x + width, y: depth })}`;
    const middle = { x: (band.left + band.right) / 2, y: (band.top + band.bottom) / 2 };
    const halves = [(band.right - band.left) / 2, (band.bottom - band.top) / 2] as const;
    const dashes = dash.map((part) => part * underlineWidth * unit);
    return {
      halo: [filled(roundedBox(middle, ...halves, bandCorner * unit), haloColour)],
      ink: [
        ...(note ? [] : [stroked(underline, colour, underlineWidth * unit, dashes)]),
        {
          type: 'text',
          text: text.words,
          x: at.x,
          y: at.y,
          size: wordsSize * unit,
          weight: 600,
          fill: colour,
        },
      ],
    };
  },

  /** Before the words; above or below their beginning where the picture has no room before them. */
  labelBox(text, look) {
    const { band } = placed(text, look);
    const { shape } = classStyles[look.class];
    const before = { x: band.left, y: (band.top + band.bottom) / 2 };
    const box = (anchor: { x: number; y: number }, direction: { x: number; y: number }, within?: Size) =>
      labelBeside(anchor, direction, look.label, shape, look.unit, within);
    const first = box(before, { x: 1, y: 0 });
    if (fitsWithin(first, look.within)) return first;
    const begun = band.left + first.halfWidth;
    const over = box({ x: begun, y: band.top }, { x: 0, y: 1 });
    if (fitsWithin(over, look.within)) return over;
    return box({ x: begun, y: band.bottom }, { x: 0, y: -1 }, look.within);
  },

  /** It has no shape to change: it is moved whole and its words are written again. */
  handles() {
    return [];
  },

  moveHandle(text) {
    return text;
  },

  movedBy(text, byX, byY) {
    return { ...text, at: imagePoint(text.at.x + byX, text.at.y + byY) };
  },

  /** Of the place alone: how large the words are set depends on where they are looked at. */
  bounds({ at }) {
    return { left: at.x, right: at.x, top: at.y, bottom: at.y };
  },

  distance(text, point, look) {
    const { band } = placed(text, look);
    const dx = Math.max(band.left - point.x, 0, point.x - band.right);
    const dy = Math.max(band.top - point.y, 0, point.y - band.bottom);
    return Math.hypot(dx, dy);
  },

  isMeant({ words }) {
    return words.trim() !== '';
  },
};

/** Where the words are set: at their place, moved back into the picture where they would run out of it. */
function placed({ at, words }: TextGeometry, { unit, within }: MarkLook) {
  const width = textWidth(words, wordsSize, 'sans-600') * unit;
  const inside = (value: number, before: number, after: number, most: number) =>
    before + after > most ? before : Math.min(Math.max(value, before), most - after);
  const side = beside * unit;
  const x = within === undefined ? at.x : inside(at.x, side, width + side, within.width);
  const y = within === undefined ? at.y : inside(at.y, above * unit, below * unit, within.height);
  return {
    at: { x, y },
    width,
    band: { left: x - side, right: x + width + side, top: y - above * unit, bottom: y + below * unit },
  };
}
