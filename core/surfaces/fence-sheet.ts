import {
  type Curve,
  type CurveFrame,
  type CurvePiece,
  derivativeOnPiece,
  pointOnPiece,
  reversePiece,
  toCurve,
  walkCurve,
} from "../curves/index.ts";
import { at, CHORD_ERROR_MM, type FlatPoint, type PlanPoint, type Problem } from "../foundation/index.ts";
import { faceDepths } from "../laminate/index.ts";
import { coreOf, type Fence, type Project } from "../project/index.ts";
import type { ChordLimits } from "./chord-limits.ts";
import { parameterOf } from "./cylinder-chart.ts";
import { faceHeightAt } from "./face-height.ts";
import { dropStraight, sampleChords } from "./sample-chords.ts";
import type { ChartPiece, FenceSheet, RegionEdge, SeatStation, SectionSheet } from "./types.ts";

/** A fence may miss the sheet by this much of its length at either end: less than a saw cut. */
const END_GRACE_MM = 0.5;

/** A fence's edges are long and low: a fifth of the chord error of any pattern, and lengths good to 4e-7. */
const FENCE_CHORDS: ChordLimits = { sagMm: CHORD_ERROR_MM / 5, turnRad: 0.003 };

/** Step of the first look along a fence for places where the sheet above changes; less than any sheet's width. */
const LOOK_STEP_MM = 5;

/**
 * The upright sheet of a fence: its line is the mid-plane, u runs along it rearward, v is the height above ground.
 * The upper edge lies on the lowest foam face above (seat "core") or on the finished lower skin (seat "skin"), with
 * its heights at both foam faces; the lower edge is the finished one less its wrap of skin. Stretches without a
 * sheet, and places where the lower edge is above the upper, are problems, and the fence is left out.
 */
export function fenceSheet(
  project: Project,
  fence: Fence,
  line: Curve,
  lowerEdge: Curve | undefined,
  sheets: readonly SectionSheet[],
): { readonly sheet?: FenceSheet; readonly problems: readonly Problem[] } {
  const core = coreOf(project, fence);
  const rearward = runsRearward(line) ? line : toCurve(line.pieces.toReversed().map(reversePiece), false);
  const walk = walkCurve(rearward);
  const above = lookAbove(fence, core.thicknessMm, walk, sheets);
  const bare = bareStretch(fence, rearward, above);
  if (bare) return { problems: [bare] };
  const lower = lowerHeights(project, fence, { line: rearward, walk, above }, lowerEdge);
  if ("problem" in lower) return { problems: [lower.problem] };

  const stops = seatStops(rearward, above);
  const upper = sampleAlong(stops, (s) => above.overAt(s)?.z ?? Number.NaN);
  const under = sampleAlong(stops, lower.heightAt);
  const noDepth = upper.find(({ u, v }) => v < lower.heightAt(u) - 1e-9);
  if (noDepth) {
    return {
      problems: [
        { kind: "fence-has-no-depth", place: { itemId: fence.id }, name: fence.name, atMm: noDepth.u },
      ],
    };
  }
  const isOnCentre = project.symmetry === "mirrored" && line.pieces.every((piece) => isOnCentreLine(piece));
  return {
    sheet: {
      kind: "fence",
      id: `F${fence.number}`,
      itemId: fence.id,
      name: fence.name,
      foamId: core.foamId,
      thicknessMm: core.thicknessMm,
      depths: faceDepths("neutral", project.skins, core.thicknessMm),
      hands: project.symmetry === "none" || isOnCentre ? ["whole"] : ["right", "left"],
      chart: { kind: "upright", ...chartOf(rearward) },
      loops: [{ edges: outlineEdges(under, upper) }],
      seat: upper.flatMap(({ u }) => above.seatAt(u) ?? []),
      seatOn: fence.seat,
      standsFirst: fence.standsFirst,
    },
    problems: [],
  };
}

const runsRearward = (line: Curve): boolean =>
  at(pointOnPiece(at(line.pieces, -1), 1), 0) >= at(pointOnPiece(at(line.pieces, 0), 0), 0);

const isOnCentreLine = (piece: CurvePiece): boolean =>
  [0, 0.5, 1].every((t) => Math.abs(pointOnPiece(piece, t)[1]) <= CHORD_ERROR_MM);

function chartOf(line: Curve): { readonly pieces: readonly ChartPiece[]; readonly lengthUMm: number } {
  const pieces = line.pieces.map((piece, i) => {
    const startUMm = at(line.startsMm, i);
    const lengthUMm = (line.startsMm[i + 1] ?? line.lengthMm) - startUMm;
    return { piece, startUMm, lengthUMm, tableUMm: [0, lengthUMm], isEven: true };
  });
  return { pieces, lengthUMm: line.lengthMm };
}

/** Position and tangent of the fence's line at an arc length. */
type Walk = (alongMm: number) => CurveFrame;

/** What stands above a fence at a place along it; undefined where no sheet does. */
interface Above {
  /** The lowest sheet over the mid-plane, and the height of its seat there. */
  readonly overAt: (alongMm: number) => { readonly sheetId: string; readonly z: number } | undefined;
  /** As `overAt`, with the heights at both foam faces. */
  readonly seatAt: (alongMm: number) => SeatStation | undefined;
}

function lookAbove(fence: Fence, thicknessMm: number, walk: Walk, sheets: readonly SectionSheet[]): Above {
  const lowestOver = (p: PlanPoint) => {
    let lowest: { readonly sheetId: string; readonly z: number } | undefined;
    for (const sheet of sheets) {
      const depthMm = fence.seat === "core" ? sheet.depths.coreLowerMm : sheet.depths.airMm;
      const z = faceHeightAt(sheet, depthMm, p);
      if (z !== undefined && (lowest === undefined || z < lowest.z)) lowest = { sheetId: sheet.id, z };
    }
    return lowest;
  };
  const beside = ({ at: middle, tangent }: CurveFrame, offsetMm: number): PlanPoint => ({
    x: middle[0] - tangent[1] * offsetMm,
    y: middle[1] + tangent[0] * offsetMm,
  });
  return {
    overAt: (alongMm) => lowestOver(beside(walk(alongMm), 0)),
    seatAt: (alongMm) => {
      const frame = walk(alongMm);
      const over = lowestOver(beside(frame, 0));
      if (!over) return undefined;
      // A face of the fence that hangs over the sheet's edge takes the height of its mid-plane.
      const leftZMm = lowestOver(beside(frame, thicknessMm / 2))?.z ?? over.z;
      const rightZMm = lowestOver(beside(frame, -thicknessMm / 2))?.z ?? over.z;
      const bevelRad = Math.atan2(leftZMm - rightZMm, thicknessMm);
      return {
        alongMm,
        at: beside(frame, 0),
        midZMm: over.z,
        leftZMm,
        rightZMm,
        bevelRad,
        sheetId: over.sheetId,
      };
    },
  };
}

/** The first stretch of a fence with no sheet above, its ends found to a hundredth of a millimetre. */
function bareStretch(fence: Fence, line: Curve, above: Above): Problem | undefined {
  const steps = Math.max(2, Math.ceil(line.lengthMm / LOOK_STEP_MM));
  const isBare = (s: number): boolean =>
    above.overAt(Math.min(Math.max(s, END_GRACE_MM), line.lengthMm - END_GRACE_MM)) === undefined;
  const border = (from: number, to: number): number => {
    const bareAtFrom = isBare(from);
    let [a, b] = [from, to];
    while (b - a > 0.01) {
      const middle = (a + b) / 2;
      if (isBare(middle) === bareAtFrom) a = middle;
      else b = middle;
    }
    return (a + b) / 2;
  };
  let fromMm: number | undefined;
  for (let i = 0; i <= steps; i++) {
    const s = (line.lengthMm * i) / steps;
    const before = (line.lengthMm * (i - 1)) / steps;
    if (fromMm === undefined && isBare(s)) fromMm = i === 0 ? 0 : border(before, s);
    else if (fromMm !== undefined && !isBare(s)) return bareProblem(fence, fromMm, border(before, s));
  }
  return fromMm === undefined ? undefined : bareProblem(fence, fromMm, line.lengthMm);
}

const bareProblem = (fence: Fence, fromMm: number, toMm: number): Problem => ({
  kind: "fence-without-sheet",
  place: { itemId: fence.id },
  name: fence.name,
  fromMm,
  toMm,
});

/** Height of the foam's lower edge along the fence: the finished edge raised by the skin that wraps it. */
function lowerHeights(
  project: Project,
  fence: Fence,
  { line, walk, above }: { readonly line: Curve; readonly walk: Walk; readonly above: Above },
  lowerEdge: Curve | undefined,
): { readonly heightAt: (alongMm: number) => number } | { readonly problem: Problem } {
  const wrapMm = project.drawnFace === "air" ? project.skins.lowerMm : 0;
  if (fence.lowerEdge.kind === "depths") {
    const nodes = fence.lowerEdge.nodes.toSorted((a, b) => a.alongMm - b.alongMm);
    const airOver = (s: number): number => {
      const over = above.overAt(s);
      if (!over) return Number.NaN;
      return fence.seat === "core" ? over.z - wrapMm : over.z;
    };
    return { heightAt: (s) => airOver(s) - depthAt(nodes, s) + wrapMm };
  }
  if (!lowerEdge) {
    return {
      problem: {
        kind: "unknown-reference",
        place: { itemId: fence.id },
        name: fence.name,
        field: "lower edge",
        missingId: "a usable line",
      },
    };
  }
  const xs = line.pieces.flatMap((piece) => [0, 0.25, 0.5, 0.75, 1].map((t) => pointOnPiece(piece, t)[0]));
  const missingFrontMm = at(pointOnPiece(at(lowerEdge.pieces, 0), 0), 0) - Math.min(...xs);
  const missingRearMm = Math.max(...xs) - at(pointOnPiece(at(lowerEdge.pieces, -1), 1), 0);
  if (missingFrontMm > END_GRACE_MM || missingRearMm > END_GRACE_MM) {
    return {
      problem: {
        kind: "fence-edge-too-short",
        place: { itemId: fence.id },
        name: fence.name,
        missingFrontMm: Math.max(0, missingFrontMm),
        missingRearMm: Math.max(0, missingRearMm),
      },
    };
  }
  return { heightAt: (s) => heightOnCurve(lowerEdge, at(walk(s).at, 0)) + wrapMm };
}

function depthAt(
  nodes: readonly { readonly alongMm: number; readonly depthMm: number }[],
  s: number,
): number {
  const after = nodes.findIndex(({ alongMm }) => alongMm >= s);
  if (after <= 0) return (after === 0 ? nodes[0] : nodes.at(-1))?.depthMm ?? 0;
  const [a, b] = [at(nodes, after - 1), at(nodes, after)];
  return a.depthMm + ((b.depthMm - a.depthMm) * (s - a.alongMm)) / (b.alongMm - a.alongMm || 1);
}

/** z of a side-view curve whose x rises, at x; its end heights beyond its ends. */
export function heightOnCurve(curve: Curve, x: number): number {
  const piece = curve.pieces.find((candidate) => pointOnPiece(candidate, 1)[0] >= x) ?? at(curve.pieces, -1);
  const [start, end] = [pointOnPiece(piece, 0), pointOnPiece(piece, 1)];
  if (x <= start[0]) return start[1];
  if (x >= end[0]) return end[1];
  const t =
    piece.kind === "line"
      ? (x - start[0]) / (end[0] - start[0])
      : parameterOf((s) => [pointOnPiece(piece, s)[0], derivativeOnPiece(piece, s)[0]], x);
  return pointOnPiece(piece, t)[1];
}

/** Where the seat's or the line's form changes: ends, pieces of the line, and borders between sheets above. */
function seatStops(line: Curve, above: Above): readonly number[] {
  const keyAt = (s: number): string => above.overAt(s)?.sheetId ?? "";
  const steps = Math.max(2, Math.ceil(line.lengthMm / LOOK_STEP_MM));
  const stops = new Set<number>([0, line.lengthMm, ...line.startsMm]);
  let keyB = keyAt(0);
  for (let i = 0; i < steps; i++) {
    let [a, b] = [(line.lengthMm * i) / steps, (line.lengthMm * (i + 1)) / steps];
    const keyA = keyB;
    keyB = keyAt(b);
    if (keyA === keyB) continue;
    while (b - a > 1e-6) {
      const middle = (a + b) / 2;
      if (keyAt(middle) === keyA) a = middle;
      else b = middle;
    }
    stops.add(a).add(b);
  }
  return [...stops].sort((a, b) => a - b);
}

/** {u: along, v: height} so dense that chords keep the limits of a flat pattern. */
function sampleAlong(stops: readonly number[], heightAt: (s: number) => number): readonly FlatPoint[] {
  const inside = (s: number) =>
    Math.min(Math.max(s, END_GRACE_MM * 1e-3), at(stops, -1) - END_GRACE_MM * 1e-3);
  const point = (s: number): FlatPoint => {
    const height = heightAt(s);
    return { u: s, v: Number.isNaN(height) ? heightAt(inside(s)) : height };
  };
  const same = (p: FlatPoint): FlatPoint => p;
  const points = stops
    .slice(1)
    .flatMap((to, i) => sampleChords(point, same, [at(stops, i), to], FENCE_CHORDS).slice(i === 0 ? 0 : 1));
  return dropStraight(points, same);
}

/** Counter-clockwise in {u, v}: lower edge rearward, rear end up, upper edge forward, front end down. */
function outlineEdges(lower: readonly FlatPoint[], upper: readonly FlatPoint[]): readonly RegionEdge[] {
  const edge = (
    edgeId: string,
    name: string,
    role: "free" | "joint",
    points: readonly FlatPoint[],
  ): RegionEdge => ({
    edgeId,
    name,
    role,
    points,
    turnsRad: points.map(() => 0),
  });
  const [lowerFront, lowerRear] = [at(lower, 0), at(lower, -1)];
  const [upperFront, upperRear] = [at(upper, 0), at(upper, -1)];
  const isOpen = (a: FlatPoint, b: FlatPoint) => Math.abs(a.v - b.v) > 1e-6;
  return [
    edge("lower", "lower edge", "free", lower),
    ...(isOpen(lowerRear, upperRear) ? [edge("rear", "rear end", "free", [lowerRear, upperRear])] : []),
    edge("upper", "upper edge", "joint", upper.toReversed()),
    ...(isOpen(upperFront, lowerFront) ? [edge("front", "front end", "free", [upperFront, lowerFront])] : []),
  ];
}
