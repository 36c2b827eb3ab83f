import type { Strip } from "../cutting/index.ts";
import { at, distanceFlat, type FlatPoint, type SpacePoint } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import { type FlatEdge, flatLengthMm, type Part } from "../patterns/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { bevelAlong } from "./bevelled-edges.ts";
import { type DrawnEdge, type EdgeWalker, edgeWalker, nearestPlace, placeAt } from "./drawn-edges.ts";

/** A mark on an edge of a strip: a place that meets the same mark of the neighbour, or where a bevel is told. */
export interface EdgeMark {
  readonly stripId: string;
  /** Which edge, counted through the strip's loops. */
  readonly edgeIndex: number;
  readonly edgeId: string;
  /** On the strip's outline (mid-thickness), and the unit direction into the foam there. */
  readonly at: FlatPoint;
  readonly inward: FlatPoint;
  /** On the flat from the start of the strip's edge, mm. */
  readonly fromCornerMm: number;
  /** Positive leaves the face longer that looks away from the reader. */
  readonly bevelRad: number;
  /** Of a joint's mark: the same on both strips. */
  readonly joint?: {
    readonly id: string;
    readonly label: string;
    /** Along the drawn edge from the joint's start, mm. */
    readonly alongMm: number;
  };
}

/** What edge marks are taken from. */
export interface MarkedTray {
  readonly sheets: readonly Sheet[];
  readonly parts: readonly Part[];
  readonly strips: readonly Strip[];
  readonly joints: readonly Joint[];
}

/** Marks along a joint lie so far apart (common practice), and none nearer to its ends than a thumb's breadth, mm. */
const JOINT_MARKS_MM = 100;
const CLEAR_OF_ENDS_MM = 15;
/** On other bevelled edges the bevel is told at so many mm, and at least so often. */
const BEVEL_MARKS_MM = 60;
const LEAST_EDGE_MM = 20;

/**
 * The marks on the edges of all strips: along every joint between sheets at equal lengths of the drawn edge, numbered
 * from its start on both sides, so that marks of neighbours meet; and along every other bevelled edge.
 */
export function edgeMarks(tray: MarkedTray): readonly EdgeMark[] {
  const walk = edgeWalker();
  const ofJoints = tray.joints.flatMap((joint) => jointMarks(joint, tray, walk));
  const ofOthers = tray.strips.flatMap((strip) => {
    const own = ofJoints.filter(({ stripId }) => stripId === strip.id);
    return bevelMarks(strip, new Set(own.map(({ edgeIndex }) => edgeIndex)));
  });
  return [...ofJoints, ...ofOthers];
}

function jointMarks(joint: Joint, tray: MarkedTray, walk: EdgeWalker): readonly EdgeMark[] {
  const sides = joint.partIds.flatMap((partId, side): Side[] => {
    const part = tray.parts.find(({ id }) => id === partId);
    const sheet = tray.sheets.find(({ id }) => id === part?.sheetId);
    if (part === undefined || sheet === undefined || sheet.kind === "fence") return [];
    const edgeId = at(joint.edgeIds, side);
    return [sideOf(walk(sheet, part, edgeId), part, edgeId, tray.strips)];
  });
  const [first, second] = sides;
  if (first === undefined || second === undefined) return [];
  return placesAlong(joint.lengthMm).flatMap((alongMm, i) => {
    const point = pointOnJoint(joint, first.edges, alongMm);
    if (point === undefined) return [];
    const label = `${SERIES[countOf(joint)] ?? ""}${i + 1}`;
    return [first, second].flatMap((side): EdgeMark[] => {
      const spot = spotOnStrip(side, point);
      return spot === undefined ? [] : [{ ...spot, joint: { id: joint.id, label, alongMm } }];
    });
  });
}

/** Further joints of the same two parts have a letter before their numbers. */
const SERIES = ["", "b", "c", "d", "e", "f"];
const countOf = ({ id }: Joint): number => Number(/#(\d+)$/.exec(id)?.[1] ?? 1) - 1;

/** Lengths along a joint at which it is marked: every 100 mm from its start, one in the middle of a short one. */
function placesAlong(lengthMm: number): readonly number[] {
  const count = Math.floor((lengthMm - CLEAR_OF_ENDS_MM) / JOINT_MARKS_MM);
  if (count >= 1) return Array.from({ length: count }, (_, i) => (i + 1) * JOINT_MARKS_MM);
  return lengthMm > 2 * CLEAR_OF_ENDS_MM ? [lengthMm / 2] : [];
}

/** One part at a joint: its drawn edge, and the strips that have a piece of it. */
interface Side {
  readonly edges: readonly DrawnEdge[];
  readonly pieces: readonly StripPiece[];
}

interface StripPiece {
  readonly strip: Strip;
  readonly edgeIndex: number;
  readonly edge: FlatEdge;
}

const sideOf = (edges: readonly DrawnEdge[], part: Part, edgeId: string, strips: readonly Strip[]): Side => ({
  edges,
  pieces: strips
    .filter(({ partId }) => partId === part.id)
    .flatMap((strip) => piecesOf(strip).filter(({ edge }) => edge.edgeId === edgeId && edge.role !== "seam")),
});

const piecesOf = (strip: Strip): readonly StripPiece[] =>
  strip.loops.flatMap(({ edges }) => edges).map((edge, edgeIndex) => ({ strip, edgeIndex, edge }));

/** The point at a length along a joint: on the first part's drawn edge between the two stations around it. */
function pointOnJoint(
  { stations }: Joint,
  edges: readonly DrawnEdge[],
  alongMm: number,
): SpacePoint | undefined {
  const next = stations.findIndex((station, i) => i > 0 && station.alongMm >= alongMm);
  const [from, to] = [stations[next - 1], stations[next]];
  if (from === undefined || to === undefined) return undefined;
  const share = (alongMm - from.alongMm) / (to.alongMm - from.alongMm || 1);
  const spans = edges.flatMap((edge) => {
    const [a, b] = [nearestPlace(edge, from.at), nearestPlace(edge, to.at)];
    return a === undefined || b === undefined ? [] : [{ edge, a, b, missMm: a.missMm + b.missMm }];
  });
  const [best] = spans.sort((p, q) => p.missMm - q.missMm);
  return best && placeAt(best.edge, best.a.alongMm + (best.b.alongMm - best.a.alongMm) * share).space;
}

/** Where a point of the drawn edge comes to lie on the edge of a strip, square across what is set back. */
function spotOnStrip({ edges, pieces }: Side, point: SpacePoint): EdgeMark | undefined {
  const places = edges.flatMap((edge) => nearestPlace(edge, point) ?? []);
  const [place] = places.sort((a, b) => a.missMm - b.missMm);
  if (place === undefined) return undefined;
  const feet = pieces.flatMap((piece) => {
    const foot = footOn(piece.edge, place.flat);
    return foot === undefined ? [] : [{ piece, ...foot }];
  });
  const [best] = feet.sort((a, b) => a.missMm - b.missMm);
  return best && markOn(best.piece, best);
}

interface Foot {
  readonly at: FlatPoint;
  readonly along: FlatPoint;
  readonly fromCornerMm: number;
  readonly missMm: number;
}

/** The nearest place of an edge, and the way it runs there. */
function footOn({ points }: FlatEdge, p: FlatPoint): Foot | undefined {
  let best: Foot | undefined;
  let passedMm = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [at(points, i - 1), at(points, i)];
    const lengthMm = distanceFlat(a, b);
    if (lengthMm === 0) continue;
    const along = { u: (b.u - a.u) / lengthMm, v: (b.v - a.v) / lengthMm };
    const stepMm = Math.min(lengthMm, Math.max(0, (p.u - a.u) * along.u + (p.v - a.v) * along.v));
    const foot = { u: a.u + along.u * stepMm, v: a.v + along.v * stepMm };
    const missMm = distanceFlat(foot, p);
    if (best === undefined || missMm < best.missMm)
      best = { at: foot, along, fromCornerMm: passedMm + stepMm, missMm };
    passedMm += lengthMm;
  }
  return best;
}

/** The foam lies on the left of an edge. */
function markOn({ strip, edgeIndex, edge }: StripPiece, foot: Omit<Foot, "missMm">): EdgeMark {
  const bevels = strip.edges[edgeIndex]?.bevels ?? [];
  return {
    stripId: strip.id,
    edgeIndex,
    edgeId: edge.edgeId,
    at: foot.at,
    inward: { u: -foot.along.v, v: foot.along.u },
    fromCornerMm: foot.fromCornerMm,
    bevelRad: bevelAlong(bevels, foot.fromCornerMm),
  };
}

/** Where the bevel of an edge without joint marks is told: evenly, and clear of its ends. */
function bevelMarks(strip: Strip, marked: ReadonlySet<number>): readonly EdgeMark[] {
  return piecesOf(strip).flatMap((piece) => {
    const { edge, edgeIndex } = piece;
    const lengthMm = flatLengthMm(edge.points);
    if (marked.has(edgeIndex) || lengthMm < LEAST_EDGE_MM) return [];
    if ((strip.edges[edgeIndex]?.bevels.length ?? 0) === 0) return [];
    const count = Math.max(1, Math.round(lengthMm / BEVEL_MARKS_MM));
    return Array.from({ length: count }, (_, i) =>
      markOn(piece, placeOnFlat(edge, ((i + 0.5) * lengthMm) / count)),
    );
  });
}

function placeOnFlat({ points }: FlatEdge, alongMm: number): Omit<Foot, "missMm"> {
  let passedMm = 0;
  let last: Omit<Foot, "missMm"> = { at: at(points, 0), along: { u: 1, v: 0 }, fromCornerMm: 0 };
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [at(points, i - 1), at(points, i)];
    const lengthMm = distanceFlat(a, b);
    if (lengthMm === 0) continue;
    const along = { u: (b.u - a.u) / lengthMm, v: (b.v - a.v) / lengthMm };
    const stepMm = Math.min(lengthMm, alongMm - passedMm);
    last = {
      at: { u: a.u + along.u * stepMm, v: a.v + along.v * stepMm },
      along,
      fromCornerMm: passedMm + stepMm,
    };
    passedMm += lengthMm;
    if (passedMm >= alongMm) break;
  }
  return last;
}
