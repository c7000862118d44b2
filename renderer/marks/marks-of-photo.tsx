/** Findings on the photo with their marks; it lists for ears and keyboard what the canvas shows. */
import { useState } from 'react';
import { Link } from 'wouter';
import type { HeldFinding } from '#analysis/marks/bench-state.ts';
import { extentLabel, kindLabel, placeLabel } from '#analysis/report/term-labels.ts';
import type { CaseId, FindingId, MarkId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { findingAddress } from '../app/addresses.ts';
import { ClassifyDialog } from '../findings/classify-dialog.tsx';
import { Button } from '../ui/button.tsx';
import { ClassBadge } from '../ui/class-badge.tsx';
import { classNames } from '../ui/class-names.ts';
import { PanelHead } from '../ui/side-panel.tsx';
import type { LabelledMark } from './labelled-marks.ts';

type MarksOfPhotoProps = {
  caseId: CaseId;
  pack: KnowledgePack;
  /** On this photo. */
  marks: readonly LabelledMark[];
  /** How many marks each finding has in the whole case. */
  markCounts: ReadonlyMap<FindingId, number>;
  chosen: ReadonlySet<MarkId>;
  isHidden: (id: MarkId) => boolean;
  readOnly: boolean;
  /** `more`: Shift was held. */
  onSelect: (id: MarkId, more: boolean) => void;
};

export function MarksOfPhoto(props: MarksOfPhotoProps) {
  const { caseId, marks, chosen } = props;
  const [classifying, setClassifying] = useState<HeldFinding | null>(null);
  const groups = groupsOf(marks);
  const notes = marks.filter((each) => each.note);
  const loose = marks.filter((each) => each.finding === null && !each.note);
  const isChosen = (some: readonly LabelledMark[]) => some.some((each) => chosen.has(each.mark.id));
  return (
    <section className="marks-findings">
      <PanelHead title={marksTexts.findingsHere} note={groups.length} />
      {marks.length === notes.length ? <p className="secondary-words">{marksTexts.noFindingsHere}</p> : null}
      <ul>
        {groups.map((group) => (
          <FindingItem
            key={group.finding.id}
            {...props}
            finding={group.finding}
            ofFinding={group.marks}
            onClassify={() => setClassifying(group.finding)}
          />
        ))}
        {loose.length === 0 ? null : (
          <li className={classNames('marks-finding', isChosen(loose) && 'marks-finding-on')}>
            <ClassBadge of="undecided" />
            <span className="marks-finding-name">{marksTexts.loose}</span>
            <MarkChips {...props} name={marksTexts.loose} ofFinding={loose} />
          </li>
        )}
        {notes.length === 0 ? null : (
          <li className={classNames('marks-finding', isChosen(notes) && 'marks-finding-on')}>
            <span />
            <span className="marks-finding-name">{marksTexts.notes}</span>
            <MarkChips {...props} name={marksTexts.notes} ofFinding={notes} />
          </li>
        )}
      </ul>
      {classifying === null ? null : (
        <ClassifyDialog caseId={caseId} finding={classifying} onClose={() => setClassifying(null)} />
      )}
    </section>
  );
}

type Group = { readonly finding: HeldFinding; readonly marks: readonly LabelledMark[] };

function groupsOf(marks: readonly LabelledMark[]): readonly Group[] {
  const groups = new Map<FindingId, { finding: HeldFinding; marks: LabelledMark[] }>();
  for (const each of marks) {
    if (each.finding === null) continue;
    const group = groups.get(each.finding.id);
    if (group === undefined) groups.set(each.finding.id, { finding: each.finding, marks: [each] });
    else group.marks.push(each);
  }
  return [...groups.values()].sort((a, b) => a.finding.number - b.finding.number);
}

function FindingItem(
  props: MarksOfPhotoProps & {
    finding: HeldFinding;
    ofFinding: readonly LabelledMark[];
    onClassify: () => void;
  },
) {
  const { caseId, pack, finding, ofFinding, markCounts, chosen, readOnly, onClassify } = props;
  const selected = ofFinding.some((each) => chosen.has(each.mark.id));
  const elsewhere = (markCounts.get(finding.id) ?? 0) - ofFinding.length;
  const name = `${finding.number} ${kindLabel(pack, finding.kind)}`;
  const facts = [
    placeLabel(pack, finding),
    finding.severity === null ? null : findingsTexts.severities[finding.severity],
    finding.presence === 'present' ? null : commonTexts.presences[finding.presence],
    elsewhere === 0 ? null : marksTexts.elsewhere(elsewhere),
  ].filter((fact) => fact !== null);
  return (
    <li className={classNames('marks-finding', selected && 'marks-finding-on')}>
      <ClassBadge of={finding.class} />
      <b className="marks-finding-name">{name}</b>
      {finding.extent === null ? null : (
        <span className="marks-finding-extent">{extentLabel(pack, finding, finding.extent)}</span>
      )}
      <p>{facts.join(' · ')}</p>
      <MarkChips {...props} name={marksTexts.marksOf(name)} />
      {selected ? (
        <div className="mark-actions">
          {readOnly ? null : (
            <Button kind="quiet" onClick={onClassify}>
              {marksTexts.changeClass}
            </Button>
          )}
          <Link className="button button-quiet" href={findingAddress(caseId, finding.id)}>
            {marksTexts.editFinding}
          </Link>
        </div>
      ) : null}
    </li>
  );
}

function MarkChips(
  props: Pick<MarksOfPhotoProps, 'chosen' | 'isHidden' | 'onSelect'> & {
    name: string;
    ofFinding: readonly LabelledMark[];
  },
) {
  const { name, ofFinding, chosen, isHidden, onSelect } = props;
  return (
    <ul className="mark-chips" aria-label={name}>
      {ofFinding.map(({ mark, name: called }) => (
        <li key={mark.id}>
          <button
            type="button"
            className={classNames('mark-chip', isHidden(mark.id) && 'mark-chip-hidden')}
            aria-label={
              isHidden(mark.id) ? marksTexts.hiddenMarkButton(called) : marksTexts.markButton(called)
            }
            title={isHidden(mark.id) ? marksTexts.hiddenHint : undefined}
            aria-pressed={chosen.has(mark.id)}
            onClick={(event) => onSelect(mark.id, event.shiftKey)}
          >
            {called}
          </button>
        </li>
      ))}
    </ul>
  );
}
