import { at, type FlatPoint } from "../foundation/index.ts";
import { heightOnTop } from "./simplify-top.ts";

/**
 * What is taken out of a rib: from the top down to `levelMm`, or from below up to it. At its mouth it is wider by
 * `mouthMm` on both sides, and narrows to its own width within that depth.
 */
export interface RibCut {
  readonly from: "top" | "below";
  readonly fromMm: number;
  readonly toMm: number;
  readonly levelMm: number;
  readonly mouthMm?: number;
}

/** Less wood than this above or below a cut is none, mm. */
const LEAST_WOOD_MM = 5;

/** The two long edges of a rib from left to right: its top, and its foot with feet and tabs. */
export interface RibEdges {
  readonly top: readonly FlatPoint[];
  readonly foot: readonly FlatPoint[];
}

/**
 * The true-size outline of a rib, counter-clockwise: its foot, its ends upright, its top, and its cuts. Cuts that
 * overlap are one; what lies beyond the rib's ends is left out.
 */
export function ribOutline({ top, foot }: RibEdges, cuts: readonly RibCut[]): FlatPoint[] {
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
  const lower = cutEdge(foot, within("below"));
  const upper = cutEdge(top, within("top"));
  const outline = [...lower, ...upper.reverse()];
  return outline.filter((point, i) => {
    const before = at(outline, i - 1);
    return Math.hypot(point.u - before.u, point.v - before.v) > 1e-9;
  });
}

function joinCuts(cuts: readonly RibCut[]): RibCut[] {
  const joined: RibCut[] = [];
  for (const cut of [...cuts].sort((a, b) => a.fromMm - b.fromMm)) {
    const last = joined[joined.length - 1];
    if (last === undefined || cut.fromMm - mouthOf(cut) > last.toMm + mouthOf(last)) joined.push(cut);
    else {
      const pick = cut.from === "top" ? Math.min : Math.max;
      const toMm = Math.max(last.toMm, cut.toMm);
      const mouthMm = Math.max(mouthOf(last), mouthOf(cut));
      joined[joined.length - 1] = { ...last, toMm, levelMm: pick(last.levelMm, cut.levelMm), mouthMm };
    }
  }
  return joined;
}

const mouthOf = ({ mouthMm }: RibCut): number => mouthMm ?? 0;

/** A long edge from left to right with the open cuts in it; one that reaches an end of the rib leaves nothing there. */
function cutEdge(edge: readonly FlatPoint[], cuts: readonly RibCut[]): FlatPoint[] {
  const points: FlatPoint[] = [];
  const [firstMm, lastMm] = [at(edge, 0).u, at(edge, -1).u];
  let next = 0;
  for (const cut of cuts) {
    const shape = cutShape(edge, cut);
    if (shape === undefined) continue;
    const [fromMm, toMm] = [at(shape, 0).u, at(shape, -1).u];
    while (next < edge.length && at(edge, next).u < fromMm) points.push(at(edge, next++));
    points.push(...shape.slice(fromMm > firstMm ? 0 : 1, toMm < lastMm ? shape.length : -1));
    while (next < edge.length && at(edge, next).u <= toMm) next++;
  }
  return [...points, ...edge.slice(next)];
}

/** The corners of a cut, from the edge on its left to the edge on its right; undefined where it takes nothing away. */
function cutShape(edge: readonly FlatPoint[], cut: RibCut): FlatPoint[] | undefined {
  const { from, fromMm, toMm, levelMm } = cut;
  const mouthMm = mouthOf(cut);
  const sign = from === "top" ? 1 : -1;
  const inward = (v: number) => sign * Math.max(sign * levelMm, sign * v - mouthMm);
  const [firstMm, lastMm] = [at(edge, 0).u, at(edge, -1).u];
  const [leftMm, rightMm] = [Math.max(firstMm, fromMm - mouthMm), Math.min(lastMm, toMm + mouthMm)];
  const [before, after] = [heightOnTop(edge, fromMm), heightOnTop(edge, toMm)];
  if (sign * levelMm > Math.min(sign * before, sign * after)) return undefined;
  const shape = [
    { u: leftMm, v: heightOnTop(edge, leftMm) },
    { u: fromMm, v: inward(before) },
    { u: fromMm, v: levelMm },
    { u: toMm, v: levelMm },
    { u: toMm, v: inward(after) },
    { u: rightMm, v: heightOnTop(edge, rightMm) },
  ];
  return mouthMm > 0 ? shape : [at(shape, 0), at(shape, 2), at(shape, 3), at(shape, 5)];
}
