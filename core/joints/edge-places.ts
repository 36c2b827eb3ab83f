import { derivativeOnPiece, pointOnPiece } from "../curves/index.ts";
import { crossSpace, dotSpace, lengthSpace, type PlanPoint, type SpacePoint } from "../foundation/index.ts";
import {
  normalAtPlace,
  placeOfXi,
  type RegionEdge,
  type SectionSheet,
  type Sheet,
  spacePointAt,
  xiOfPlan,
} from "../surfaces/index.ts";

/** How far beside a shared edge the neighbour is looked for, so that its own border does not hide it. */
const NUDGE_MM = 0.02;

/** Every region edge of a sheet. */
export const edgesOf = (sheet: Sheet): readonly RegionEdge[] => sheet.loops.flatMap(({ edges }) => edges);

/** The region edges of a sheet that belong to one drawn edge. */
export const edgesWithId = (sheet: Sheet, edgeId: string): readonly RegionEdge[] =>
  edgesOf(sheet).filter((edge) => edge.edgeId === edgeId);

/** Height and inward normal of a drawn surface at one place. */
export interface SurfacePlace {
  readonly z: number;
  readonly normal: SpacePoint;
}

/** A traced place on an edge: the plan point, the direction of travel, and the sheet's own surface there. */
export interface EdgePlace extends SurfacePlace {
  readonly p: PlanPoint;
  readonly dx: number;
  readonly dy: number;
}

/** The place at a share (0 to 1) of a traced edge, as the loop is walked; undefined on a ruling. */
export function placeOnEdge(sheet: SectionSheet, edge: RegionEdge, share: number): EdgePlace | undefined {
  const { trace } = edge;
  if (!trace) return undefined;
  const t = trace.from + (trace.to - trace.from) * share;
  const [x, y] = pointOnPiece(trace.piece, t);
  const [vx, vy] = derivativeOnPiece(trace.piece, t);
  const sign = trace.to > trace.from ? 1 : -1;
  const size = Math.hypot(vx, vy) * sign;
  return { p: { x, y }, dx: vx / size, dy: vy / size, ...surfaceOver(sheet, { x, y }) };
}

/** A sheet's drawn surface over a plan point, whether its outline holds it or not. */
export function surfaceOver({ chart }: SectionSheet, p: PlanPoint): SurfacePlace {
  const place = placeOfXi(chart, xiOfPlan(chart, p));
  return { z: spacePointAt(chart, place, p.y, 0).z, normal: normalAtPlace(chart, place) };
}

/** A point a hair outside the edge: to the right of its direction of travel. */
export const outside = ({ p, dx, dy }: EdgePlace): PlanPoint => ({
  x: p.x + dy * NUDGE_MM,
  y: p.y - dx * NUDGE_MM,
});

/**
 * The fold at an edge, rad: the turn from this sheet's outward direction to the neighbour's inward one, about the
 * edge; positive when the neighbour rises toward this sheet's inward normal (the core lies inside the fold).
 */
export function foldBetween({ dx, dy, normal }: EdgePlace, other: SpacePoint): number {
  const along = { x: dx, y: dy, z: -(normal.x * dx + normal.y * dy) / normal.z };
  const edge = {
    x: along.x / lengthSpace(along),
    y: along.y / lengthSpace(along),
    z: along.z / lengthSpace(along),
  };
  return Math.atan2(dotSpace(crossSpace(edge, other), normal), dotSpace(normal, other));
}
