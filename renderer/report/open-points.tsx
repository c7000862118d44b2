/** What is still open before the report is signed, each point with the way to where it is settled. */
import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import { openPoints, type OpenPoint } from '#analysis/report/open-points.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { openPointTexts as texts } from '#shared-types/texts/open-points.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { findingAddress, stationAddress } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';
import type { ReportOrder } from './use-report.ts';

const mostAtFirst = 6;

export function OpenPoints(props: { teardownCase: TeardownCase; order: ReportOrder; pack: KnowledgePack }) {
  const { teardownCase, order, pack } = props;
  const { custody, photos, chain, bench } = order;
  const [all, setAll] = useState(false);
  const points = useMemo(
    () =>
      openPoints({
        teardownCase,
        custody,
        photos,
        chain,
        pack,
        marks: [...bench.marks.values()],
        findings: [...bench.findings.values()],
      }),
    [teardownCase, custody, photos, chain, pack, bench],
  );
  const shown = all ? points : points.slice(0, mostAtFirst);
  return (
    <details className="open-points" open>
      <summary>
        {texts.head}
        <span className="secondary-words">{points.length === 0 ? null : texts.count(points.length)}</span>
      </summary>
      {points.length === 0 ? <p className="secondary-words">{texts.none}</p> : null}
      <ul aria-label={texts.head}>
        {shown.map((point) => (
          <li key={`${point.at} ${point.sentence}`}>
            {point.sentence}{' '}
            <Link href={addressOf(teardownCase.id, point)}>{reportScreenTexts.writtenAt[point.at]}</Link>
          </li>
        ))}
      </ul>
      {points.length <= mostAtFirst ? null : (
        <Button kind="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? texts.showFewer : texts.showAll(points.length)}
        </Button>
      )}
    </details>
  );
}

function addressOf(caseId: CaseId, { at, findingId }: OpenPoint): string {
  return findingId === null ? stationAddress(caseId, at) : findingAddress(caseId, findingId);
}
