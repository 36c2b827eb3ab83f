import {
  at,
  COINCIDENT_POINTS_MM,
  LARGEST_COORDINATE_MM,
  MOST_NODES,
  ROUNDING_RELATIVE,
} from "../foundation/index.ts";
import { type CornerArc, cornerArcs, isRadius } from "./corner-arcs.ts";
import { indexBefore, type PathSegment, segmentsOf } from "./path-segments.ts";
import type { Path, PathNode } from "./types.ts";

/** The numbers of a node that can be wrong; `axis0` and `axis1` are its coordinates. */
export type NodeField = "axis0" | "axis1" | "radiusMm" | "tangentInRad" | "tangentOutRad" | "knotSpacingMm";

/** What keeps a path from becoming a curve. Nodes are named by id; a stretch by its own. */
export type PathProblem =
  | { readonly kind: "too-few-nodes"; readonly count: number; readonly needed: number }
  | { readonly kind: "too-many-nodes"; readonly count: number; readonly most: number }
  | { readonly kind: "zero-length-segment"; readonly nodeIds: readonly [string, string] }
  | {
      readonly kind: "radius-does-not-fit";
      readonly nodeId: string;
      readonly radiusMm: number;
      readonly largestMm: number;
    }
  | { readonly kind: "radius-needs-lines"; readonly nodeId: string }
  | {
      readonly kind: "not-a-number";
      readonly nodeId: string;
      readonly field: NodeField;
      readonly value: number;
    }
  | {
      readonly kind: "number-out-of-range";
      readonly nodeId: string;
      readonly field: NodeField;
      readonly value: number;
      readonly least: number;
      readonly most: number;
    };

/**
 * Every problem of a path, in the order of its elements within each kind; none means that it compiles. Numbers
 * are looked at first, and a segment at a node with a wrong coordinate is not judged further.
 */
export function checkPath(path: Path): PathProblem[] {
  const count = path.elements.length;
  if (count > MOST_NODES) return [{ kind: "too-many-nodes", count, most: MOST_NODES }];
  const emptyStretches = path.elements
    .filter((element) => element.kind === "stretch" && element.pieces.length === 0)
    .map(({ id }): PathProblem => ({ kind: "zero-length-segment", nodeIds: [id, id] }));
  const numbers = path.elements.flatMap((element) =>
    element.kind === "node" ? numberProblems(element) : [],
  );
  const problems = [...countProblems(path), ...emptyStretches, ...numbers];
  if (emptyStretches.length > 0) return problems;
  const misplaced = new Set(numbers.flatMap((problem) => (isCoordinate(problem) ? [problem.nodeId] : [])));
  const isSound = (segment: PathSegment) =>
    !misplaced.has(segment.fromElement.id) && !misplaced.has(segment.toElement.id);
  const segments = segmentsOf(path).map((segment) => (segment && isSound(segment) ? segment : undefined));
  return [...problems, ...lengthProblems(segments), ...radiusProblems(path, segments)];
}

/** The fewest elements that enclose or reach anything: a curve or a followed stretch may close on one node less. */
function countProblems(path: Path): PathProblem[] {
  const count = path.elements.length;
  const bends = path.elements.some((element) => element.kind === "stretch" || element.next === "curve");
  const hasStretch = path.elements.some((element) => element.kind === "stretch");
  const neededWithoutStretch = path.closed && !bends ? 3 : 2;
  const needed = hasStretch ? 1 : neededWithoutStretch;
  return count < needed ? [{ kind: "too-few-nodes", count, needed }] : [];
}

const FULL_TURN_RAD = 2 * Math.PI;

type NumberProblem = Extract<PathProblem, { readonly field: NodeField }>;

const isCoordinate = (problem: NumberProblem): boolean =>
  problem.field === "axis0" || problem.field === "axis1";

function numberProblems(node: PathNode): NumberProblem[] {
  const far = LARGEST_COORDINATE_MM;
  const least = COINCIDENT_POINTS_MM;
  return [
    ...numberProblem(node.id, "axis0", node.at[0], [-far, far]),
    ...numberProblem(node.id, "axis1", node.at[1], [-far, far]),
    ...numberProblem(node.id, "radiusMm", node.radiusMm, [0, far]),
    ...numberProblem(node.id, "tangentInRad", node.tangentInRad, [-FULL_TURN_RAD, FULL_TURN_RAD]),
    ...numberProblem(node.id, "tangentOutRad", node.tangentOutRad, [-FULL_TURN_RAD, FULL_TURN_RAD]),
    ...numberProblem(node.id, "knotSpacingMm", node.knotSpacingMm, [least, far * 10]),
  ];
}

function numberProblem(
  nodeId: string,
  field: NodeField,
  value: number | undefined,
  [least, most]: readonly [number, number],
): NumberProblem[] {
  if (value === undefined) return [];
  if (!Number.isFinite(value)) return [{ kind: "not-a-number", nodeId, field, value }];
  if (value >= least && value <= most) return [];
  return [{ kind: "number-out-of-range", nodeId, field, value, least, most }];
}

function lengthProblems(segments: readonly (PathSegment | undefined)[]): PathProblem[] {
  return segments.flatMap((segment): PathProblem[] =>
    segment && segment.chordMm < COINCIDENT_POINTS_MM
      ? [{ kind: "zero-length-segment", nodeIds: [segment.fromElement.id, segment.toElement.id] }]
      : [],
  );
}

function radiusProblems(path: Path, segments: readonly (PathSegment | undefined)[]): PathProblem[] {
  const long = segments.map((segment) =>
    segment && segment.chordMm >= COINCIDENT_POINTS_MM ? segment : undefined,
  );
  const arcs = cornerArcs(path, long);
  return path.elements.flatMap((element, i): PathProblem[] => {
    if (element.kind !== "node" || !isRadius(element.radiusMm)) return [];
    if (!isBetweenLines(path, i)) return [{ kind: "radius-needs-lines", nodeId: element.id }];
    const largestMm = largestRadiusMm(path, i, long, arcs);
    if (largestMm === undefined || element.radiusMm <= largestMm * (1 + ROUNDING_RELATIVE)) return [];
    return [{ kind: "radius-does-not-fit", nodeId: element.id, radiusMm: element.radiusMm, largestMm }];
  });
}

function isBetweenLines(path: Path, index: number): boolean {
  const before = indexBefore(path, index);
  const leaves = path.closed || index + 1 < path.elements.length;
  if (before === undefined || !leaves) return false;
  return at(path.elements, before).next === "line" && at(path.elements, index).next === "line";
}

/** The largest radius at an element beside the radii of its neighbours; undefined where there is no arc to fit. */
function largestRadiusMm(
  path: Path,
  index: number,
  segments: readonly (PathSegment | undefined)[],
  arcs: readonly (CornerArc | undefined)[],
): number | undefined {
  const own = arcs[index];
  const before = indexBefore(path, index);
  const arriving = before === undefined ? undefined : segments[before];
  const leaving = segments[index];
  if (!own || !arriving || !leaving || before === undefined) return undefined;
  const after = (index + 1) % path.elements.length;
  const room = Math.min(
    roomMm(arriving.chordMm, own, arcs[before]),
    roomMm(leaving.chordMm, own, arcs[after]),
  );
  return room / own.tangentPerRadius;
}

/** What a neighbour's arc leaves of a line; where that is nothing, a share in proportion to both. */
function roomMm(chordMm: number, own: CornerArc, neighbour: CornerArc | undefined): number {
  if (!neighbour) return chordMm;
  const leftMm = chordMm - neighbour.tangentMm;
  return leftMm > 0 ? leftMm : (chordMm * own.tangentMm) / (own.tangentMm + neighbour.tangentMm);
}
