import type { Strip } from "../cutting/index.ts";
import { at, type FlatPoint, type Memory, NO_MEMORY } from "../foundation/index.ts";
import type { FlatLoop } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";
import { type BevelledLoop, bevelledLoops, hasBevels } from "./bevelled-edges.ts";
import { bevelsOfRows } from "./bevels-of-rows.ts";
import { chooseDatum } from "./choose-datum.ts";
import { fewestRowsForBatten } from "./fewest-rows.ts";
import { type MarkSpan, markSpans } from "./mark-spans.ts";
import type { ShownFace } from "./shown-face.ts";
import { type SmoothRun, smoothRuns, wholeRun } from "./smooth-runs.ts";
import { battenMiss, straightMiss } from "./span-misses.ts";
import type { MarkingRow, MarkingTable, RowReason } from "./types.ts";

/** Rows nearer than this print the same and are one row: half of what a pencil marks. */
const SAME_ROW_MM = 0.05;
/** The finest interval and tolerance that a pencil can follow; they also keep odd settings from running away, mm. */
const LEAST_INTERVAL_MM = 10;
const LEAST_TOLERANCE_MM = 0.05;
const DEFAULT_INTERVAL_MM = 100;
/** More rows than this nobody marks by hand: the outline is ragged and wants its template, not a table. */
const MOST_ROWS = 300;
/** Rounds of adding rows; each at least quarters the miss of a smooth edge. */
const MOST_ROUNDS = 12;

/**
 * A table for each strip to mark it out with tape and square: a row at every interval, at corners, at relief slots, and wherever
 * joining the marks by straight lines would miss the true edge by more than the tolerance; with the largest
 * remaining misses, joined straight and with a batten. An outline with more than 300 corners keeps to that many
 * rows, and its misses say so. With `marking.rows` "fewest for a batten" there are no stations: a row at corners and slots,
 * and as few more as keep a batten within the tolerance.
 */
export const markingTables = (
  strips: readonly Strip[],
  project: Pick<Project, "marking">,
  memory: Memory = NO_MEMORY,
): MarkingTable[] =>
  strips.map((strip) =>
    memory.recall(`marks of ${strip.id}`, [strip, project.marking], () => tableOfStrip(strip, project)),
  );

function tableOfStrip(strip: Strip, project: Pick<Project, "marking">): MarkingTable {
  const bevelled = hasBevels(strip) ? bevelledLoops(strip) : [];
  const slotsUMm = (strip.slots ?? []).map(({ uMm }) => uMm);
  const drawn = { loops: strip.loops, bevelled, slotsUMm, origin: chooseDatum(strip.loops) };
  return markingTable(strip.id, drawn, project);
}

/**
 * The same table for the lines on the face shown, which bevels move off the outline: what a builder marks there. Its
 * datum is that of the strip's own table.
 */
export const faceTable = (
  table: MarkingTable,
  { loops }: ShownFace,
  project: Pick<Project, "marking">,
): MarkingTable => {
  const { stripId, origin, rows } = table;
  const slotsUMm = rows.filter(({ reason }) => reason === "slot").map(({ alongMm }) => origin.u + alongMm);
  return markingTable(stripId, { loops, bevelled: loops, slotsUMm, origin }, project);
};

/** A row while the table is made: its place in flat u, and why it is there. */
interface Row {
  readonly uMm: number;
  readonly reason: RowReason;
}

/** What a table is made of: loops, the same with their bevels where there are any, slots, and where the datum starts. */
interface Drawn {
  readonly loops: readonly FlatLoop[];
  readonly bevelled: readonly BevelledLoop[];
  /** Where relief slots run across. */
  readonly slotsUMm: readonly number[];
  readonly origin: FlatPoint;
}

function markingTable(
  stripId: string,
  { loops, bevelled, slotsUMm, origin }: Drawn,
  { marking }: Pick<Project, "marking">,
): MarkingTable {
  const runs = runsOf(loops);
  const toleranceMm = usable(marking.toleranceMm, LEAST_TOLERANCE_MM, LEAST_TOLERANCE_MM);
  const intervalMm = usable(marking.intervalMm, DEFAULT_INTERVAL_MM, LEAST_INTERVAL_MM);
  const always = [
    ...cornerRows(runs),
    ...turningRows(runs),
    ...slotsUMm.map((uMm): Row => ({ uMm, reason: "slot" })),
  ];
  const isForBatten = marking.rows === "fewest for a batten" && runs.length <= MOST_ROWS;
  const rows = isForBatten
    ? rowsForBatten(runs, always, origin.u, toleranceMm)
    : rowsAtStations(runs, [...always, ...stationRows(runs, origin.u, intervalMm)], origin.u, toleranceMm);
  const rowsMm = rows.map(({ uMm }) => uMm);
  const spansOfRuns = runs.map((run) => markSpans(run, rowsMm));
  const offsets = offsetsOfRows(spansOfRuns, rowsMm, origin.v);
  const bevels = bevelsOfRows(bevelled, rowsMm, offsets, origin.v);
  const marked = rows.map(
    ({ uMm, reason }, i): MarkingRow => ({
      alongMm: uMm - origin.u,
      offsetsMm: at(offsets, i),
      bevelsRad: at(bevels, i),
      reason,
    }),
  );
  return {
    stripId,
    origin,
    joinedBy: isForBatten ? "batten" : "straight lines",
    // A station off the end of a face that bevels shorten has nothing to mark.
    rows: marked.filter(({ offsetsMm }) => offsetsMm.length > 0),
    straightMissMm: greatest(spansOfRuns.flat(), (span) => straightMiss(span).missMm),
    // Along a straight edge a batten is as good as a straightedge.
    battenMissMm: greatest(spansOfRuns, (spans, i) =>
      at(runs, i).points.length > 2 ? battenMiss(spans).missMm : 0,
    ),
  };
}

/** Stations, and between them as many rows as keep straight lines within the tolerance. */
function rowsAtStations(
  runs: readonly SmoothRun[],
  first: readonly Row[],
  startMm: number,
  toleranceMm: number,
): readonly Row[] {
  let rows = mergeRows(first);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const extra = extraRows(runs, rows, startMm, toleranceMm);
    if (extra.length === 0 || rows.length + extra.length > MOST_ROWS) break;
    rows = mergeRows([...rows, ...extra]);
  }
  return rows;
}

/** No stations: what must be marked anyway, and the fewest rows that a batten needs. */
function rowsForBatten(
  runs: readonly SmoothRun[],
  always: readonly Row[],
  startMm: number,
  toleranceMm: number,
): readonly Row[] {
  const ends = runs.flatMap(({ points }) => [at(points, 0).u, at(points, -1).u]);
  const fixed = mergeRows([...always, ...ends.map((uMm): Row => ({ uMm, reason: "corner" }))]);
  const fixedMm = fixed.map(({ uMm }) => uMm);
  const added = fewestRowsForBatten(runs, fixedMm, startMm, toleranceMm);
  return mergeRows([...fixed, ...added.map((uMm): Row => ({ uMm, reason: "extra" }))]);
}

const greatest = <T>(items: readonly T[], measure: (item: T, index: number) => number): number =>
  items.reduce((most, item, i) => Math.max(most, measure(item, i)), 0);

const usable = (typed: number, fallback: number, least: number): number =>
  typed > 0 ? Math.max(typed, least) : fallback;

/** Loops taken apart at their corners; ragged ones whole, so that the miss that is printed counts their corners. */
function runsOf(loops: readonly FlatLoop[]): readonly SmoothRun[] {
  const runs = loops.flatMap(smoothRuns);
  return runs.length <= MOST_ROWS ? runs : loops.map(wholeRun);
}

const cornerRows = (runs: readonly SmoothRun[]): Row[] =>
  runs.map(({ points }) => ({ uMm: at(points, 0).u, reason: "corner" }));

/** Where a smooth edge turns back along the datum (a round nose): its foremost and rearmost points. */
function turningRows(runs: readonly SmoothRun[]): Row[] {
  const turning = runs.flatMap(({ points }) => {
    const rows: Row[] = [];
    let direction = 0;
    for (let i = 1; i < points.length; i++) {
      const next = Math.sign(at(points, i).u - at(points, i - 1).u);
      if (next !== 0 && direction !== 0 && next !== direction) {
        rows.push({ uMm: at(points, i - 1).u, reason: "extra" });
      }
      if (next !== 0) direction = next;
    }
    return rows;
  });
  return turning.length <= MOST_ROWS ? turning : [];
}

function stationRows(runs: readonly SmoothRun[], startUMm: number, intervalMm: number): Row[] {
  const mostUMm = runs.reduce(
    (most, { points }) => points.reduce((best, { u }) => Math.max(best, u), most),
    startUMm,
  );
  const lengthMm = Number.isFinite(mostUMm - startUMm) ? mostUMm - startUMm : 0;
  const stepMm = intervalMm * Math.max(1, Math.ceil(lengthMm / intervalMm / MOST_ROWS));
  const count = Math.floor(lengthMm / stepMm + 1e-9);
  return Array.from({ length: count + 1 }, (_, i) => ({ uMm: startUMm + i * stepMm, reason: "station" }));
}

/** A row at the worst place of every span that misses; on a whole millimetre where there is room for it. */
function extraRows(
  runs: readonly SmoothRun[],
  rows: readonly Row[],
  startMm: number,
  toleranceMm: number,
): Row[] {
  const rowsMm = rows.map(({ uMm }) => uMm);
  return runs
    .flatMap((run) => markSpans(run, rowsMm))
    .flatMap((span): Row[] => {
      const { missMm, atUMm } = straightMiss(span);
      if (missMm <= toleranceMm) return [];
      const wholeMm = startMm + Math.round(atUMm - startMm);
      const isRoomy = rowsMm.every((rowMm) => Math.abs(rowMm - wholeMm) >= 1);
      return [{ uMm: isRoomy ? wholeMm : atUMm, reason: "extra" }];
    });
}

/** Rows in order; where several fall on one place the corner's stands, else the station's. */
function mergeRows(rows: readonly Row[]): Row[] {
  const rank: Record<RowReason, number> = { corner: 0, slot: 1, station: 2, extra: 3 };
  const sorted = [...rows].sort((a, b) => a.uMm - b.uMm);
  const merged: Row[] = [];
  for (const row of sorted) {
    const last = merged[merged.length - 1];
    if (last === undefined || row.uMm - last.uMm > SAME_ROW_MM) merged.push(row);
    else if (rank[row.reason] < rank[last.reason]) merged[merged.length - 1] = row;
  }
  return merged;
}

/** Offsets of all marks on each row, ascending; marks on one spot (two edges that meet there) once. */
function offsetsOfRows(
  spansOfRuns: readonly (readonly MarkSpan[])[],
  rowsMm: readonly number[],
  datumVMm: number,
): number[][] {
  const offsets: number[][] = rowsMm.map(() => []);
  for (const spans of spansOfRuns) {
    const marks = spans.flatMap((span, i) => (i === 0 ? [at(span, 0), at(span, -1)] : [at(span, -1)]));
    for (const { u, v } of marks) {
      const row = nearestRow(u, rowsMm);
      if (Math.abs(at(rowsMm, row) - u) <= SAME_ROW_MM) at(offsets, row).push(v - datumVMm);
    }
  }
  return offsets.map((values) => {
    const sorted = values.sort((a, b) => a - b);
    return sorted.filter((value, i) => i === 0 || value - at(sorted, i - 1) > SAME_ROW_MM);
  });
}

function nearestRow(uMm: number, rowsMm: readonly number[]): number {
  let low = 0;
  let high = rowsMm.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(rowsMm, middle) <= uMm) low = middle;
    else high = middle;
  }
  return uMm - at(rowsMm, low) <= at(rowsMm, high) - uMm ? low : high;
}
