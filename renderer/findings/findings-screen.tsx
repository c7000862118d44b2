/** The findings station: all findings of the case in a table, the chosen one beside it. */
import { useMemo, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { BenchDesk } from '#analysis/marks/bench-desk.ts';
import { kindLabel, placeLabel } from '#analysis/report/term-labels.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { useAnswer } from '../api/queries.ts';
import { findingAddress, stationAddress, useAddressedFinding } from '../app/addresses.ts';
import { benchOfCase, useBench } from '../marks/bench-store.ts';
import { labelsOf } from '../marks/labelled-marks.ts';
import { newFinding } from '../marks/mark-patches.ts';
import { useUndoKeys } from '../marks/use-undo-keys.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { DataTable } from '../ui/data-table.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { SidePanel } from '../ui/side-panel.tsx';
import { AddFindingDialog } from './add-finding-dialog.tsx';
import { FindingPanel } from './finding-panel.tsx';
import { findingColumns, rowsOf, type FindingRow } from './finding-table.tsx';
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
  const readOnly = teardownCase.status !== 'open';
  const bench = benchOfCase(caseId);
  const state = desk.shown;
  const [, go] = useLocation();
  const chosenId = useAddressedFinding();
  const [adding, setAdding] = useState(false);
  const labels = useMemo(() => labelsOf(photos, state), [photos, state]);
  const rows = useMemo(() => rowsOf(photos, state, labels), [photos, state, labels]);
  const columns = useMemo(() => findingColumns(caseId, pack), [caseId, pack]);
  const chosen = rows.find((row) => row.finding.id === chosenId) ?? null;

  const undo = () => {
    if (!readOnly) bench.undo();
  };
  const redo = () => {
    if (!readOnly) bench.redo();
  };
  useUndoKeys(undo, redo);

  const choose = (id: FindingId) => go(findingAddress(caseId, id), { replace: chosenId !== null });
  const name = (row: FindingRow) =>
    findingsTexts.rowName(
      row.finding.number,
      `${kindLabel(pack, row.finding.kind)}, ${placeLabel(pack, row.finding)}`,
    );

  return (
    <div className="findings-screen">
      <div className="findings-list">
        <div className="screen-head">
          <h1>{findingsTexts.heading}</h1>
          <span className="secondary-words">
            {rows.length === 0 ? null : findingsTexts.count(rows.length)}
          </span>
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
        {rows.length === 0 ? (
          <EmptyState
            title={findingsTexts.emptyTitle}
            actions={
              <Link className="button button-primary" href={stationAddress(caseId, 'marks')}>
                {findingsTexts.toMarks}
              </Link>
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
            rowKey={(row) => row.finding.id}
            rowLabel={name}
            sortedBy={{ key: 'number', descending: false }}
            selectedKey={chosen?.finding.id ?? null}
            onSelect={(row) => choose(row.finding.id)}
          />
        )}
      </div>
      {rows.length === 0 ? null : chosen === null ? (
        <SidePanel title={findingsTexts.nothingChosen}>
          <p className="secondary-words">{findingsTexts.nothingChosenWords}</p>
        </SidePanel>
      ) : (
        <FindingPanel
          key={chosen.finding.id}
          caseId={caseId}
          pack={pack}
          row={chosen}
          state={state}
          readOnly={readOnly}
          onRemoved={() => go(stationAddress(caseId, 'findings'), { replace: true })}
        />
      )}
      {adding ? (
        <AddFindingDialog
          pack={pack}
          onClose={() => setAdding(false)}
          onAdd={(fields) => {
            const finding = newFinding(fields);
            bench.perform(finding.patches);
            setAdding(false);
            choose(finding.id);
          }}
        />
      ) : null}
    </div>
  );
}
