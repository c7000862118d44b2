/** A drawing as an SVG document, for the page: the same primitives the screen draws. */
import type { Drawing, DrawingPath, DrawingText } from '#shared-types/drawing.ts';

type Size = { readonly width: number; readonly height: number };

/**
 * `space` is the drawing's own width and height, from 0 at the top left; `printed` the size it is given on the page.
 * Both axes are scaled on their own, so that a drawing over a picture fits it to the last pixel. What reaches beyond
 * its space is drawn too. Lines end and turn round, as the dash patterns of the classes expect.
 * `family` names the font that text is set in. Throws a RangeError for a number that is not finite.
 */
export function drawingToSvg(drawing: Drawing, space: Size, printed: Size, family: string): string {
  const body = drawing
    .map((primitive) => (primitive.type === 'path' ? pathElement(primitive) : textElement(primitive, family)))
    .join('');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(printed.width)}" height="${number(printed.height)}"` +
    ` viewBox="0 0 ${number(space.width)} ${number(space.height)}" preserveAspectRatio="none"` +
    ` overflow="visible">${body}</svg>`
  );
}

function pathElement(path: DrawingPath): string {
  const stroke =
    path.stroke === null
      ? ' stroke="none"'
      : ` stroke="${escaped(path.stroke)}" stroke-width="${number(path.strokeWidth)}"` +
        ' stroke-linecap="round" stroke-linejoin="round"' +
        (path.dash.length === 0 ? '' : ` stroke-dasharray="${path.dash.map(number).join(' ')}"`);
  const opacity = path.opacity === 1 ? '' : ` opacity="${number(path.opacity)}"`;
  return `<path d="${escaped(path.d)}" fill="${escaped(path.fill ?? 'none')}"${stroke}${opacity}/>`;
}

function textElement(text: DrawingText, family: string): string {
  return (
    `<text x="${number(text.x)}" y="${number(text.y)}" font-family="${escaped(family)}"` +
    ` font-size="${number(text.size)}" font-weight="${text.weight}" fill="${escaped(text.fill)}"` +
    ` xml:space="preserve">${escaped(text.text)}</text>`
  );
}

/** Four decimals: a ten-thousandth of the drawing's unit. */
function number(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a drawing holds the number ${value}`);
  const rounded = Math.round(value * 10_000) / 10_000;
  return String(rounded === 0 ? 0 : rounded);
}

/** XML 1.0 forbids most control characters altogether; they become U+FFFD. */
function escaped(text: string): string {
  return (
    text
      // eslint-disable-next-line no-control-regex -- these are the characters XML forbids
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '\ufffd')
      .replace(/&/g, '&amp;')
      .replace(/</g, '&lt;')
      .replace(/>/g, '&gt;')
      .replace(/"/g, '&quot;')
  );
}
