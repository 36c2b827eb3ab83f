/** A label by its middle along a line. */
interface Label {
  readonly id: string;
  readonly atPx: number;
}

/**
 * In which row each label of a line stands, the first one next to it, so that none covers another: each in the first row
 * whose last label ends before it. Labels are so wide at most; rows are told by id.
 */
export function labelRows(labels: readonly Label[], widthPx: number): ReadonlyMap<string, number> {
  const ends: number[] = [];
  const rows = new Map<string, number>();
  for (const { id, atPx } of [...labels].sort((a, b) => a.atPx - b.atPx)) {
    const free = ends.findIndex((endPx) => endPx <= atPx - widthPx / 2);
    const row = free < 0 ? ends.length : free;
    ends[row] = atPx + widthPx / 2;
    rows.set(id, row);
  }
  return rows;
}
