/** What the well has to say to those who hear the screen, in words. */
import type { Hold, Tool } from '#analysis/marks/gesture/gesture.ts';
import type { Heard } from '#analysis/marks/gesture/well-state.ts';
import { cornerIndex } from '#analysis/marks/mark-kinds/outline.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';

const { said } = marksTexts;

export function heardWords(heard: Heard, tool: Tool): string {
  switch (heard.heard) {
    case 'from-set':
      return tool in said.fromSet ? said.fromSet[tool as keyof typeof said.fromSet] : '';
    case 'drawn':
      return tool === 'select' ? '' : said.drawn(tool);
    case 'cancelled':
      return said.cancelled;
    case 'too-small':
      return said.tooSmall;
    case 'too-few-corners':
      return said.tooFewCorners;
    case 'too-many-corners':
      return said.tooManyCorners;
    case 'corner':
      return said.corners(heard.count, tool === 'rectangle' ? tool : 'outline');
    case 'hold':
      return holdWords(heard.hold);
  }
}

function holdWords(hold: Hold): string {
  const corner = hold === 'whole' ? null : cornerIndex(hold);
  if (corner !== null) return said.holdsCorner(corner + 1);
  return hold in said.holds ? said.holds[hold as keyof typeof said.holds] : '';
}
