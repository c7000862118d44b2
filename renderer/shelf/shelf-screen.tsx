import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { CaseSummary } from '#shared-types/case.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { shelfTexts } from '#shared-types/texts/shelf.ts';
import { pictureAddress } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { stationAddress } from '../app/addresses.ts';
import { unitName, unitText } from '../app/unit-text.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { DataTable, type Column } from '../ui/data-table.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { dayText, numberText } from '../ui/number-words.ts';
import { StatusWord } from '../ui/status-word.tsx';
import { LibrarySwitch } from './library-switch.tsx';
import { NewCaseDialog } from './new-case-dialog.tsx';
import './shelf.css';

/** So many are there at once, however many the library has; the others when they are wanted. */
const shownAtOnce = 200;

/** The newest cases, and one more where there are more; all of them once that is asked for. */
function useCases() {
  const [all, setAll] = useState(false);
  const latest = useAnswer('cases.list', { latest: shownAtOnce + 1 });
  const every = useAnswer('cases.list', all ? {} : null);
  const isCut = (latest.data?.length ?? 0) > shownAtOnce && every.data === undefined;
  return {
    data: every.data ?? latest.data?.slice(0, shownAtOnce),
    error: latest.error ?? every.error,
    isCut,
    isReadingAll: isCut && all && every.error === null,
    readAll: () => setAll(true),
    refetch: () => Promise.all([latest.refetch(), ...(all ? [every.refetch()] : [])]),
  };
}

/** All cases of the library, and the way into a new one. */
export function ShelfScreen() {
  const cases = useCases();
  const [, navigate] = useLocation();
  const [opening, setOpening] = useState(false);
  const openCase = (one: CaseSummary) => navigate(stationAddress(one.id, 'claim'));
  const newCase = (
    <Button kind="primary" onClick={() => setOpening(true)}>
      {shelfTexts.newCase}
    </Button>
  );

  return (
    <div className="screen shelf">
      <div className="screen-head">
        <h1>{shelfTexts.title}</h1>
        {cases.data === undefined || cases.data.length === 0 ? null : (
          <p className="secondary-words">
            {cases.isCut
              ? shelfTexts.latest(numberText(cases.data.length))
              : shelfTexts.count(numberText(cases.data.length), cases.data.length === 1)}{' '}
            · {shelfTexts.keysHint}
          </p>
        )}
        {cases.isCut ? (
          <Button kind="quiet" disabled={cases.isReadingAll} onClick={cases.readAll}>
            {cases.isReadingAll ? shelfTexts.readingAll : shelfTexts.readAll}
          </Button>
        ) : null}
        <div className="screen-head-actions">
          {cases.data?.length === 0 ? null : <LibrarySwitch />}
          {cases.data?.length === 0 ? null : newCase}
        </div>
      </div>
      {cases.data === undefined ? (
        cases.error === null ? (
          <BusyState />
        ) : (
          <ErrorState error={cases.error} onRetry={() => void cases.refetch()} />
        )
      ) : cases.data.length === 0 ? (
        <EmptyState
          title={shelfTexts.empty.title}
          actions={
            <>
              {newCase}
              <LibrarySwitch />
            </>
          }
        >
          <p>{shelfTexts.empty.words}</p>
          <p>{shelfTexts.empty.samplesWords}</p>
        </EmptyState>
      ) : (
        <DataTable
          className="shelf-table"
          caption={shelfTexts.tableCaption}
          columns={columns}
          rows={cases.data}
          rowKey={(one) => one.id}
          rowLabel={(one) => shelfTexts.rowName(one.number, unitText(one.unit))}
          sortedBy={{ key: 'number', descending: true }}
          onSort={cases.readAll}
          onOpen={openCase}
          opensOnClick
        />
      )}
      <NewCaseDialog open={opening} onClose={() => setOpening(false)} />
    </div>
  );
}

function CellLine({ words, said = false }: { words: string; said?: boolean }) {
  return (
    <span className={said ? 'cell-line said' : 'cell-line'} title={words}>
      {words}
    </span>
  );
}

const columns: readonly Column<CaseSummary>[] = [
  {
    key: 'cover',
    head: shelfTexts.columns.cover,
    headHidden: true,
    className: 'shelf-cover',
    cell: (one) =>
      one.coverBlobId === null ? (
        <span className="thumb thumb-none" />
      ) : (
        <img
          className="thumb"
          src={pictureAddress(`thumbnail/${one.coverBlobId}`)}
          alt=""
          loading="lazy"
          draggable={false}
        />
      ),
  },
  {
    key: 'number',
    head: shelfTexts.columns.number,
    className: 'nowrap',
    sortBy: (one) => one.number,
    cell: (one) => (
      <Link
        className="shelf-number"
        href={stationAddress(one.id, 'claim')}
        tabIndex={-1}
        onClick={(event) => event.stopPropagation()}
      >
        {one.number}
      </Link>
    ),
  },
  {
    key: 'unit',
    head: shelfTexts.columns.unit,
    className: 'shelf-unit',
    sortBy: (one) => unitName(one.unit) || null,
    cell: (one) =>
      unitName(one.unit) === '' ? (
        <span className="secondary-words">{shelfTexts.noUnit}</span>
      ) : (
        <CellLine words={unitName(one.unit)} />
      ),
  },
  {
    key: 'serial',
    head: shelfTexts.columns.serial,
    className: 'nowrap shelf-serial',
    sortBy: (one) => one.unit.serial || null,
    cell: (one) => one.unit.serial,
  },
  {
    key: 'customer',
    head: shelfTexts.columns.customer,
    className: 'shelf-customer',
    sortBy: (one) => one.customer || null,
    cell: (one) => <CellLine words={one.customer} />,
  },
  {
    key: 'claim',
    head: shelfTexts.columns.claim,
    className: 'shelf-claim',
    cell: (one) => (one.claim.trim() === '' ? null : <CellLine said words={commonTexts.quoted(one.claim)} />),
  },
  {
    key: 'outcome',
    head: shelfTexts.columns.outcome,
    sortBy: (one) => commonTexts.outcomes[one.outcome],
    cell: (one) => (
      <StatusWord tone={one.outcome === 'not-answered' ? 'warn' : 'neutral'}>
        {commonTexts.outcomes[one.outcome]}
      </StatusWord>
    ),
  },
  {
    key: 'status',
    head: shelfTexts.columns.status,
    className: 'shelf-status',
    sortBy: (one) => commonTexts.statuses[one.status],
    cell: (one) => <StatusWord>{commonTexts.statuses[one.status]}</StatusWord>,
  },
  {
    key: 'photos',
    head: shelfTexts.columns.photos,
    align: 'end',
    sortBy: (one) => one.counts.photos,
    cell: (one) => numberText(one.counts.photos),
  },
  {
    key: 'findings',
    head: shelfTexts.columns.findings,
    align: 'end',
    sortBy: (one) => one.counts.findings,
    cell: (one) => numberText(one.counts.findings),
  },
  {
    key: 'opened',
    head: shelfTexts.columns.opened,
    align: 'end',
    className: 'nowrap shelf-opened',
    sortBy: (one) => one.openedAt,
    cell: (one) => dayText(one.openedAt),
  },
];
