/** Breaks of what the printed report promises. */
import type { Break } from './break.ts';

export const reportBreaks: readonly Break[] = [
  {
    breaks: 'the guard round what is no emphasis',
    file: 'analysis/report/own-words.ts',
    find: 'const guard = firstUnused(text);',
    replace: "const guard = '\\ue000';",
    reddens: { file: 'unit/report/own-words.test.ts', test: 'loses no letter' },
  },
  {
    breaks: 'the silence of plates about camera and place',
    file: 'electron/images/make-plate.ts',
    find: '.jpeg({',
    replace: '.keepMetadata().jpeg({',
    reddens: { file: 'pdf/plates-printed.test.ts', test: 'prints none of it' },
  },
  {
    breaks: 'that a heading stays with what it heads',
    file: 'electron/report/page-layout.ts',
    find: "type.heading(model.record, 'kept')",
    replace: 'type.heading(model.record, 0)',
    reddens: { file: 'pdf/report-document.test.ts', test: 'never leave a heading' },
  },
  {
    breaks: 'which plates are given up first',
    file: 'electron/files/plate-cache.ts',
    find: 'one.usedAt - other.usedAt',
    replace: 'other.usedAt - one.usedAt',
    reddens: { file: 'unit/files/plate-cache.test.ts', test: 'are trimmed' },
  },
  {
    breaks: 'the revision of a report’s plan',
    file: 'electron/database/repositories/report-plans.ts',
    find: 'if ((known?.revision ?? ofNewCase.revision) !== revision) {',
    replace: 'if (known === null && revision !== 1) {',
    reddens: { file: 'database/report-plan.test.ts', test: 'refused from a stale window' },
  },
  {
    breaks: 'that what is not there is not asked for a class or a mark',
    file: 'analysis/report/open-points.ts',
    find: "const present = inOrder.filter(({ presence }) => presence === 'present');",
    replace: 'const present = inOrder;',
    reddens: { file: 'unit/report/open-points.test.ts', test: 'not of what is not there' },
  },
  {
    breaks: 'that numbers which no finding has are accounted for',
    file: 'analysis/report/report-model.ts',
    find: 'remark: remarkOnNumbers(findings),',
    replace: 'remark: null,',
    reddens: { file: 'unit/report/report-parts.test.ts', test: 'that no finding has any more' },
  },
  {
    breaks: 'the order of the register',
    file: 'analysis/report/photo-annexes.ts',
    find: '...inCase.sort((one, other) => numberOf(one) - numberOf(other)),',
    replace: '...inCase,',
    reddens: { file: 'unit/report/report-parts.test.ts', test: 'list every photo by its number' },
  },
  {
    breaks: 'which picture takes which place',
    file: 'electron/report/picture-places.ts',
    find: 'const path = pictures[name];',
    replace: 'const path = Object.values(pictures)[0];',
    reddens: { file: 'pdf/plates-printed.test.ts', test: 'have 300 pixels to the inch' },
  },
  {
    breaks: 'the keyboard in a section that was just added',
    file: 'renderer/report/plan-panel.tsx',
    find: 'leadingTo.current = sections.length;',
    replace: 'window.requestAnimationFrame(() => focusSection(sections.length));',
    reddens: { file: 'browser/report.test.ts', test: 'are written beside the pages' },
  },
];
