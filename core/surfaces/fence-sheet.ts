import {
  type Curve,
  type CurvePiece,
  derivativeOnPiece,
  pointOnPiece,
  reversePiece,
  toCurve,
  walkCurve,
} from "../curves/index.ts";
import { at, CHORD_ERROR_MM, cross2, dot2, type FlatPoint, type Problem } from "../foundation/index.ts";
import { faceDepths, type PanelMake, panelMake } from "../laminate/index.ts";
import { coreOf, type Fence, finishOfEdge, laminateOf, type Project } from "../project/index.ts";
import type { ChordLimits } from "./chord-limits.ts";
import { lowerHeights } from "./fence-lower-edge.ts";
import { END_GRACE_MM, type Stretch, stretchesAlong } from "./fence-stretches.ts";
import { lookAbove } from "./look-above.ts";
import { type PanelSource, panelBar } from "./panel-bar.ts";
import { dropStraight, sampleChords } from "./sample-chords.ts";
import type { ChartPiece, FenceSheet, LyingSheet, RegionEdge } from "./types.ts";

/** What of a project a fence follows from, besides the fence, its lines and the sheets above. */
export const FENCE_GROUND = ["symmetry", "drawnFace", "skins", "core", "laminate"] as const;
export type FenceGround = Pick<Project, (typeof FENCE_GROUND)[number]> & PanelSource;

/** A fence's edges are long and low: a fifth of the chord error of any pattern, and lengths good to 4e-7. */
const FENCE_CHORDS: ChordLimits = { sagMm: CHORD_ERROR_MM / 5, turnRad: 0.003 };

/** A turn of a fence's line beyond this breaks the foam: over 20 mm it opens a third of a millimetre. */
const KINK_RAD = Math.PI / 180;

/** The heights of a seat are told at least this often along it. */
const SEAT_STEP_MM = 100;

/** A border between sheets is looked at from this far on either side. */
const BESIDE_BORDER_MM = 1e-6;

/**
 * The upright sheet of a fence: its line is the mid-plane, u runs along it rearward, v is the height above ground.
 * The upper edge lies on the lowest foam face above (seat "core") or on the finished lower skin (seat "skin"), with
 * its heights at both foam faces; the lower edge is the finished one less its wrap of skin. Stretches without a
 * sheet, and places where the lower edge is above the upper, are problems, and the fence is left out. Cut from a panel it is
 * as thick as that, and nothing wraps its lower edge. Problem: panel-not-possible, then it is skinned in place.
 */
export function fenceSheet(
  project: FenceGround,
  fence: Fence,
  line: Curve,
  lowerEdge: Curve | undefined,
  sheets: readonly LyingSheet[],
): MadeFence {
  const { foamId, thicknessMm } = coreOf(project, fence);
  const wrapMm = project.drawnFace === "air" && isWrapped(project, fence) ? project.skins.lowerMm : 0;
  const drawn = { fence, line, lowerEdge, sheets };
  const inPlace = () => madeFence(project, drawn, { foamId, thicknessMm, wrapMm });
  if (!fence.panel) return inPlace();
  const panel = panelMake(project, fence);
  const made = madeFence(project, drawn, { foamId, thicknessMm: panel.thicknessMm, wrapMm: 0, panel });
  const bar = made.sheet && panelBar(project, fence, made.sheet);
  if (!bar) return made;
  const { sheet, problems } = inPlace();
  const barred: Problem = { kind: "panel-not-possible", place: { itemId: fence.id }, name: fence.name, bar };
  return { ...(sheet && { sheet }), problems: [...problems, barred] };
}

/** Whether skin closes round the lower edge; else the foam, or what is let in there, ends at the drawn edge. */
const isWrapped = (project: FenceGround, { id }: Fence): boolean =>
  finishOfEdge(laminateOf(project), id, "lower") === "wrapped";

interface MadeFence {
  readonly sheet?: FenceSheet;
  readonly problems: readonly Problem[];
}

/** What a fence is drawn by. */
interface DrawnFence {
  readonly fence: Fence;
  readonly line: Curve;
  readonly lowerEdge: Curve | undefined;
  readonly sheets: readonly LyingSheet[];
}

/** What it is cut from. */
interface FenceMake {
  readonly foamId: string;
  readonly thicknessMm: number;
  /** The skin round its lower edge. */
  readonly wrapMm: number;
  readonly panel?: PanelMake;
}

function madeFence(
  project: FenceGround,
  { fence, line, lowerEdge, sheets }: DrawnFence,
  { foamId, thicknessMm, wrapMm, panel }: FenceMake,
): MadeFence {
  const kink = sharpestKink(fence, line);
  if (kink) return { problems: [kink] };
  const rearward = runsRearward(line) ? line : toCurve(line.pieces.toReversed().map(reversePiece), false);
  const walk = walkCurve(rearward);
  const above = lookAbove(fence, thicknessMm, walk, sheets);
  const stretches = stretchesAlong(rearward.lengthMm, (s) => above.overAt(s)?.sheetId);
  const bare = stretches.find(({ sheetId }) => sheetId === undefined);
  if (bare) return { problems: [bareProblem(fence, bare)] };
  const lower = lowerHeights(fence, { line: rearward, walk, above, wrapMm }, lowerEdge);
  if ("problems" in lower) return lower;

  const stops = seatStops(rearward, stretches);
  const seatZ = (s: number) => above.overAt(s)?.z;
  const upper = sampleAlong(stops, seatZ);
  const under = sampleAlong(stops, lower.heightAt);
  const gaps = [...upper.gapsMm, ...under.gapsMm];
  if (gaps.length > 0) {
    return { problems: [bareProblem(fence, { fromMm: Math.min(...gaps), toMm: Math.max(...gaps) })] };
  }
  const noDepth = [...upper.points, ...under.points].find(
    ({ u }) =>
      (seatZ(u) ?? Number.POSITIVE_INFINITY) < (lower.heightAt(u) ?? Number.NEGATIVE_INFINITY) - 1e-9,
  );
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
      foamId,
      thicknessMm,
      depths: faceDepths("neutral", project.skins, thicknessMm),
      hands: project.symmetry === "none" || isOnCentre ? ["whole"] : ["right", "left"],
      chart: { kind: "upright", ...chartOf(rearward) },
      loops: [{ edges: outlineEdges(under.points, upper.points) }],
      seat: seatPlaces(upper.points, stretches).flatMap(
        (s) => above.seatAt(s) ?? above.seatAt(withinGrace(s, rearward.lengthMm)) ?? [],
      ),
      seatOn: fence.seat,
      standsFirst: fence.standsFirst,
      ...(panel && { panel }),
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

const bareProblem = (fence: Fence, { fromMm, toMm }: Pick<Stretch, "fromMm" | "toMm">): Problem => ({
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

/** The same place, but no nearer to an end than the grace that a fence may hang out by. */
const withinGrace = (s: number, lengthMm: number): number =>
  Math.min(Math.max(s, END_GRACE_MM), lengthMm - END_GRACE_MM);

/** An edge of a fence, {u: along, v: height}, and the places where it found nothing to stand under. */
interface SampledEdge {
  readonly points: readonly FlatPoint[];
  readonly gapsMm: readonly number[];
}

/** An edge so dense that chords keep the limits of a flat pattern. */
function sampleAlong(stops: readonly number[], heightAt: (s: number) => number | undefined): SampledEdge {
  const lengthMm = at(stops, -1);
  const gapsMm: number[] = [];
  const point = (s: number): FlatPoint => {
    // An end that hangs out within its grace has the height of the place where the sheet begins.
    const height = heightAt(s) ?? heightAt(withinGrace(s, lengthMm));
    if (height === undefined || Number.isNaN(height)) gapsMm.push(s);
    return { u: s, v: height ?? 0 };
  };
  const same = (p: FlatPoint): FlatPoint => p;
  const points = stops
    .slice(1)
    .flatMap((to, i) => sampleChords(point, same, [at(stops, i), to], FENCE_CHORDS).slice(i === 0 ? 0 : 1));
  return { points: dropStraight(points, same), gapsMm };
}

/** Where the seat is told: both ends of every stretch, every point of the upper edge, and every hundred millimetres. */
function seatPlaces(upper: readonly FlatPoint[], stretches: readonly Stretch[]): readonly number[] {
  const lengthMm = at(upper, -1).u;
  const ends = stretches.flatMap(({ fromMm, toMm }) => [
    fromMm === 0 ? 0 : fromMm + BESIDE_BORDER_MM,
    toMm === lengthMm ? lengthMm : toMm - BESIDE_BORDER_MM,
  ]);
  const even = Array.from({ length: Math.floor(lengthMm / SEAT_STEP_MM) }, (_, i) => (i + 1) * SEAT_STEP_MM);
  return [...new Set([...upper.map(({ u }) => u), ...ends, ...even])].sort((a, b) => a - b);
}

/** A turn of the line at a node that flat foam cannot make, the sharpest first. */
function sharpestKink(fence: Fence, line: Curve): Problem | undefined {
  const kinks = line.pieces.slice(1).map((piece, i) => {
    const [a, b] = [derivativeOnPiece(at(line.pieces, i), 1), derivativeOnPiece(piece, 0)];
    return {
      nodeId: piece.startNodeId ?? piece.edgeId,
      turnRad: Math.abs(Math.atan2(cross2(a, b), dot2(a, b))),
    };
  });
  const [sharpest] = kinks.filter(({ turnRad }) => turnRad > KINK_RAD).sort((a, b) => b.turnRad - a.turnRad);
  return (
    sharpest && {
      kind: "fence-turns-sharply",
      place: { itemId: fence.id, nodeId: sharpest.nodeId },
      name: fence.name,
      turnRad: sharpest.turnRad,
    }
  );
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
    flat: points,
    shares: points.map((_, i) => i / (points.length - 1)),
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
