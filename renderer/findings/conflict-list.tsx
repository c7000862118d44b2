/** What is said twice and what cannot both be right, in words, each with the way to its findings. */
import { Fragment, useId, useState } from 'react';
import { Link } from 'wouter';
import type { Conflict } from '#analysis/findings/conflicts.ts';
import { kindLabel, placeLabel } from '#analysis/report/term-labels.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { findingAddress } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';

const texts = findingsTexts.conflicts;
const mostAtFirst = 5;

type ConflictsProps = { caseId: CaseId; pack: KnowledgePack; conflicts: readonly Conflict[] };

export function ConflictList({ caseId, pack, conflicts }: ConflictsProps) {
  const id = useId();
  const certain = conflicts.filter((conflict) => conflict.certain);
  const possible = conflicts.filter((conflict) => !conflict.certain);
  if (conflicts.length === 0) return null;
  return (
    <section className="conflict-list" aria-labelledby={certain.length === 0 ? undefined : id}>
      {certain.length === 0 ? null : (
        <>
          <h2 id={id}>
            <span className="conflict-sign" aria-hidden="true">
              {texts.sign}
            </span>{' '}
            {texts.heading(certain.length)}
          </h2>
          <ConflictLines caseId={caseId} pack={pack} conflicts={certain} />
        </>
      )}
      {possible.length === 0 ? null : (
        <details>
          <summary>
            <span className="conflict-sign-possible" aria-hidden="true">
              {texts.possibleSign}
            </span>{' '}
            {texts.possible(possible.length)}
          </summary>
          <p className="secondary-words">{texts.possibleWords}</p>
          <ConflictLines caseId={caseId} pack={pack} conflicts={possible} />
        </details>
      )}
    </section>
  );
}

/** A few of them; the rest when they are asked for. */
export function ConflictLines({ caseId, pack, conflicts }: ConflictsProps) {
  const [all, setAll] = useState(false);
  const shown = all ? conflicts : conflicts.slice(0, mostAtFirst);
  return (
    <>
      <ul className="conflict-lines">
        {shown.map((conflict) => (
          <li key={[conflict.conflict, ...conflict.findings.map((finding) => finding.id)].join(' ')}>
            <ConflictSentence caseId={caseId} pack={pack} conflict={conflict} />
          </li>
        ))}
      </ul>
      {shown.length === conflicts.length ? null : (
        <Button kind="quiet" onClick={() => setAll(true)}>
          {texts.showAll(conflicts.length)}
        </Button>
      )}
    </>
  );
}

function ConflictSentence(props: { caseId: CaseId; pack: KnowledgePack; conflict: Conflict }) {
  const { caseId, pack, conflict } = props;
  const pieces: readonly string[] = texts.sentences[conflict.conflict];
  return pieces.map((piece, at) => {
    const finding = conflict.findings[at];
    return (
      <Fragment key={at}>
        {piece}
        {finding === undefined ? null : (
          <Link href={findingAddress(caseId, finding.id)} replace>
            {texts.finding(finding.number, kindLabel(pack, finding.kind), placeLabel(pack, finding))}
          </Link>
        )}
      </Fragment>
    );
  });
}
