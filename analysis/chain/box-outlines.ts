/** The shapes by which the kinds of boxes are told apart without colour. */
import type { ChainNodeKind } from '#shared-types/chain.ts';
import type { DrawingPath } from '#shared-types/drawing.ts';
import { polygon, roundedBox, stroked } from '../marks/drawing-path.ts';
import type { Box } from './chain-layout.ts';

const corner = { cut: 8, round: 11, fold: 9 } as const;
/** Points between the two lines round a root cause. */
const inner = 2.6;
const paper = '#ffffff';

/**
 * Root cause: a double line. Condition: cut corners. Event: round ends. Finding: a plain box. Claim: a sheet with its
 * corner folded. All fill their box, so that an arrow at its left or right edge touches the line.
 */
export function boxOutline(kind: ChainNodeKind, box: Box, colour: string): readonly DrawingPath[] {
  const { x, y, width, height } = box;
  const middle = { x: x + width / 2, y: y + height / 2 };
  const plain = (inset: number) => roundedBox(middle, width / 2 - inset, height / 2 - inset, 1);
  switch (kind) {
    case 'root-cause':
      return [onPaper(plain(0), colour, 1.5), stroked(plain(inner), colour, 0.7, [])];
    case 'condition':
      return [onPaper(withCutCorners(box), colour, 1)];
    case 'event':
      return [onPaper(roundedBox(middle, width / 2, height / 2, corner.round), colour, 1)];
    case 'finding':
      return [onPaper(plain(0), colour, 1.5)];
    case 'claim': {
      const right = x + width;
      const { fold } = corner;
      const sheet = [
        { x, y },
        { x: right - fold, y },
        { x: right, y: y + fold },
        { x: right, y: y + height },
        { x, y: y + height },
      ];
      const folded = `M${right - fold} ${y}L${right - fold} ${y + fold}L${right} ${y + fold}`;
      return [onPaper(polygon(sheet), colour, 1), stroked(folded, colour, 1, [])];
    }
  }
}

function withCutCorners({ x, y, width, height }: Box): string {
  const { cut } = corner;
  const right = x + width;
  const foot = y + height;
  return polygon([
    { x: x + cut, y },
    { x: right - cut, y },
    { x: right, y: y + cut },
    { x: right, y: foot - cut },
    { x: right - cut, y: foot },
    { x: x + cut, y: foot },
    { x, y: foot - cut },
    { x, y: y + cut },
  ]);
}

function onPaper(d: string, colour: string, width: number): DrawingPath {
  return { type: 'path', d, stroke: colour, strokeWidth: width, dash: [], fill: paper, opacity: 1 };
}
