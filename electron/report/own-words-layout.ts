/** The analyst's own sections, with their paragraphs and lists. */
import type { OwnBlock, OwnItem, OwnRun } from '#analysis/report/own-words.ts';
import type { PageGeometry } from '#analysis/report/page-geometry.ts';
import type { OwnWordsSection } from '#analysis/report/report-model.ts';
import type { Content } from 'pdfmake';

import { lineHeight, voices, type Spoken, type Typesetter, type Voice } from './typesetting.ts';

/** Least height of a text below its heading, with the air before it. */
export const twoLines = 2 * lineHeight(voices.body) + 3;

const gap = { betweenParagraphs: 5, betweenItems: 2 } as const;
/** A list's marker and the air after it: as wide as "99." at least. */
const markerWidth = 20;

export function ownSections(
  sections: readonly OwnWordsSection[],
  page: PageGeometry,
  type: Typesetter,
): Content[] {
  return sections.flatMap((section) => [
    type.heading(section, twoLines),
    ...ownBlocks(section.blocks, page.measure, type),
  ]);
}

/** `width` in points. */
export function ownBlocks(blocks: readonly OwnBlock[], width: number, type: Typesetter): Content[] {
  return blocks.map((block, index): Content => {
    const below = index === blocks.length - 1 ? 0 : gap.betweenParagraphs;
    return block.type === 'paragraph'
      ? type.text(block.runs.map(spoken), { width, verbatim: true, margin: [0, 0, 0, below] })
      : {
          stack: block.items.map((item, place) => listItem(item, place > 0, width, type)),
          margin: [0, 0, 0, below],
        };
  });
}

function listItem(item: OwnItem, follows: boolean, width: number, type: Typesetter): Content {
  const inner = width - markerWidth;
  return {
    columns: [
      { width: markerWidth, stack: [type.text([[item.marker, voices.body]])] },
      { width: inner, stack: ownBlocks(item.blocks, inner, type) },
    ],
    margin: [0, follows ? gap.betweenItems : 0, 0, 0],
  };
}

function spoken({ text, strong, emphasis, to }: OwnRun): Spoken {
  return [text, voiceOf(strong, emphasis), to];
}

/** The typeface has no slanted bold: what is both is set strong. */
function voiceOf(strong: boolean, emphasis: boolean): Voice {
  if (strong) return voices.strong;
  return emphasis ? voices.emphasis : voices.body;
}
