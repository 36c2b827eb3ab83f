import { at, type FlatPoint } from "../foundation/index.ts";
import { heightOnTop } from "./simplify-top.ts";

/** A rectangle taken out of a rib: from the top down to `levelMm`, or from below up to it. */
export interface RibCut {
  readonly from: "top" | "below";
  readonly fromMm: number;
  readonly toMm: number;
  readonly levelMm: number;
}

/** Less wood than this above or below a cut is none, mm. */
const LEAST_WOOD_MM = 5;

/**
 * The true-size outline of a rib, counter-clockwise: its foot on the baseboard, its ends upright, its top as
 * given (u ascending), and its cuts. Cuts that overlap are one; what lies beyond the rib's ends is left out.
 */
export function ribOutline(top: readonly FlatPoint[], cuts: readonly RibCut[]): FlatPoint[] {
  const firstMm = at(top, 0).u;
  const lastMm = at(top, -1).u;
  const within = (side: RibCut["from"]) =>
    joinCuts(
      cuts
        .filter(({ from, fromMm, toMm }) => from === side && toMm > firstMm && fromMm < lastMm)
        .map((cut) => ({
          ...cut,
          fromMm: Math.max(cut.fromMm, firstMm),
          toMm: Math.min(cut.toMm, lastMm),
          levelMm: Math.max(cut.levelMm, LEAST_WOOD_MM),
        })),
    );
  const foot = cutFoot([firstMm, lastMm], within("below"));
  const upper = cutTop(top, within("top"));
  const outline = [...foot, ...upper.reverse()];
  return outline.filter((point, i) => {
    const before = at(outline, i - 1);
    return Math.hypot(point.u - before.u, point.v - before.v) > 1e-9;
  });
}

const stepped = (
  fromMm: number,
  toMm: number,
  levelMm: number,
  [before, after]: readonly [number, number],
): FlatPoint[] => [
  { u: fromMm, v: before },
  { u: fromMm, v: levelMm },
  { u: toMm, v: levelMm },
  { u: toMm, v: after },
];

function joinCuts(cuts: readonly RibCut[]): RibCut[] {
  const joined: RibCut[] = [];
  for (const cut of [...cuts].sort((a, b) => a.fromMm - b.fromMm)) {
    const last = joined[joined.length - 1];
    if (last === undefined || cut.fromMm > last.toMm) joined.push(cut);
    else {
      const pick = cut.from === "top" ? Math.min : Math.max;
      const toMm = Math.max(last.toMm, cut.toMm);
      joined[joined.length - 1] = { ...last, toMm, levelMm: pick(last.levelMm, cut.levelMm) };
    }
  }
  return joined;
}

/** The foot from left to right with the slots in it; a slot that reaches an end of the rib leaves no foot there. */
function cutFoot([firstMm, lastMm]: readonly [number, number], cuts: readonly RibCut[]): FlatPoint[] {
  const stepsIn = cuts.flatMap(({ fromMm, toMm, levelMm }) =>
    stepped(fromMm, toMm, levelMm, [0, 0]).slice(fromMm > firstMm ? 0 : 1, toMm < lastMm ? 4 : 3),
  );
  const isCutAt = (placeMm: number) => cuts.some(({ fromMm, toMm }) => fromMm <= placeMm && toMm >= placeMm);
  return [
    ...(isCutAt(firstMm) ? [] : [{ u: firstMm, v: 0 }]),
    ...stepsIn,
    ...(isCutAt(lastMm) ? [] : [{ u: lastMm, v: 0 }]),
  ];
}

/** The top from left to right with the open cuts in it. */
function cutTop(top: readonly FlatPoint[], cuts: readonly RibCut[]): FlatPoint[] {
  const points: FlatPoint[] = [];
  let next = 0;
  for (const { fromMm, toMm, levelMm } of cuts) {
    const [before, after] = [heightOnTop(top, fromMm), heightOnTop(top, toMm)];
    if (levelMm > Math.min(before, after)) continue;
    while (next < top.length && at(top, next).u < fromMm) points.push(at(top, next++));
    const corners = stepped(fromMm, toMm, levelMm, [before, after]);
    // A cut that reaches an end of the rib leaves nothing standing there.
    points.push(...corners.slice(fromMm > at(top, 0).u ? 0 : 1, toMm < at(top, -1).u ? 4 : 3));
    while (next < top.length && at(top, next).u <= toMm) next++;
  }
  return [...points, ...top.slice(next)];
}
