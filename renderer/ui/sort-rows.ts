/** The order of a table's rows by one of its columns. */
export type SortValue = string | number | null;
export type SortOrder = { readonly key: string; readonly descending: boolean };
type SortColumn<Row> = { readonly key: string; readonly sortBy?: (row: Row) => SortValue };

/** Numbers by size, words by the reader's alphabet with figures counted as numbers; equal rows keep their order. */
export function sortRows<Row>(
  rows: readonly Row[],
  columns: readonly SortColumn<Row>[],
  order: SortOrder | null,
): readonly Row[] {
  const sortBy = columns.find((column) => column.key === order?.key)?.sortBy;
  if (order === null || sortBy === undefined) return rows;
  return rows
    .map((row) => ({ row, by: sortBy(row) }))
    .sort((a, b) => compare(a.by, b.by, order.descending))
    .map(({ row }) => row);
}

const alphabet = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

function compare(a: SortValue, b: SortValue, descending: boolean): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  const ascending =
    typeof a === 'number' && typeof b === 'number' ? a - b : alphabet.compare(String(a), String(b));
  return descending ? -ascending : ascending;
}
