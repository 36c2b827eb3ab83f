import { orient2d } from "robust-predicates";
import type { LaidSheet, Layout, PackingLoop, PackingProblem } from "./types.ts";

/** What is wrong with a layout. */
export type LayoutFault =
  | { readonly kind: "overlap"; readonly pieceIds: readonly [string, string] }
  | { readonly kind: "too-near"; readonly pieceIds: readonly [string, string]; readonly gapMm: number }
  | { readonly kind: "off-sheet"; readonly pieceId: string }
  | { readonly kind: "angle-not-allowed"; readonly pieceId: string }
  | { readonly kind: "missing" | "twice" | "unknown"; readonly pieceId: string };

/** Corners are judged on a grid of this many units in a millimetre. */
const UNITS = 1000;
/** Gaps and angles are read to this, mm and rad: a tenth of what a blade can follow. */
const [GAP_TOLERANCE_MM, ANGLE_TOLERANCE_RAD] = [0.005, 1e-9];

/**
 * The verdict over a layout, by code of its own that shares nothing with the search: every piece once, at an angle
 * that it may have, on its sheet with the margin kept, no two bodies over each other and the clearance between them.
 * Pieces are turned, put on a grid of 1 µm and then judged by exact predicates (robust-predicates, after Shewchuk
 * 1997). Bodies may touch. Empty when nothing is wrong.
 */
export function verifyLayout(problem: PackingProblem, layout: Layout): readonly LayoutFault[] {
  const faults: LayoutFault[] = [...countFaults(problem, layout)];
  const bodies = layout.placements.flatMap((placement): readonly Body[] => {
    const piece = problem.pieces.find(({ id }) => id === placement.pieceId);
    if (piece === undefined) return [];
    const { angleRad } = placement;
    const angles = piece.lockedAt === undefined ? piece.anglesRad : [piece.lockedAt.angleRad];
    if (!angles.some((angle) => isSameAngle(angle, angleRad))) {
      faults.push({ kind: "angle-not-allowed", pieceId: piece.id });
    }
    const rings = [sensed(piece.outline, 1), ...piece.holes.map((hole) => sensed(hole, -1))];
    const placed = rings.map((ring) => placeRing(ring, placement));
    return [{ id: piece.id, sheet: placement.sheet, rings: placed, box: boxOf(placed[0]) }];
  });
  for (const body of bodies) {
    const sheet = layout.sheets[body.sheet];
    if (sheet === undefined || !isOnSheet(body, sheet, problem.marginMm)) {
      faults.push({ kind: "off-sheet", pieceId: body.id });
    }
  }
  for (const [index, first] of bodies.entries()) {
    for (const second of bodies.slice(index + 1)) {
      if (first.sheet === second.sheet) faults.push(...pairFaults(first, second, problem.clearanceMm));
    }
  }
  return faults;
}

type Corner = readonly [x: number, y: number];
type Box = readonly [minX: number, minY: number, maxX: number, maxY: number];

/** An edge with its box. */
interface Edge {
  readonly a: Corner;
  readonly b: Corner;
  readonly box: Box;
}

interface Ring {
  readonly edges: readonly Edge[];
}

interface Body {
  readonly id: string;
  readonly sheet: number;
  readonly rings: readonly Ring[];
  readonly box: Box;
}

function countFaults({ pieces }: PackingProblem, { placements, unplaced }: Layout): readonly LayoutFault[] {
  const times = new Map(pieces.map(({ id }) => [id, 0]));
  const faults: LayoutFault[] = [];
  for (const { pieceId } of [...placements, ...unplaced]) {
    const before = times.get(pieceId);
    if (before === undefined) faults.push({ kind: "unknown", pieceId });
    else times.set(pieceId, before + 1);
  }
  for (const [pieceId, count] of times) {
    if (count !== 1) faults.push({ kind: count === 0 ? "missing" : "twice", pieceId });
  }
  return faults;
}

function isSameAngle(a: number, b: number): boolean {
  const turns = (a - b) / (2 * Math.PI);
  return Math.abs(turns - Math.round(turns)) < ANGLE_TOLERANCE_RAD;
}

/** Body on the left of every edge: outlines counter-clockwise, holes clockwise. */
function sensed(ring: PackingLoop, sense: 1 | -1): PackingLoop {
  const twice = ring.reduce((sum, a, index) => {
    const b = ring[(index + 1) % ring.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  return twice * sense >= 0 ? ring : [...ring].reverse();
}

function placeRing(
  ring: PackingLoop,
  to: { readonly angleRad: number; readonly x: number; readonly y: number },
): Ring {
  const quarters = Math.round(to.angleRad / (Math.PI / 2));
  const isQuarter = Math.abs(to.angleRad - (quarters * Math.PI) / 2) < ANGLE_TOLERANCE_RAD;
  const exact = (value: number) => (isQuarter ? Math.round(value) : value);
  const [cos, sin] = [exact(Math.cos(to.angleRad)), exact(Math.sin(to.angleRad))];
  const [moveX, moveY] = [Math.round(to.x * UNITS), Math.round(to.y * UNITS)];
  const corners = ring.map(
    ({ x, y }): Corner => [
      Math.round((x * cos - y * sin) * UNITS) + moveX,
      Math.round((x * sin + y * cos) * UNITS) + moveY,
    ],
  );
  return {
    edges: corners.map((a, index): Edge => {
      const b = corners[(index + 1) % corners.length] ?? a;
      const box = [
        Math.min(a[0], b[0]),
        Math.min(a[1], b[1]),
        Math.max(a[0], b[0]),
        Math.max(a[1], b[1]),
      ] as const;
      return { a, b, box };
    }),
  };
}

function boxOf(ring: Ring | undefined): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { box } of ring?.edges ?? []) {
    [minX, minY] = [Math.min(minX, box[0]), Math.min(minY, box[1])];
    [maxX, maxY] = [Math.max(maxX, box[2]), Math.max(maxY, box[3])];
  }
  return [minX, minY, maxX, maxY];
}

function isOnSheet({ box: [minX, minY, maxX, maxY] }: Body, sheet: LaidSheet, marginMm: number): boolean {
  const least = Math.max(0, Math.round((marginMm - GAP_TOLERANCE_MM) * UNITS));
  const length = wholeUnits(sheet.lengthMm);
  const width = wholeUnits(sheet.widthMm);
  return minX >= least && minY >= least && maxX <= length - least && maxY <= width - least;
}

/** A hair under a whole unit is rounding of the figure in mm. */
const wholeUnits = (sizeMm: number): number => Math.floor(sizeMm * UNITS + 1e-6);

function pairFaults(first: Body, second: Body, clearanceMm: number): readonly LayoutFault[] {
  const reach = clearanceMm * UNITS;
  if (!boxesMeet(first.box, second.box, reach)) return [];
  const pieceIds = [first.id, second.id] as const;
  if (bodiesOverlap(first, second)) return [{ kind: "overlap", pieceIds }];
  if (clearanceMm === 0) return [];
  const gapMm = gapBetween(first, second, reach) / UNITS;
  return gapMm < clearanceMm - GAP_TOLERANCE_MM ? [{ kind: "too-near", pieceIds, gapMm }] : [];
}

const boxesMeet = (a: Box, b: Box, reach: number): boolean =>
  a[0] <= b[2] + reach && b[0] <= a[2] + reach && a[1] <= b[3] + reach && b[1] <= a[3] + reach;

/**
 * Whether two bodies share area. They do where edges cross properly, where a stretch of one boundary runs inside the
 * other body, or where two boundaries run along each other in the same sense, both bodies on the left.
 */
function bodiesOverlap(first: Body, second: Body): boolean {
  const one = edgesNear(first, second.box, 0);
  const two = edgesNear(second, first.box, 0);
  for (const a of one)
    for (const b of two) if (boxesMeet(a.box, b.box, 0) && crossProperly(a, b)) return true;
  return runsInside(first, two, second) || runsInside(second, one, first);
}

const edgesNear = ({ rings }: Body, box: Box, reach: number): readonly Edge[] =>
  rings.flatMap((ring) => ring.edges.filter((edge) => boxesMeet(edge.box, box, reach)));

const side = ({ a, b }: Edge, p: Corner): number => Math.sign(orient2d(a[0], a[1], b[0], b[1], p[0], p[1]));

const crossProperly = (one: Edge, two: Edge): boolean =>
  side(one, two.a) * side(one, two.b) < 0 && side(two, one.a) * side(two, one.b) < 0;

/**
 * Whether a stretch of the first boundary, between the points where the other touches it, lies inside the other. Edges
 * that come near no edge of the other lie on the same side as the edge before them: of a run of such one is looked at.
 */
function runsInside(first: Body, others: readonly Edge[], second: Body): boolean {
  return first.rings.some(({ edges }) => {
    let isKnown = false;
    return edges.some((edge) => {
      const near = boxesMeet(edge.box, second.box, 0)
        ? others.filter((other) => boxesMeet(edge.box, other.box, 0))
        : [];
      if (near.length === 0 && isKnown) return false;
      isKnown = near.length === 0;
      return boxesMeet(edge.box, second.box, 0) && edgeRunsInside(edge, near, second);
    });
  });
}

function edgeRunsInside(edge: Edge, near: readonly Edge[], second: Body): boolean {
  const { a, b } = edge;
  const touches = near.flatMap((other) => [other.a, other.b].filter((corner) => isOn(edge, corner)));
  const along = (p: Corner) => (p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1]);
  const stops = [a, b, ...touches].sort((p, q) => along(p) - along(q));
  return stops.slice(1).some((to, index) => {
    const from = stops[index] ?? to;
    if (from[0] === to[0] && from[1] === to[1]) return false;
    return isInBody([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], edge, second);
  });
}

const isOn = ({ a, b, box }: Edge, p: Corner): boolean =>
  box[0] <= p[0] && p[0] <= box[2] && box[1] <= p[1] && p[1] <= box[3] && side({ a, b, box }, p) === 0;

/** Whether a point of an edge lies inside a body; on its boundary, whether both bodies lie on the same side there. */
function isInBody(p: Corner, edge: Edge, { rings }: Body): boolean {
  let isInside = false;
  for (const { edges } of rings) {
    for (const other of edges) {
      const { a, b } = other;
      if (isOn(other, p)) {
        return (b[0] - a[0]) * (edge.b[0] - edge.a[0]) + (b[1] - a[1]) * (edge.b[1] - edge.a[1]) > 0;
      }
      if (a[1] > p[1] === b[1] > p[1]) continue;
      const isLeft = orient2d(a[0], a[1], b[0], b[1], p[0], p[1]) < 0;
      if (isLeft === b[1] > a[1]) isInside = !isInside;
    }
  }
  return isInside;
}

/** The least distance between two boundaries that do not cross, units; infinite where it is more than the reach. */
function gapBetween(first: Body, second: Body, reach: number): number {
  let least = Number.POSITIVE_INFINITY;
  const two = edgesNear(second, first.box, reach);
  for (const one of edgesNear(first, second.box, reach)) {
    for (const other of two) {
      if (!boxesMeet(one.box, other.box, Math.min(reach, least))) continue;
      least = Math.min(
        least,
        toSegment(one.a, other),
        toSegment(one.b, other),
        toSegment(other.a, one),
        toSegment(other.b, one),
      );
    }
  }
  return least;
}

function toSegment(p: Corner, { a, b }: Edge): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square)) : 0;
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}
