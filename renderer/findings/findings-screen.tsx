/** The findings station: all findings of the case in a table, the chosen one beside it. */
import { useMemo, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { conflictsAmong, markCountsOf } from '#analysis/findings/conflicts.ts';
import { changedFinding } from '#analysis/marks/bench-deeds.ts';
import type { BenchDesk } from '#analysis/marks/bench-desk.ts';
import type { HeldFinding } from '#analysis/marks/bench-state.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { FindingFields, Presence } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { expectationTexts } from '#shared-types/texts/expectations.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { useAnswer } from '../api/queries.ts';
import { findingAddress, stationAddress, useAddressedFinding } from '../app/addresses.ts';
import { benchOfCase, useBench } from '../marks/bench-store.ts';
import { labelsOf } from '../marks/labelled-marks.ts';
import { useUndoKeys } from '../marks/use-undo-keys.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { DataTable } from '../ui/data-table.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { SidePanel } from '../ui/side-panel.tsx';
import { toast } from '../ui/toaster.tsx';
import { AddFindingDialog } from './add-finding-dialog.tsx';
import { ConflictList } from './conflict-list.tsx';
import { DenyingDialog } from './denying-dialog.tsx';
import { ExpectationList, type ExpectedPlace } from './expectation-list.tsx';
import { FindingPanel } from './finding-panel.tsx';
import { conflictWords, rowsOf, type FindingRow } from './finding-rows.ts';
import { damageOf, findingColumns } from './finding-table.tsx';
import { useFindingsView } from './findings-view.ts';
import './findings-screen.css';

type FindingsScreenProps = { teardownCase: TeardownCase; pack: KnowledgePack };

export function FindingsScreen({ teardownCase, pack }: FindingsScreenProps) {
  const caseId = teardownCase.id;
  const photos = useAnswer('photos.list', { caseId });
  const { desk, error } = useBench(caseId);
  const failure = photos.error ?? error;
  if (failure !== null) {
    const retry = () => {
      void photos.refetch();
      if (error !== null) benchOfCase(caseId).retry();
    };
    return (
      <>
        <h1 className="only-read-out">{findingsTexts.heading}</h1>
        <ErrorState error={failure} onRetry={retry} />
      </>
    );
  }
  if (photos.data === undefined || desk === null) return <BusyState />;
  return <Inside teardownCase={teardownCase} pack={pack} photos={photos.data} desk={desk} />;
}

function Inside(props: FindingsScreenProps & { photos: readonly Photo[]; desk: BenchDesk }) {
  const { teardownCase, pack, photos, desk } = props;
  const caseId = teardownCase.id;
  const { rotation } = teardownCase.unit;
  const readOnly = teardownCase.status !== 'open';
  const bench = benchOfCase(caseId);
  const state = desk.shown;
  const [, go] = useLocation();
  const chosenId = useAddressedFinding();
  const [view, setView] = useFindingsView(caseId);
  const [adding, setAdding] = useState(false);
  const [denying, setDenying] = useState<FindingId | null>(null);
  const conflicts = useMemo(
    () =>
      conflictsAmong(pack, [...state.findings.values()], {
        markCounts: markCountsOf(state.marks.values()),
        rotation,
      }),
    [pack, state, rotation],
  );
  const labels = useMemo(() => labelsOf(photos, state), [photos, state]);
  const rows = useMemo(() => rowsOf(photos, state, labels, conflicts), [photos, state, labels, conflicts]);
  const columns = useMemo(() => findingColumns(caseId, pack), [caseId, pack]);
  const chosen = rows.find((row) => row.finding.id === chosenId) ?? null;
  const denied = rows.find((row) => row.finding.id === denying) ?? null;

  const undo = () => {
    if (!readOnly) bench.undo();
  };
  const redo = () => {
    if (!readOnly) bench.redo();
  };
  useUndoKeys(undo, redo);

  const choose = (id: FindingId) => go(findingAddress(caseId, id), { replace: chosenId !== null });
  const add = (fields: FindingFields) => {
    const id = crypto.randomUUID() as FindingId;
    bench.perform([{ patch: 'put-finding', findingId: id, fields }]);
    choose(id);
  };
  const writePresence = (id: FindingId, presence: Presence) => {
    const now = bench.read().desk?.shown;
    if (now !== undefined) bench.perform(changedFinding(now, id, { presence }));
  };
  const setPresence = (id: FindingId, presence: Presence) => {
    const marked = rows.some((row) => row.finding.id === id && row.marks.length > 0);
    if (marked && presence === 'looked-for-absent' && state.findings.get(id)?.presence !== presence) {
      setDenying(id);
    } else writePresence(id, presence);
  };
  const answer = (place: ExpectedPlace, own: readonly HeldFinding[], presence: Presence) => {
    const [one, ...others] = own;
    if (one === undefined) {
      const { component, position, zone, kind } = place;
      add({ ...unsaid, component, position, zone, kind, presence });
    } else if (others.length > 0) {
      toast(expectationTexts.several(own.map((finding) => finding.number)));
    } else {
      choose(one.id);
      setPresence(one.id, presence);
    }
  };
  const name = (row: FindingRow) => {
    const named = findingsTexts.rowName(row.finding.number, damageOf(pack, row));
    const settle = conflictWords(row);
    return settle === null ? named : `${named}; ${settle}`;
  };
  const looking = view === 'look';
  const empty = rows.length === 0;

  return (
    <div className="findings-screen">
      <div className="findings-list">
        <div className="screen-head">
          <h1>{findingsTexts.heading}</h1>
          <span className="secondary-words">{empty ? null : findingsTexts.count(rows.length)}</span>
          <div role="group" aria-label={findingsTexts.views.name} className="findings-views">
            {(['table', 'look'] as const).map((each) => (
              <Button key={each} pressed={view === each} onClick={() => setView(each)}>
                {findingsTexts.views[each]}
              </Button>
            ))}
          </div>
          {readOnly ? null : (
            <div className="screen-head-actions">
              <Button
                kind="quiet"
                disabled={desk.history.done.length === 0}
                aria-keyshortcuts="Control+Z"
                onClick={undo}
              >
                {findingsTexts.undo}
              </Button>
              <Button
                kind="quiet"
                disabled={desk.history.undone.length === 0}
                aria-keyshortcuts="Control+Shift+Z"
                onClick={redo}
              >
                {findingsTexts.redo}
              </Button>
              <Button onClick={() => setAdding(true)}>{findingsTexts.add}</Button>
            </div>
          )}
        </div>
        {looking ? null : <ConflictList caseId={caseId} pack={pack} conflicts={conflicts} />}
        {looking ? (
          <ExpectationList
            caseId={caseId}
            pack={pack}
            photos={photos}
            findings={state.findings}
            readOnly={readOnly}
            onAnswer={answer}
          />
        ) : empty ? (
          <EmptyState
            title={findingsTexts.emptyTitle}
            actions={
              <>
                <Link className="button button-primary" href={stationAddress(caseId, 'marks')}>
                  {findingsTexts.toMarks}
                </Link>
                <Button onClick={() => setView('look')}>{findingsTexts.toLookFor}</Button>
              </>
            }
          >
            <p>{findingsTexts.emptyWords}</p>
          </EmptyState>
        ) : (
          <DataTable
            caption={findingsTexts.caption}
            className="findings-table"
            columns={columns}
            rows={rows}
            rowKey={keyOfRow}
            rowLabel={name}
            rowHeight={44}
            sortedBy={byNumber}
            selectedKey={chosen?.finding.id ?? null}
            onSelect={(row) => choose(row.finding.id)}
          />
        )}
      </div>
      {empty && !looking ? null : chosen === null ? (
        <SidePanel title={findingsTexts.nothingChosen}>
          <p className="secondary-words">
            {looking ? findingsTexts.nothingLooked : findingsTexts.nothingChosenWords}
          </p>
        </SidePanel>
      ) : (
        <FindingPanel
          key={chosen.finding.id}
          teardownCase={teardownCase}
          pack={pack}
          row={chosen}
          readOnly={readOnly}
          onPresence={(presence) => setPresence(chosen.finding.id, presence)}
          onRemoved={() => go(stationAddress(caseId, 'findings'), { replace: true })}
        />
      )}
      {adding ? (
        <AddFindingDialog
          pack={pack}
          onClose={() => setAdding(false)}
          onAdd={(fields) => {
            setAdding(false);
            add(fields);
          }}
        />
      ) : null}
      {denied === null ? null : (
        <DenyingDialog
          row={denied}
          onClose={() => setDenying(null)}
          onDeny={() => {
            setDenying(null);
            writePresence(denied.finding.id, 'looked-for-absent');
          }}
        />
      )}
    </div>
  );
}

/** What one press in the list of what can occur says of a place: nothing but that. */
const unsaid = { class: 'undecided', severity: null, extent: null, bend: null, note: '' } as const;
const byNumber = { key: 'number', descending: false } as const;

function keyOfRow(row: FindingRow): string {
  return row.finding.id;
}
