import {
  type Curve,
  type CurvePiece,
  endOfPiece,
  flattenPiece,
  pieceLengthMm,
  pointOnPiece,
  startOfPiece,
} from "../curves/index.ts";
import {
  at,
  CHORD_ERROR_MM,
  ON_CENTRE_LINE_MM,
  OUTLINE_SHORTFALL,
  type PlanPoint,
} from "../foundation/index.ts";
import { edgeName } from "./edge-name.ts";
import type { BaseEdge } from "./types.ts";

/** The flat base of a plate: its loops, the outline first, and whether it is joined to its image. */
export interface BaseLoops {
  readonly loops: readonly (readonly BaseEdge[])[];
  readonly isJoined: boolean;
}

/**
 * The outline of a plate's base as edges, counter-clockwise; curves as chords within CHORD_ERROR_MM. With mirroring
 * on, what lies on the centre line falls away and the rest closes with its image: the run round the outside is the
 * outline, others are holes (clockwise). A straight edge that runs square onto the centre line is one with its image,
 * and a straight run with nodes in it is one edge where only one of its stretches bears wings: a node that is put into
 * an edge changes no wing.
 */
export function baseLoops(
  outline: Curve,
  drawn: { readonly typedNames: Readonly<Record<string, string>>; readonly wingEdgeIds: ReadonlySet<string> },
  isMirrored: boolean,
): BaseLoops {
  const loop = straightRuns(edgesOf(outline, drawn.typedNames), drawn.wingEdgeIds);
  if (!isMirrored || !loop.some(liesOnCentreLine)) return { loops: [loop], isJoined: false };
  return {
    loops: runsOffCentre(loop).map((run) => joinOverCentre([...run, ...imageOf(run)])),
    isJoined: true,
  };
}

/** A curve may turn by this over one chord. */
const MOST_TURN_RAD = 0.1;

/** Chords of turn a are shorter than their arc by a² / 24: the outline by no more than OUTLINE_SHORTFALL of itself. */
const turnRadOf = (piece: CurvePiece, outline: Curve): number =>
  Math.min(MOST_TURN_RAD, Math.sqrt((24 * OUTLINE_SHORTFALL * outline.lengthMm) / pieceLengthMm(piece)));

/** A node this near to the line between its neighbours leaves the edge one straight line: less than paper shows. */
const STRAIGHT_MM = 1e-4;

/** Straight pieces of one edge that follow on one another are one; so are its curves. */
function edgesOf(outline: Curve, typedNames: Readonly<Record<string, string>>): readonly BaseEdge[] {
  const edges: BaseEdge[] = [];
  for (const piece of outline.pieces) {
    const edge = edgeOf(piece, turnRadOf(piece, outline), typedNames[piece.edgeId]);
    const before = edges.at(-1);
    const joined = before && joinEdges(before, edge);
    if (joined) edges[edges.length - 1] = joined;
    else edges.push(edge);
  }
  return edges;
}

/** Edges on one straight line, one behind the other, as one where a single one of them bears wings; it lends the name. */
function straightRuns(edges: readonly BaseEdge[], wingEdgeIds: ReadonlySet<string>): readonly BaseEdge[] {
  const first = edges.findIndex((edge, i) => !goesOn(at(edges, i - 1), edge));
  const turned = first <= 0 ? edges : [...edges.slice(first), ...edges.slice(0, first)];
  const runs: BaseEdge[][] = [];
  for (const edge of turned) {
    const run = runs.at(-1);
    if (run && goesOn(at(run, -1), edge)) run.push(edge);
    else runs.push([edge]);
  }
  return runs.flatMap((run): readonly BaseEdge[] => {
    const [winged, ...others] = run.filter(({ edgeId }) => wingEdgeIds.has(edgeId));
    if (!winged || others.length > 0) return run;
    return [{ ...winged, points: [at(at(run, 0).points, 0), at(at(run, -1).points, -1)] }];
  });
}

const goesOn = (before: BaseEdge, after: BaseEdge): boolean =>
  before.isStraight &&
  after.isStraight &&
  !liesOnCentreLine(before) &&
  isOneLine([at(before.points, 0), at(after.points, 0), at(after.points, -1)]);

function edgeOf(piece: CurvePiece, turnRad: number, typedName: string | undefined): BaseEdge {
  const points = flattenPiece(piece, { chordErrorMm: CHORD_ERROR_MM, turnRad }).map((t): PlanPoint => {
    const [x, y] = pointOnPiece(piece, t);
    return { x, y };
  });
  const name = edgeName(typedName, startOfPiece(piece), endOfPiece(piece));
  return { edgeId: piece.edgeId, name, isStraight: piece.kind === "line", points, half: "drawn" };
}

function joinEdges(before: BaseEdge, after: BaseEdge): BaseEdge | undefined {
  if (before.edgeId !== after.edgeId || before.isStraight !== after.isStraight) return undefined;
  if (!before.isStraight) return { ...before, points: [...before.points, ...after.points.slice(1)] };
  const ends = [at(before.points, 0), at(before.points, -1), at(after.points, -1)] as const;
  return isOneLine(ends) ? { ...before, points: [ends[0], ends[2]] } : undefined;
}

/** Whether the middle point lies on the way from the first to the last. */
function isOneLine([a, b, c]: readonly [PlanPoint, PlanPoint, PlanPoint]): boolean {
  const [ux, uy, wx, wy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  const heightMm = Math.abs(ux * wy - uy * wx) / Math.hypot(c.x - a.x, c.y - a.y);
  return ux * wx + uy * wy > 0 && heightMm < STRAIGHT_MM;
}

const liesOnCentreLine = (edge: BaseEdge): boolean =>
  edge.isStraight && edge.points.every(({ y }) => Math.abs(y) <= ON_CENTRE_LINE_MM);

/** What a loop leaves between its stretches on the centre line, in its own direction. */
function runsOffCentre(loop: readonly BaseEdge[]): readonly (readonly BaseEdge[])[] {
  const first = loop.findIndex(liesOnCentreLine);
  const runs: BaseEdge[][] = [];
  let run: BaseEdge[] = [];
  for (const edge of [...loop.slice(first), ...loop.slice(0, first)]) {
    if (!liesOnCentreLine(edge)) run.push(edge);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length > 0) runs.push(run);
  return runs.map(ontoCentreLine);
}

/** The ends of a run moved onto the centre line itself, so that it meets its image to the last digit. */
function ontoCentreLine(run: readonly BaseEdge[]): readonly BaseEdge[] {
  return run.map((edge, i) => ({
    ...edge,
    points: edge.points.map((point, k) => {
      const isEnd = (i === 0 && k === 0) || (i === run.length - 1 && k === edge.points.length - 1);
      return isEnd ? { x: point.x, y: 0 } : point;
    }),
  }));
}

const imageOf = (run: readonly BaseEdge[]): readonly BaseEdge[] =>
  run.toReversed().map((edge) => ({
    ...edge,
    edgeId: `${edge.edgeId}.left`,
    half: "image",
    points: edge.points.toReversed().map(({ x, y }) => ({ x, y: y === 0 ? 0 : -y })),
  }));

/** A run and its image meet twice; where both are straight there and on one line they become one edge. */
function joinOverCentre(loop: readonly BaseEdge[]): readonly BaseEdge[] {
  const middle = loop.length / 2;
  const inMiddle = acrossCentre(at(loop, middle - 1), at(loop, middle));
  const joined = inMiddle ? [...loop.slice(0, middle - 1), inMiddle, ...loop.slice(middle + 1)] : loop;
  const atEnds = acrossCentre(at(joined, -1), at(joined, 0));
  return nameHalves(atEnds ? [atEnds, ...joined.slice(1, -1)] : joined);
}

function acrossCentre(before: BaseEdge, after: BaseEdge): BaseEdge | undefined {
  if (!before.isStraight || !after.isStraight || before.half === after.half) return undefined;
  const [from, over, to] = [at(before.points, 0), at(after.points, 0), at(after.points, -1)];
  if (!isOneLine([from, over, to])) return undefined;
  const drawn = before.half === "drawn" ? before : after;
  return { ...drawn, half: "both", points: [from, to] };
}

const nameHalves = (edges: readonly BaseEdge[]): readonly BaseEdge[] =>
  edges.map((edge) => {
    if (edge.half === "both") return edge;
    return { ...edge, name: `${edge.name}, ${edge.half === "drawn" ? "right" : "left"}` };
  });
