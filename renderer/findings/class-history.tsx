/** How the class of a finding came to be what it is. */
import type { CaseId, FindingId } from '#shared-types/ids.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { useAnswer } from '../api/queries.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { dayAndClockText } from '../ui/number-words.ts';

const texts = findingsTexts.history;

export function ClassHistory({ caseId, findingId }: { caseId: CaseId; findingId: FindingId }) {
  const history = useAnswer('findings.class-history', { caseId });
  if (history.data === undefined) {
    return history.error === null ? (
      <BusyState />
    ) : (
      <ErrorState inline error={history.error} onRetry={() => void history.refetch()} />
    );
  }
  const changes = history.data.filter((change) => change.findingId === findingId);
  return (
    <section className="class-history">
      <h3 className="field-label">{texts.heading}</h3>
      {changes.length === 0 ? (
        <p className="secondary-words">{texts.none}</p>
      ) : (
        <ol>
          {changes.map((change) => {
            const from = commonTexts.damageClasses[change.from];
            const to = commonTexts.damageClasses[change.to];
            return (
              <li key={`${change.at} ${change.from}`}>
                <b aria-hidden="true">{texts.change(from, to)}</b>
                <span className="only-read-out">{texts.changeRead(from, to)}</span>
                <span className="secondary-words">{texts.by(change.who, dayAndClockText(change.at))}</span>
                <p>{change.reason}</p>
              </li>
            );
          })}
        </ol>
      )}
    </section>
  );
}
