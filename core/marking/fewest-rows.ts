import { at } from "../foundation/index.ts";
import { markSpans } from "./mark-spans.ts";
import type { SmoothRun } from "./smooth-runs.ts";
import { battenMiss, type Miss } from "./span-misses.ts";

/** Rows nearer to each other than this are not told apart with a pencil, mm. */
const LEAST_APART_MM = 1;
const MOST_ADDED = 60;

/** Everywhere that a batten along marks in these rows strays from the true edges: the worst place. */
function worstMiss(runs: readonly SmoothRun[], rowsMm: readonly number[]): Miss {
  let worst: Miss = { missMm: 0, atUMm: 0 };
  for (const run of runs) {
    // Along a straight edge a batten is as good as a straightedge.
    if (run.points.length <= 2) continue;
    const miss = battenMiss(markSpans(run, rowsMm));
    if (miss.missMm > worst.missMm) worst = miss;
  }
  return worst;
}

/**
 * The fewest rows that could be found in which marks keep a batten within the tolerance, besides those that are there
 * anyway: added where it strays farthest, and then each left out that is not needed; or evenly, where that takes
 * fewer. Places in flat u, ascending, on whole mm from the start where there is room; as few as were tried where no
 * number of rows serves (an edge that runs square to the datum).
 */
export function fewestRowsForBatten(
  runs: readonly SmoothRun[],
  fixedMm: readonly number[],
  startMm: number,
  toleranceMm: number,
): readonly number[] {
  const missOf = (added: readonly number[]) => worstMiss(runs, inOrder([...fixedMm, ...added]));
  const added: number[] = [];
  for (
    let miss = missOf(added);
    miss.missMm > toleranceMm && added.length < MOST_ADDED;
    miss = missOf(added)
  ) {
    const placeMm = startMm + Math.round(miss.atUMm - startMm);
    if ([...fixedMm, ...added].some((rowMm) => Math.abs(rowMm - placeMm) < LEAST_APART_MM)) break;
    added.push(placeMm);
  }
  const serves = (rows: readonly number[]) => missOf(rows).missMm <= toleranceMm;
  if (!serves(added)) return inOrder(added);
  const needed = withoutNeedless(added, serves);
  return evenRows(fixedMm, startMm, needed.length, serves) ?? inOrder(needed);
}

/** Rows of which none can be left out; the first to be tried are those that were added last. */
function withoutNeedless(
  added: readonly number[],
  serves: (rows: readonly number[]) => boolean,
): readonly number[] {
  let needed = added;
  for (const row of added.toReversed()) {
    const fewer = needed.filter((other) => other !== row);
    if (serves(fewer)) needed = fewer;
  }
  return needed;
}

/** Fewer than so many rows, evenly apart over the whole strip, if they serve. */
function evenRows(
  fixedMm: readonly number[],
  startMm: number,
  fewerThan: number,
  serves: (rows: readonly number[]) => boolean,
): readonly number[] | undefined {
  const [fromMm, toMm] = [Math.min(...fixedMm), Math.max(...fixedMm)];
  for (let count = 1; count < fewerThan; count += 1) {
    const rows = Array.from({ length: count }, (_, i) => {
      const placeMm = fromMm + ((i + 1) * (toMm - fromMm)) / (count + 1);
      return startMm + Math.round(placeMm - startMm);
    });
    if (serves(rows)) return rows;
  }
  return undefined;
}

const inOrder = (rowsMm: readonly number[]): readonly number[] =>
  rowsMm.toSorted((a, b) => a - b).filter((row, i, all) => i === 0 || row - at(all, i - 1) > 1e-9);
