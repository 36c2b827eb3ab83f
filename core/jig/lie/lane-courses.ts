import { at } from "../../foundation/index.ts";
import type { LyingSheet } from "../../surfaces/index.ts";
import type { CoursePoint } from "./foam-stretches.ts";
import type { Lane } from "./types.ts";

/** A lane is looked at this often, mm: bends are far longer. */
const STEP_MM = 16;
/** The outermost lanes run this far inside the edges, mm. */
const INSIDE_MM = 10;
/** Lanes lie no farther apart than this, as long as five of them do, mm. */
const APART_MM = 300;
const MOST_LANES = 5;
/** A lane turns aside by no more than this for each mm that it goes on. */
const MOST_ASIDE = 0.7;

/** The course of a lane in plan, before it is known where foam is, and how wide the sheet is there at most. */
export interface LaneCourse {
  readonly course: readonly CoursePoint[];
  readonly widthMm: number;
}

/**
 * Lines over a sheet in plan: just inside both edges, and evenly between, from one end of it to the other and so far past
 * them.
 */
export function laneCourses(sheet: LyingSheet, over: Lane["over"], pastMm: number): readonly LaneCourse[] {
  const [run, aside] = over === "across" ? (["x", "y"] as const) : (["y", "x"] as const);
  const [least, most] = sheet.planBox;
  const reachMm = Math.abs(sheet.depths.coreUpperMm) + 1 + pastMm;
  const [fromMm, toMm] = [least[run] - reachMm, most[run] + reachMm];
  const steps = Math.max(2, Math.ceil((toMm - fromMm) / STEP_MM));
  const spans = Array.from({ length: steps + 1 }, (_, i) => {
    const placeMm = fromMm + ((toMm - fromMm) * i) / steps;
    return { placeMm, span: spanAt(sheet, { run, aside }, placeMm) };
  });
  const known = spans.flatMap(({ span }) => (span ? [span] : []));
  if (known.length === 0) return [];
  const widthMm = Math.max(...known.map(([low, high]) => high - low));
  const lanes = Math.min(MOST_LANES, Math.max(3, Math.ceil(widthMm / APART_MM) + 1));
  return Array.from({ length: lanes }, (_, i): LaneCourse => {
    let [nearest, before] = [at(known, 0), Number.NaN];
    const course = spans.map(({ placeMm, span }) => {
      nearest = span ?? nearest;
      const wantedMm = insideAt(nearest, i / (lanes - 1));
      const stepMm = MOST_ASIDE * ((toMm - fromMm) / steps);
      before = Number.isNaN(before)
        ? wantedMm
        : Math.min(before + stepMm, Math.max(before - stepMm, wantedMm));
      const isAside = Math.abs(before - wantedMm) > 1;
      return over === "across" ? { x: placeMm, y: before, isAside } : { x: before, y: placeMm, isAside };
    });
    return { course, widthMm };
  });
}

function insideAt([low, high]: readonly [number, number], share: number): number {
  const insideMm = Math.min(INSIDE_MM, (high - low) / 4);
  return low + insideMm + share * (high - low - 2 * insideMm);
}

/** From where to where a sheet's outline reaches aside at a place. */
function spanAt(
  { planLoops }: LyingSheet,
  { run, aside }: { readonly run: "x" | "y"; readonly aside: "x" | "y" },
  placeMm: number,
): readonly [number, number] | undefined {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const loop of planLoops) {
    for (const [i, to] of loop.entries()) {
      const from = at(loop, i - 1);
      if (from[run] < placeMm === to[run] < placeMm) continue;
      const share = (placeMm - from[run]) / (to[run] - from[run]);
      const asideMm = from[aside] + share * (to[aside] - from[aside]);
      low = Math.min(low, asideMm);
      high = Math.max(high, asideMm);
    }
  }
  return high > low ? [low, high] : undefined;
}
