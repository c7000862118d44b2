import {
  Fragment,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
  type KeyboardEvent,
  type ReactNode,
} from 'react';
import { classNames } from './class-names.ts';
import { useRowWindow } from './row-window.ts';
import { sortRows, type SortOrder, type SortValue } from './sort-rows.ts';

export type Column<Row> = {
  readonly key: string;
  readonly head: string;
  readonly cell: (row: Row) => ReactNode;
  /** What the column is sorted by; a column without it cannot be sorted. Null comes last. */
  readonly sortBy?: (row: Row) => SortValue;
  readonly align?: 'start' | 'end';
  readonly className?: string;
  /** The head is read out but not shown. */
  readonly headHidden?: boolean;
};

export type DataTableProps<Row> = {
  /** What the table lists, for screen readers. */
  caption: string;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  /** Words that name a row where it can be opened or chosen. */
  rowLabel?: (row: Row) => string;
  sortedBy?: SortOrder;
  /** Told when the reader sorts by a column: where not all rows are there, they are wanted now. */
  onSort?: () => void;
  /** Enter or a double click in a row; a single click too when `opensOnClick`. */
  onOpen?: (row: Row) => void;
  opensOnClick?: boolean;
  selectedKey?: string | null;
  onSelect?: (row: Row) => void;
  className?: string;
  /** Height that a row most likely has, in CSS pixels at the reader's text size of 100 %. */
  rowHeight?: number;
};

/** With more rows than this only those in sight are in the page. */
const mostRowsInPage = 150;
const ordinaryRowHeight = 30;

/**
 * Rows that can be sorted by their heads and walked with the arrow keys, Page Up and Down, Home and End.
 * Only one row at a time can be reached by Tab: the selected one, or the one last walked to.
 */
export function DataTable<Row>(props: DataTableProps<Row>) {
  const { caption, columns, rows, rowKey, selectedKey = null, className } = props;
  const [order, setOrder] = useState<SortOrder | null>(props.sortedBy ?? null);
  const [walkedTo, setWalkedTo] = useState<string | null>(null);
  const body = useRef<HTMLTableSectionElement>(null);
  /** The row to focus as soon as it is in the page. */
  const goingTo = useRef<string | null>(null);
  const sorted = useMemo(() => sortRows(rows, columns, order), [rows, columns, order]);
  const indexOf = useMemo(() => new Map(sorted.map((row, index) => [rowKey(row), index])), [sorted, rowKey]);
  const walks = props.onOpen !== undefined || props.onSelect !== undefined;
  const keyAt = (index: number) => {
    const row = sorted[index];
    return row === undefined ? null : rowKey(row);
  };
  const tabStop = [selectedKey, walkedTo].find((key) => key !== null && indexOf.has(key)) ?? keyAt(0);
  const long = sorted.length > mostRowsInPage;
  const shown = useRowWindow({
    body,
    count: sorted.length,
    keyOf: (index) => keyAt(index) ?? String(index),
    rowHeight: props.rowHeight ?? ordinaryRowHeight,
    pinned: [tabStop, walkedTo].flatMap((key) => (key === null ? [] : (indexOf.get(key) ?? []))),
    on: long,
  });

  useLayoutEffect(() => {
    if (goingTo.current === null) return;
    const row = rowElement(body.current, goingTo.current);
    if (row === null) return;
    goingTo.current = null;
    row.focus();
  });

  // What is chosen elsewhere, by an address or a link, is brought into sight.
  useLayoutEffect(() => {
    if (selectedKey === null) return;
    rowElement(body.current, selectedKey)?.scrollIntoView({ block: 'nearest' });
  }, [selectedKey]);

  const onKeyDown = (event: KeyboardEvent<HTMLTableRowElement>, row: Row) => {
    if (event.target !== event.currentTarget) return;
    if (event.key === 'Enter') {
      event.preventDefault();
      (props.onOpen ?? props.onSelect)?.(row);
    } else if (event.key === ' ' && props.onSelect !== undefined) {
      event.preventDefault();
      props.onSelect(row);
    } else {
      const next = walkedIndex(event.key, indexOf.get(rowKey(row)) ?? 0, sorted.length);
      const key = next === null ? null : keyAt(next);
      if (key === null) return;
      event.preventDefault();
      goingTo.current = key;
      setWalkedTo(key);
    }
  };

  return (
    <table
      className={classNames('data-table', walks && 'data-table-walks', long && 'data-table-long', className)}
      aria-rowcount={long ? sorted.length + 1 : undefined}
    >
      <caption className="only-read-out">{caption}</caption>
      <thead>
        <tr aria-rowindex={long ? 1 : undefined}>
          {columns.map((column) => (
            <HeadCell
              key={column.key}
              column={column}
              order={order}
              onOrder={(chosen) => {
                setOrder(chosen);
                props.onSort?.();
              }}
            />
          ))}
        </tr>
      </thead>
      <tbody ref={body}>
        {shown.rows.map(({ index, gapBefore }) => {
          const row = sorted[index];
          if (row === undefined) return null;
          const key = rowKey(row);
          return (
            <Fragment key={key}>
              {gapBefore === 0 ? null : <Gap height={gapBefore} columns={columns.length} />}
              <tr
                ref={shown.measure}
                data-row={key}
                data-index={index}
                aria-rowindex={long ? index + 2 : undefined}
                className={classNames(key === selectedKey && 'row-selected')}
                {...(walks
                  ? {
                      tabIndex: key === tabStop ? 0 : -1,
                      'aria-label': props.rowLabel?.(row),
                      'aria-current': key === selectedKey ? ('true' as const) : undefined,
                      onFocus: () => setWalkedTo(key),
                      onKeyDown: (event: KeyboardEvent<HTMLTableRowElement>) => onKeyDown(event, row),
                      onClick: () =>
                        props.opensOnClick === true ? props.onOpen?.(row) : props.onSelect?.(row),
                      onDoubleClick: () => props.onOpen?.(row),
                    }
                  : {})}
              >
                {columns.map((column) => (
                  <td key={column.key} className={cellClass(column)}>
                    {column.cell(row)}
                  </td>
                ))}
              </tr>
            </Fragment>
          );
        })}
        {shown.gapAfter === 0 ? null : <Gap height={shown.gapAfter} columns={columns.length} />}
      </tbody>
    </table>
  );
}

function rowElement(body: HTMLElement | null, key: string): HTMLElement | null {
  return body?.querySelector<HTMLElement>(`tr[data-row="${CSS.escape(key)}"]`) ?? null;
}

/** Stands for rows that are not in the page. */
function Gap({ height, columns }: { height: number; columns: number }) {
  return (
    <tr aria-hidden="true" className="row-gap">
      <td colSpan={columns} style={{ height }} />
    </tr>
  );
}

const rowsAPage = 10;

/** The index a key leads to from `index`; null for a key that does not walk or leads nowhere else. */
function walkedIndex(key: string, index: number, count: number): number | null {
  const steps: Record<string, number> = {
    ArrowDown: 1,
    ArrowUp: -1,
    PageDown: rowsAPage,
    PageUp: -rowsAPage,
    Home: -count,
    End: count,
  };
  const step = steps[key];
  if (step === undefined) return null;
  const next = Math.max(0, Math.min(index + step, count - 1));
  return next === index ? null : next;
}

function HeadCell<Row>({
  column,
  order,
  onOrder,
}: {
  column: Column<Row>;
  order: SortOrder | null;
  onOrder: (order: SortOrder) => void;
}) {
  const here = order?.key === column.key ? order : null;
  const direction = here === null ? undefined : here.descending ? 'descending' : 'ascending';
  const words =
    column.headHidden === true ? <span className="only-read-out">{column.head}</span> : column.head;
  return (
    <th scope="col" className={cellClass(column)} aria-sort={direction}>
      {column.sortBy === undefined ? (
        words
      ) : (
        <button
          type="button"
          className="sort-head"
          onClick={() => onOrder({ key: column.key, descending: here !== null && !here.descending })}
        >
          {words}
          <span className="sort-arrow" aria-hidden="true">
            {here === null ? '' : here.descending ? '▾' : '▴'}
          </span>
        </button>
      )}
    </th>
  );
}

function cellClass<Row>(column: Column<Row>): string {
  return classNames(column.align === 'end' && 'cell-end', column.className);
}
