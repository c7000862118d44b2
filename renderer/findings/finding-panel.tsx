/** One finding, changed in place: every choice is saved at once, text while it is written. */
import { useState } from 'react';
import { changedFinding, removedFinding } from '#analysis/marks/bench-deeds.ts';
import { partLabel } from '#analysis/report/term-labels.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import { AppError } from '#shared-types/errors.ts';
import { severities, type FindingFields, type Presence } from '#shared-types/finding.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { useAnswer } from '../api/queries.ts';
import { benchOfCase } from '../marks/bench-store.ts';
import { Button } from '../ui/button.tsx';
import { ClassBadge } from '../ui/class-badge.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { Select } from '../ui/select.tsx';
import { SidePanel } from '../ui/side-panel.tsx';
import { TextArea } from '../ui/text-field.tsx';
import { toastError } from '../ui/toaster.tsx';
import { BendFields } from './bend-fields.tsx';
import { ClassHistory } from './class-history.tsx';
import { ClassifyDialog } from './classify-dialog.tsx';
import { ExtentFields } from './extent-fields.tsx';
import { draftOfFields, fieldsOfDraft, zonesOf, type FindingDraft } from './finding-draft.ts';
import { FindingPlaceFields } from './finding-place-fields.tsx';
import type { FindingRow } from './finding-rows.ts';
import { damageOf, NoClass } from './finding-table.tsx';
import { ConflictLines } from './conflict-list.tsx';
import { MarkPicture } from './mark-picture.tsx';
import { PresenceSelect } from './presence-select.tsx';
import { toastWithUndo } from './undo-toast.ts';
import { useWrittenText } from './use-written-text.ts';

const severityChoices = severities.map((value) => ({ value, label: findingsTexts.severityChoices[value] }));

export function FindingPanel(props: {
  teardownCase: TeardownCase;
  pack: KnowledgePack;
  row: FindingRow;
  readOnly: boolean;
  /** Asks first where marks show what shall not be there. */
  onPresence: (presence: Presence) => void;
  onRemoved: () => void;
}) {
  const { teardownCase, pack, row, readOnly, onPresence, onRemoved } = props;
  const caseId = teardownCase.id;
  const { finding, marks } = row;
  const bench = benchOfCase(caseId);
  const chain = useAnswer('chain.read', { caseId }).data;
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
    const dropped = zone === null && component !== finding.component ? zoneLabelOf(pack, finding) : null;
    change({ component, position, zone, kind });
    if (dropped === null) return;
    toastWithUndo(bench, findingsTexts.zoneDropped(dropped, partLabel(pack, { component, position: null })));
  };

  const remove = () => {
    const { desk } = bench.read();
    if (desk === null) return;
    if (chain?.nodes.some((node) => node.findingId === finding.id) === true) {
      toastError(new AppError('finding-in-chain', { number: finding.number }));
      return;
    }
    bench.perform(removedFinding(desk.shown, finding.id));
    toastWithUndo(bench, findingsTexts.removed);
    onRemoved();
  };

  const unfinished = place === null ? null : fieldsOfDraft(place);
  const isThere = finding.presence === 'present';
  const bends = pack.kinds.find((kind) => kind.id === finding.kind)?.bends === true;
  return (
    <SidePanel title={findingsTexts.title(finding.number)}>
      <fieldset className="finding-panel" disabled={readOnly}>
        {row.conflicts.length === 0 ? null : (
          <div className="finding-conflicts">
            <ConflictLines caseId={caseId} pack={pack} conflicts={row.conflicts} />
          </div>
        )}
        <div className="finding-class">
          <span className="field-label">{findingsTexts.classNow}</span>
          {isThere ? (
            <>
              <ClassBadge of={finding.class} named />
              <Button kind="quiet" onClick={() => setAsking('class')}>
                {findingsTexts.changeClass}
              </Button>
            </>
          ) : (
            <>
              <NoClass />
              <span className="secondary-words">{findingsTexts.classOnlyOfPresent}</span>
            </>
          )}
        </div>
        <PresenceSelect value={finding.presence} onValue={onPresence} />
        <FindingPlaceFields
          pack={pack}
          draft={place ?? draftOfFields(finding)}
          onDraft={changePlace}
          {...(unfinished !== null && 'errors' in unfinished ? { errors: unfinished.errors } : {})}
        />
        {isThere && (bends || finding.bend !== null) ? (
          <BendFields
            teardownCase={teardownCase}
            pack={pack}
            kind={finding.kind}
            bend={finding.bend}
            sideOfPhoto={marks[0]?.photo.seenFrom ?? null}
            onBend={(bend) => change({ bend })}
          />
        ) : null}
        {isThere ? (
          <Select
            label={findingsTexts.severity}
            value={finding.severity ?? ''}
            choices={severityChoices}
            emptyChoice={findingsTexts.noSeverity}
            onValue={(severity) => change({ severity: severity === '' ? null : severity })}
          />
        ) : null}
        {isThere || finding.extent !== null ? (
          <ExtentFields
            extent={finding.extent}
            counted={counted}
            disabled={readOnly}
            onExtent={(extent) => change({ extent })}
          />
        ) : null}
        <TextArea
          label={findingsTexts.note}
          hint={findingsTexts.noteHint}
          maxLength={20_000}
          value={note.value}
          onValue={note.onValue}
          onFocus={() => setNoteTurn((turn) => turn + 1)}
          onBlur={note.onBlur}
        />
      </fieldset>
      <div className="finding-panel finding-panel-rest">
        <div className="finding-marks">
          <h3 className="field-label">{findingsTexts.columns.marks}</h3>
          {marks.length === 0 ? (
            <p className="secondary-words">{findingsTexts.noMarks}</p>
          ) : (
            <div className="mark-pictures">
              {marks.map((mark) => (
                <MarkPicture
                  key={mark.id}
                  caseId={caseId}
                  mark={mark}
                  damage={damageOf(pack, row)}
                  size="large"
                />
              ))}
            </div>
          )}
        </div>
        <ClassHistory caseId={caseId} findingId={finding.id} />
        {readOnly ? null : (
          <div>
            <Button kind="danger" onClick={() => setAsking('removal')}>
              {findingsTexts.remove}
            </Button>
          </div>
        )}
      </div>
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

function zoneLabelOf(pack: KnowledgePack, { component, zone }: FindingFields): string | null {
  if (zone === null) return null;
  return zonesOf(pack, component).find((known) => known.id === zone)?.label ?? zone;
}
