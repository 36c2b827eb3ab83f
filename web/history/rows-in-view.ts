/** The rows of a long list that are drawn: from `first` up to and without `end`. */
export interface RowsInView {
  readonly first: number;
  readonly end: number;
}

/** Rows drawn above and below what is seen, so that a small move shows no gap. */
const SPARE_ROWS = 6;

/** The rows of a list of equal rows that a scrolled window shows, with a few to spare on both sides. */
export function rowsInView(
  count: number,
  rowPx: number,
  { topPx, heightPx }: { readonly topPx: number; readonly heightPx: number },
): RowsInView {
  const first = Math.max(0, Math.min(count, Math.floor(topPx / rowPx)) - SPARE_ROWS);
  const end = Math.min(count, Math.ceil((topPx + heightPx) / rowPx) + SPARE_ROWS);
  return { first, end: Math.max(first, end) };
}

/** Where to scroll so that a row is seen whole with one more beside it; where it is, if it is already. */
export function scrollToRow(
  row: number,
  rowPx: number,
  { topPx, heightPx }: { readonly topPx: number; readonly heightPx: number },
): number {
  const above = (row - 1) * rowPx;
  const below = (row + 2) * rowPx - heightPx;
  return Math.max(0, Math.min(Math.max(topPx, below), above));
}
