/** What own words can refer to, as the report will number it. */
import { useCallback, useMemo } from 'react';
import type { ReferenceTarget } from '#analysis/report/references.ts';
import { referenceTargets } from '#analysis/report/report-outline.ts';
import { kindLabel, placeLabel } from '#analysis/report/term-labels.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { OwnSection } from '#shared-types/report-plan.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import type { Choice } from '../ui/select.tsx';
import type { ReportOrder } from './use-report.ts';

export function useReportTargets(order: ReportOrder | null, pack: KnowledgePack) {
  const bench = order?.bench ?? null;
  const findings = useMemo(
    () => [...(bench?.findings.values() ?? [])].sort((one, other) => one.number - other.number),
    [bench],
  );
  const marks = useMemo(() => [...(bench?.marks.values() ?? [])], [bench]);

  const targetsOf = useCallback(
    (sections: readonly OwnSection[]): readonly ReferenceTarget[] =>
      order === null
        ? []
        : referenceTargets({
            sections,
            findings,
            photos: order.photos,
            marks,
            register: order.register,
            hasCustody: order.custody.length > 0,
            hasChain: order.chain.nodes.length > 0,
          }),
    [order, findings, marks],
  );

  const referencesOf = useCallback(
    (targets: readonly ReferenceTarget[]): Choice<string>[] => {
      const words = reportScreenTexts.referGroups;
      const wordsOf = ({ kind, number, names: [name = ''] }: ReferenceTarget): string => {
        if (kind === 'section') return words.section(name);
        if (kind !== 'finding') return words[kind](number, name);
        const finding = findings.find((known) => String(known.number) === number);
        const what =
          finding === undefined ? '' : `${placeLabel(pack, finding)}, ${kindLabel(pack, finding.kind)}`;
        return words.finding(Number(number), what);
      };
      return targets.map((target) => ({
        value: `[${target.kind} ${target.names[0] ?? ''}]`,
        label: wordsOf(target),
      }));
    },
    [findings, pack],
  );

  return { targetsOf, referencesOf };
}
