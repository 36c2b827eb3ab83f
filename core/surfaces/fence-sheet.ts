import {
  type Curve,
  type CurvePiece,
  pointOnPiece,
  reversePiece,
  toCurve,
  walkCurve,
} from "../curves/index.ts";
import { at, CHORD_ERROR_MM, type FlatPoint, type Problem } from "../foundation/index.ts";
import { faceDepths } from "../laminate/index.ts";
import { coreOf, type Fence, type Project } from "../project/index.ts";
import type { ChordLimits } from "./chord-limits.ts";
import { lowerHeights } from "./fence-lower-edge.ts";
import { END_GRACE_MM, type Stretch, stretchesAlong } from "./fence-stretches.ts";
import { lookAbove } from "./look-above.ts";
import { dropStraight, sampleChords } from "./sample-chords.ts";
import type { ChartPiece, FenceSheet, RegionEdge, SectionSheet } from "./types.ts";

/** A fence's edges are long and low: a fifth of the chord error of any pattern, and lengths good to 4e-7. */
const FENCE_CHORDS: ChordLimits = { sagMm: CHORD_ERROR_MM / 5, turnRad: 0.003 };

/** A border between sheets is looked at from this far on either side. */
const BESIDE_BORDER_MM = 1e-6;

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
  const stretches = stretchesAlong(rearward.lengthMm, (s) => above.overAt(s)?.sheetId);
  const bare = stretches.find(({ sheetId }) => sheetId === undefined);
  if (bare) return { problems: [bareProblem(fence, bare)] };
  const lower = lowerHeights(project, fence, { line: rearward, walk, above }, lowerEdge);
  if ("problems" in lower) return lower;

  const stops = seatStops(rearward, stretches);
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

const bareProblem = (fence: Fence, { fromMm, toMm }: Stretch): Problem => ({
  kind: "fence-without-sheet",
  place: { itemId: fence.id },
  name: fence.name,
  fromMm,
  toMm,
});

/** Where the seat's or the line's form may break: ends, pieces of the line, and both sides of borders between sheets. */
function seatStops(line: Curve, stretches: readonly Stretch[]): readonly number[] {
  const borders = stretches
    .slice(1)
    .flatMap(({ fromMm }) => [fromMm - BESIDE_BORDER_MM, fromMm + BESIDE_BORDER_MM]);
  return [...new Set([0, ...line.startsMm, ...borders, line.lengthMm])].sort((a, b) => a - b);
}

/** {u: along, v: height} so dense that chords keep the limits of a flat pattern. */
function sampleAlong(stops: readonly number[], heightAt: (s: number) => number): readonly FlatPoint[] {
  const lengthMm = at(stops, -1);
  const point = (s: number): FlatPoint => {
    const height = heightAt(s);
    // An end that hangs out within its grace has the height of the place where the sheet begins.
    const inside = Math.min(Math.max(s, END_GRACE_MM), lengthMm - END_GRACE_MM);
    return { u: s, v: Number.isNaN(height) ? heightAt(inside) : height };
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
