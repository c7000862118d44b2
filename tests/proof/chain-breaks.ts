/** Breaks of the chain: what is refused, how it is laid out, how it is printed. */
import type { Break } from './break.ts';

export const chainBreaks: readonly Break[] = [
  {
    breaks: 'the refusal of a loop',
    file: 'electron/services/chain-work.ts',
    find: 'if (fault !== null) throw fault;',
    replace: '',
    reddens: { file: 'database/chain.test.ts', test: 'a loop is refused' },
  },
  {
    breaks: 'that a finding in the chain stays',
    file: 'electron/database/repositories/findings.ts',
    find: 'if (boxes > 0) throw',
    replace: 'if (boxes > 1) throw',
    reddens: { file: 'database/chain.test.ts', test: 'cannot be removed at the bench' },
  },
  {
    breaks: 'the border between two cases’ chains',
    file: 'electron/database/repositories/chain.ts',
    find: "if (owner !== caseId) throw new AppError('not-found', { thing: 'box of the chain' });",
    replace: '',
    reddens: { file: 'database/chain.test.ts', test: 'cannot be reached' },
  },
  {
    breaks: 'the order of the boxes',
    file: 'analysis/chain/chain-to-drawing.ts',
    find: 'boxes.sort((one, other) => (one.key < other.key ? -1 : 1));',
    replace: '',
    reddens: { file: 'unit/chain/chain-to-drawing.test.ts', test: 'whatever order' },
  },
  {
    breaks: 'the way of a line round the boxes',
    file: 'analysis/chain/chain-layout.ts',
    find: 'const half = halves.get(column(x)) ?? 0;',
    replace: 'const half = 0;',
    reddens: { file: 'unit/chain/chain-to-drawing.test.ts', test: 'leads no line' },
  },
  {
    breaks: 'the turned page of a figure that would be too small',
    file: 'electron/report/chain-layout.ts',
    find: 'const readable = 0.6;',
    replace: 'const readable = 0.2;',
    reddens: { file: 'pdf/chain-figure.test.ts', test: 'page of its own' },
  },
  {
    breaks: 'that a wide chain leaves its boxes room to be read',
    file: 'analysis/chain/chain-to-drawing.ts',
    find: 'return figure.width <= widestRoomy ? figure : drawn(content, terse);',
    replace: 'return figure;',
    reddens: { file: 'unit/chain/chain-to-drawing.test.ts', test: 'of a long chain has numbers alone' },
  },
  {
    breaks: 'that a root cause has nothing before it',
    file: 'analysis/chain/chain-flags.ts',
    find: 'const before = nodes.filter((one) => upstreamOf(links, node.id).has(one.id));',
    replace: 'const before: HeldNode[] = [];',
    reddens: { file: 'unit/chain/chain-flags.test.ts', test: 'a root cause that follows' },
  },
  {
    breaks: 'a link that is let go before it was drawn',
    file: 'renderer/chain/use-sheet-pointer.ts',
    find: 'const made = draggedTo(now);',
    replace: 'const made = dragged;',
    reddens: { file: 'browser/chain.test.ts', test: 'let go as soon as it arrives' },
  },
];
