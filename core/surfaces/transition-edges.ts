import {
  type Curve,
  type CurvePiece,
  crossingParameters,
  derivativeOnPiece,
  endOfPiece,
  pointOnPiece,
  pointOnSpaceCubic,
  type SpaceCubic,
  startOfPiece,
  velocityOnSpaceCubic,
} from "../curves/index.ts";
import { at, type SpacePoint } from "../foundation/index.ts";
import type { Project, ResolvedEdge, Section } from "../project/index.ts";
import { type RuledSurface, rulingAt, type SpacePiece } from "../rulings/index.ts";
import { cylinderChart, heightAtPlace, pieceIndexOfXi, placeOfXi, xiOfPlan } from "./cylinder-chart.ts";
import type { CylinderChart } from "./types.ts";

/** What of a project a transition follows from, besides the items that its edges lie on. */
export const TRANSITION_GROUND = ["symmetry", "drawnFace", "skins", "core", "materials", "openings"] as const;
export type TransitionGround = Pick<Project, (typeof TRANSITION_GROUND)[number] | "items">;

/** What the edges of transitions may lie on. */
export interface EdgeGround {
  readonly project: TransitionGround;
  /** The whole profile of each section as a chart, by item id. */
  readonly charts: ReadonlyMap<string, CylinderChart>;
  /** The free edge of a plate's wing (right or whole hand), from its start to its end. */
  readonly wingEdge: (itemId: string, wingId: string) => readonly SpacePoint[] | undefined;
  /** Transitions that are made already, by item id. */
  readonly surfaces: ReadonlyMap<string, RuledSurface>;
}

/** The chart of a section over all of its profile, corners and all. */
export function wholeChart(section: Section, profile: Curve, pivotYMm: number): CylinderChart {
  const pieces = profile.pieces.filter((piece) => endOfPiece(piece)[0] - startOfPiece(piece)[0] > 0);
  return cylinderChart(pieces, { pivotYMm, headingRad: section.headingRad, tiltRad: section.tiltRad });
}

/** An edge of a transition in space, smooth piece by piece; undefined where what it lies on could not be made. */
export function edgeInSpace(edge: ResolvedEdge, ground: EdgeGround): readonly SpacePiece[] | undefined {
  switch (edge.kind) {
    case "free":
      return freeEdgeInSpace(edge.pieces);
    case "stretch":
      return stretchInSpace(edge, ground);
    case "wing": {
      const points = ground.wingEdge(edge.itemId, edge.wingId);
      if (!points || points.length < 2) return undefined;
      const onHand = edge.hand === "left" ? points.map(mirrored) : points;
      return straightPieces(edge.isReversed ? onHand.toReversed() : onHand);
    }
    case "closing": {
      const surface = ground.surfaces.get(edge.itemId);
      if (!surface) return undefined;
      const { from, to } = rulingAt(surface, edge.end === "start" ? 0 : surface.lengthSMm);
      const ends = edge.hand === "left" ? [mirrored(from), mirrored(to)] : [from, to];
      return straightPieces(edge.isReversed ? ends.toReversed() : ends);
    }
  }
}

/** A free edge as it was drawn. */
export const freeEdgeInSpace = (pieces: readonly SpaceCubic[]): readonly SpacePiece[] =>
  pieces.map((piece) => ({
    pointAt: (t) => pointOnSpaceCubic(piece, t),
    velocityAt: (t) => velocityOnSpaceCubic(piece, t),
  }));

const mirrored = ({ x, y, z }: SpacePoint): SpacePoint => ({ x, y: -y, z });

function straightPieces(points: readonly SpacePoint[]): readonly SpacePiece[] {
  return points.slice(1).map((to, i) => {
    const from = at(points, i);
    const velocity = { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
    return {
      pointAt: (t) => ({
        x: from.x + velocity.x * t,
        y: from.y + velocity.y * t,
        z: from.z + velocity.z * t,
      }),
      velocityAt: () => velocity,
    };
  });
}

function stretchInSpace(
  { itemId, hand, pieces }: Extract<ResolvedEdge, { kind: "stretch" }>,
  ground: EdgeGround,
): readonly SpacePiece[] | undefined {
  const item = ground.project.items.find(({ id }) => id === itemId);
  if (item?.kind === "plate") return pieces.map((piece) => liftPiece(piece, [0, 1], () => [item.zMm, 0]));
  const chart = ground.charts.get(itemId);
  if (!chart) return undefined;
  const sign = hand === "left" ? -1 : 1;
  return pieces.flatMap((piece) =>
    smoothStretches(chart, piece, sign).map(([from, to]) => {
      const middle = pointOnPiece(piece, (from + to) / 2);
      const index = pieceIndexOfXi(chart, xiOfPlan(chart, { x: middle[0], y: sign * middle[1] }));
      return liftPiece(piece, [from, to], (x, y, dx, dy) =>
        heightAndSlope(chart, index, [x, sign * y], [dx, sign * dy]),
      );
    }),
  );
}

/** Parameters of a plan piece between which it crosses no border of the profile. */
function smoothStretches(
  chart: CylinderChart,
  piece: CurvePiece,
  sign: 1 | -1,
): readonly (readonly [number, number])[] {
  const shift = chart.pivotYMm * chart.tanHeading;
  const stops = chart.pieces
    .slice(0, -1)
    .flatMap((border) =>
      crossingParameters(piece, [1, -sign * chart.tanHeading], endOfPiece(border.piece)[0] - shift),
    )
    .filter((t) => t > 1e-9 && t < 1 - 1e-9)
    .sort((a, b) => a - b);
  const all = [0, ...stops.filter((t, i) => i === 0 || t - at(stops, i - 1) > 1e-9), 1];
  return all.slice(1).map((to, i) => [at(all, i), to]);
}

/** Height and its change along (dx, dy) of the drawn surface over a plan point. */
function heightAndSlope(
  chart: CylinderChart,
  index: number,
  [x, y]: readonly [number, number],
  [dx, dy]: readonly [number, number],
): readonly [number, number] {
  const place = placeOfXi(chart, xiOfPlan(chart, { x, y }), index);
  const { piece } = at(chart.pieces, index);
  const [dXi, dZ] = derivativeOnPiece(piece, Math.min(1, Math.max(0, place.t)));
  const slope = dXi === 0 ? 0 : dZ / dXi;
  return [heightAtPlace(chart, place, y), slope * (dx - dy * chart.tanHeading) + dy * chart.tanTilt];
}

/** A stretch of a plan piece, from and to by its parameter, with heights over it. */
function liftPiece(
  piece: CurvePiece,
  [from, to]: readonly [number, number],
  heightOf: (x: number, y: number, dx: number, dy: number) => readonly [number, number],
): SpacePiece {
  const span = to - from;
  const look = (share: number) => {
    const t = from + span * share;
    const [x, y] = pointOnPiece(piece, t);
    const [dx, dy] = derivativeOnPiece(piece, t);
    return { x, y, dx: dx * span, dy: dy * span };
  };
  return {
    pointAt: (share) => {
      const { x, y, dx, dy } = look(share);
      return { x, y, z: heightOf(x, y, dx, dy)[0] };
    },
    velocityAt: (share) => {
      const { x, y, dx, dy } = look(share);
      return { x: dx, y: dy, z: heightOf(x, y, dx, dy)[1] };
    },
  };
}
