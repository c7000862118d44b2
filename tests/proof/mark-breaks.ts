/** Breaks of what is drawn at the bench, taken back and told apart. */
import type { Break } from './break.ts';

export const markBreaks: readonly Break[] = [
  {
    breaks: 'the turn of a ring',
    file: 'analysis/marks/mark-kinds/ring.ts',
    find: 'centre.x + along * cos - across * sin',
    replace: 'centre.x + along * cos + across * sin',
    reddens: { file: 'unit/marks/mark-kinds-drawing.test.ts', test: 'is the ellipse that its geometry says' },
  },
  {
    breaks: 'that Escape ends a gesture',
    file: 'analysis/marks/gesture/well.ts',
    find: "return rest(state, silent ? [] : [say({ heard: 'cancelled' })]);",
    replace: 'return { state, deeds: [], used: true };',
    reddens: { file: 'unit/marks/well.test.ts', test: 'at any moment of anything leaves no trace' },
  },
  {
    breaks: 'the room below the lowest mark',
    file: 'analysis/marks/stacking.ts',
    find: 'if (lowest < chosen.length) return numbered([...chosen, ...others]);',
    replace: '',
    reddens: { file: 'unit/marks/bench-deeds.test.ts', test: 'keeps any order that can be stored' },
  },
  {
    breaks: 'the order in which a gesture is asked of the library',
    file: 'analysis/marks/bench-state.ts',
    find: '[...puts, ...removals, ...findingRemovals]',
    replace: '[...findingRemovals, ...puts, ...removals]',
    reddens: { file: 'database/bench-undo.test.ts', test: 'the library holds what is shown' },
  },
  {
    breaks: 'the roundness of a ring',
    file: 'analysis/marks/drawing-path.ts',
    find: '(4 / 3) * (Math.SQRT2 - 1)',
    replace: '(3 / 4) * (Math.SQRT2 - 1)',
    reddens: { file: 'pdf/mark-kinds-on-plate.test.ts', test: 'a ring runs where' },
  },
  {
    breaks: 'that two classes have lines of their own',
    file: 'shared-types/class-style.ts',
    find: 'dash: [0.1, 2]',
    replace: 'dash: [3.2, 2]',
    reddens: { file: 'unit/marks/class-told-apart.test.ts', test: 'differ in letter and in dash' },
  },
  {
    breaks: 'that a mark goes to a finding at hand before one elsewhere',
    file: 'analysis/marks/give-offers.ts',
    find: "['given', 'shown', 'elsewhere']",
    replace: "['elsewhere', 'given', 'shown']",
    reddens: { file: 'unit/marks/give-offers.test.ts', test: 'is the one last given to' },
  },
  {
    breaks: 'that words on a photo may be a note',
    file: 'analysis/marks/notes.ts',
    find: 'return mark.findingId === null && !isNote(mark);',
    replace: 'return mark.findingId === null;',
    reddens: { file: 'unit/app/station-state.test.ts', test: 'marks are done when each' },
  },
  {
    breaks: 'the revisions that a page going away sends with',
    file: 'analysis/history/work-desk.ts',
    find: 'underWay ? pending : []',
    replace: 'underWay ? [] : []',
    reddens: { file: 'unit/marks/bench-desk.test.ts', test: 'in one go when the page goes' },
  },
  {
    breaks: 'that no undo goes past a class given with a reason',
    file: 'analysis/marks/bench-desk.ts',
    find: 'return benchClerk.told({ ...desk, pending, history }, outcome);',
    replace: 'return benchClerk.told(desk, outcome);',
    reddens: { file: 'unit/marks/bench-desk.test.ts', test: 'undoes nothing across it' },
  },
  {
    breaks: 'the photo in the row that the keyboard walked to',
    file: 'renderer/marks/photo-row.tsx',
    find: 'rangeExtractor: rangeWith([Math.floor(stop / columns)]),',
    replace: 'rangeExtractor: rangeWith([]),',
    reddens: { file: 'browser/marks.test.ts', test: 'walked through by key' },
  },
];
