/** One finding, changed in place: every choice is saved at once, text while it is written. */
import { useState } from 'react';
import type { BenchState } from '#analysis/marks/bench-state.ts';
import { severities, type FindingFields } from '#shared-types/finding.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { benchOfCase } from '../marks/bench-store.ts';
import { changedFinding, removedFinding } from '../marks/mark-patches.ts';
import { Button } from '../ui/button.tsx';
import { ClassBadge } from '../ui/class-badge.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { Select } from '../ui/select.tsx';
import { SidePanel } from '../ui/side-panel.tsx';
import { TextArea } from '../ui/text-field.tsx';
import { toast } from '../ui/toaster.tsx';
import { ClassifyDialog } from './classify-dialog.tsx';
import { ExtentFields } from './extent-fields.tsx';
import { draftOfFields, fieldsOfDraft, zonesOf, type FindingDraft } from './finding-draft.ts';
import { FindingPlaceFields } from './finding-place-fields.tsx';
import { MarkLinks, type FindingRow } from './finding-table.tsx';
import { PresenceSelect } from './presence-select.tsx';
import { useWrittenText } from './use-written-text.ts';

const severityChoices = severities.map((value) => ({ value, label: findingsTexts.severityChoices[value] }));

export function FindingPanel(props: {
  caseId: CaseId;
  pack: KnowledgePack;
  row: FindingRow;
  state: BenchState;
  readOnly: boolean;
  onRemoved: () => void;
}) {
  const { caseId, pack, row, readOnly, onRemoved } = props;
  const { finding, marks } = row;
  const bench = benchOfCase(caseId);
  /** Part, zone and kind while they do not go together yet. */
  const [place, setPlace] = useState<FindingDraft | null>(null);
  const [asking, setAsking] = useState<'class' | 'removal' | null>(null);

  /** Counts the times the note was taken up: what is written in one go is taken back in one. */
  const [noteTurn, setNoteTurn] = useState(0);

  const change = (fields: Partial<FindingFields>, writing?: string): boolean => {
    const { desk } = bench.read();
    if (desk === null) return false;
    bench.perform(changedFinding(desk.shown, finding.id, fields), writing);
    return true;
  };
  const note = useWrittenText(finding.note, (text) =>
    change({ note: text }, `note ${finding.id} ${noteTurn}`),
  );
  const counted = zonesOf(pack, finding.component).find((zone) => zone.id === finding.zone)?.counts ?? '';

  const changePlace = (draft: FindingDraft) => {
    const read = fieldsOfDraft(draft);
    if (!('fields' in read)) {
      setPlace(draft);
      return;
    }
    setPlace(null);
    const { component, position, zone, kind } = read.fields;
    change({ component, position, zone, kind });
  };

  const remove = () => {
    const { desk } = bench.read();
    if (desk === null) return;
    bench.perform(removedFinding(desk.shown, finding.id));
    toast(findingsTexts.removed, { action: { label: findingsTexts.undo, run: () => bench.undo() } });
    onRemoved();
  };

  const unfinished = place === null ? null : fieldsOfDraft(place);
  return (
    <SidePanel title={findingsTexts.title(finding.number)}>
      <fieldset className="finding-panel" disabled={readOnly}>
        <div className="finding-class">
          <span className="field-label">{findingsTexts.classNow}</span>
          <ClassBadge of={finding.class} named />
          <Button kind="quiet" onClick={() => setAsking('class')}>
            {findingsTexts.changeClass}
          </Button>
        </div>
        <FindingPlaceFields
          pack={pack}
          draft={place ?? draftOfFields(finding)}
          onDraft={changePlace}
          {...(unfinished !== null && 'errors' in unfinished ? { errors: unfinished.errors } : {})}
        />
        <PresenceSelect value={finding.presence} onValue={(presence) => change({ presence })} />
        <Select
          label={findingsTexts.severity}
          value={finding.severity ?? ''}
          choices={severityChoices}
          emptyChoice={findingsTexts.noSeverity}
          onValue={(severity) => change({ severity: severity === '' ? null : severity })}
        />
        <ExtentFields
          extent={finding.extent}
          counted={counted}
          disabled={readOnly}
          onExtent={(extent) => change({ extent })}
        />
        <TextArea
          label={findingsTexts.note}
          hint={findingsTexts.noteHint}
          maxLength={20_000}
          value={note.value}
          onValue={note.onValue}
          onFocus={() => setNoteTurn((turn) => turn + 1)}
          onBlur={note.onBlur}
        />
        <div className="finding-marks">
          <span className="field-label">{findingsTexts.columns.marks}</span>
          <MarkLinks caseId={caseId} row={row} />
        </div>
        <div>
          <Button kind="danger" onClick={() => setAsking('removal')}>
            {findingsTexts.remove}
          </Button>
        </div>
      </fieldset>
      {asking === 'class' ? (
        <ClassifyDialog caseId={caseId} finding={finding} onClose={() => setAsking(null)} />
      ) : null}
      <Dialog
        open={asking === 'removal'}
        title={findingsTexts.removing.title(finding.number)}
        onClose={() => setAsking(null)}
        onSubmit={remove}
        foot={
          <>
            <Button onClick={() => setAsking(null)}>{commonTexts.cancel}</Button>
            <Button kind="danger" type="submit">
              {findingsTexts.removing.confirm}
            </Button>
          </>
        }
      >
        <p>{findingsTexts.removing.words(marks.length)}</p>
        <p className="secondary-words">{findingsTexts.removing.undo}</p>
      </Dialog>
    </SidePanel>
  );
}
