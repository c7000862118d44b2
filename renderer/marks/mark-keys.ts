/** The keys of the bench, in one place: what the toolbar shows, what the page listens to, what the list of keys says. */
import type { Tool } from '#analysis/marks/gesture/gesture.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';

export const toolKeys = {
  select: 'V',
  arrow: 'W',
  ring: 'R',
  outline: 'O',
  line: 'L',
  text: 'T',
  dimension: 'D',
  scale: 'B',
  rectangle: 'P',
} as const satisfies Record<Tool, string>;

export const deedKeys = {
  give: 'S',
  hide: 'H',
  hideAll: 'Shift+H',
  toFront: 'F',
  toBack: 'Shift+F',
  next: 'M',
  previous: 'Shift+M',
  keys: '?',
} as const;

const { names, caps } = marksTexts.keys;

export type KeyLine = { readonly keys: readonly string[]; readonly words: string };
export type KeyGroup = { readonly title: string; readonly lines: readonly KeyLine[] };

const toolLines = (Object.keys(toolKeys) as Tool[])
  .filter((tool) => tool !== 'select')
  .map((tool) => ({
    keys: [toolKeys[tool]],
    words: `${marksTexts.tools[tool]}. ${marksTexts.toolHints[tool]}`,
  }));

export const keyGroups: readonly KeyGroup[] = [
  { title: marksTexts.keys.draw, lines: toolLines },
  {
    title: marksTexts.keys.drawByKeys,
    lines: [
      { keys: [caps.step], words: names.step },
      { keys: [caps.enter], words: names.point },
      { keys: [caps.backspace], words: names.lastPoint },
      { keys: [caps.escape], words: names.escape },
    ],
  },
  {
    title: marksTexts.keys.choose,
    lines: [
      { keys: [toolKeys.select], words: marksTexts.tools.select },
      { keys: [caps.shiftClick], words: names.add },
      { keys: [caps.shiftDrag], words: names.box },
      { keys: ['Ctrl+A'], words: names.all },
      { keys: [deedKeys.next], words: names.next },
      { keys: [deedKeys.previous], words: names.previous },
      { keys: [deedKeys.give], words: names.give },
      { keys: ['Ctrl+D'], words: names.duplicate },
      { keys: [deedKeys.toFront], words: names.toFront },
      { keys: [deedKeys.toBack], words: names.toBack },
      { keys: [caps.remove], words: names.remove },
      { keys: ['Ctrl+Z'], words: names.undo },
      { keys: ['Ctrl+Shift+Z', 'Ctrl+Y'], words: names.redo },
    ],
  },
  {
    title: marksTexts.keys.look,
    lines: [
      { keys: ['+', '−'], words: names.zoom },
      { keys: ['0'], words: names.fit },
      { keys: [caps.drag], words: names.pan },
      { keys: [deedKeys.hide], words: names.hide },
      { keys: [deedKeys.hideAll], words: names.hideAll },
      { keys: marksTexts.photoKeys, words: names.photo },
      { keys: [deedKeys.keys], words: names.keys },
    ],
  },
];
