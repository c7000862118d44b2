import { useMemo, useState, type KeyboardEvent, type ReactNode } from 'react';
import { classNames } from './class-names.ts';

export type SortValue = string | number | null;

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

export type SortOrder = { readonly key: string; readonly descending: boolean };

export type DataTableProps<Row> = {
  /** What the table lists, for screen readers. */
  caption: string;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  /** Words that name a row where it can be opened or chosen. */
  rowLabel?: (row: Row) => string;
  sortedBy?: SortOrder;
  /** Enter or a double click in a row; a single click too when `opensOnClick`. */
  onOpen?: (row: Row) => void;
  opensOnClick?: boolean;
  selectedKey?: string | null;
  onSelect?: (row: Row) => void;
  className?: string;
};

/**
 * Rows that can be sorted by their heads and walked with the arrow keys, Home and End.
 * Only one row at a time can be reached by Tab: the selected one, or the one last walked to.
 */
export function DataTable<Row>(props: DataTableProps<Row>) {
  const { caption, columns, rows, rowKey, selectedKey = null, className } = props;
  const [order, setOrder] = useState<SortOrder | null>(props.sortedBy ?? null);
  const [walkedTo, setWalkedTo] = useState<string | null>(null);
  const sorted = useMemo(() => sortRows(rows, columns, order), [rows, columns, order]);
  const walks = props.onOpen !== undefined || props.onSelect !== undefined;
  const stop = [selectedKey, walkedTo].find(
    (key) => key !== null && sorted.some((row) => rowKey(row) === key),
  );
  const tabStop = stop ?? (sorted[0] === undefined ? null : rowKey(sorted[0]));

  const onKeyDown = (event: KeyboardEvent<HTMLTableRowElement>, row: Row) => {
    if (event.target !== event.currentTarget) return;
    if (event.key === 'Enter') {
      event.preventDefault();
      (props.onOpen ?? props.onSelect)?.(row);
    } else if (event.key === ' ' && props.onSelect !== undefined) {
      event.preventDefault();
      props.onSelect(row);
    } else {
      const next = neighbour(event.currentTarget, event.key);
      if (next === null) return;
      event.preventDefault();
      next.focus();
    }
  };

  return (
    <table className={classNames('data-table', walks && 'data-table-walks', className)}>
      <caption className="only-read-out">{caption}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <HeadCell key={column.key} column={column} order={order} onOrder={setOrder} />
          ))}
        </tr>
      </thead>
      <tbody>
        {sorted.map((row) => {
          const key = rowKey(row);
          return (
            <tr
              key={key}
              data-row={key}
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
          );
        })}
      </tbody>
    </table>
  );
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

function neighbour(row: HTMLTableRowElement, key: string): HTMLElement | null {
  const step = { ArrowDown: row.nextElementSibling, ArrowUp: row.previousElementSibling }[key];
  const end = { Home: row.parentElement?.firstElementChild, End: row.parentElement?.lastElementChild }[key];
  const next = step ?? end;
  return next instanceof HTMLElement ? next : null;
}

/** Numbers by size, words by the reader's alphabet with figures counted as numbers; equal rows keep their order. */
export function sortRows<Row>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  order: SortOrder | null,
): readonly Row[] {
  const sortBy = columns.find((column) => column.key === order?.key)?.sortBy;
  if (order === null || sortBy === undefined) return rows;
  return [...rows].sort((a, b) => compare(sortBy(a), sortBy(b), order.descending));
}

const alphabet = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

function compare(a: SortValue, b: SortValue, descending: boolean): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  const ascending =
    typeof a === 'number' && typeof b === 'number' ? a - b : alphabet.compare(String(a), String(b));
  return descending ? -ascending : ascending;
}
