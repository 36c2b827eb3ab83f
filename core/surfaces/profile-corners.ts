import { type CurvePiece, derivativeOnPiece, endOfPiece } from "../curves/index.ts";
import { at, cross2, dot2, type Problem, SMOOTH_FOLD_RAD, type SpacePoint } from "../foundation/index.ts";
import type { Profile, Section } from "../project/index.ts";
import {
  chartPointAt,
  directionAtPlace,
  normalAtPlace,
  placeOfXi,
  spacePointAt,
  xiRange,
} from "./cylinder-chart.ts";
import type { CornerFold, CylinderChart, EndPlane, RegionEdge, SectionSheet } from "./types.ts";

/** A profile with more corners than this is a curve drawn in straight steps, not a tray of so many sheets. */
const MOST_CORNERS = 40;

/** A corner of a profile: where it is, and the fold of the surface there. */
export interface Corner {
  readonly nodeId: string;
  readonly xi: number;
  readonly edgeId: string;
  readonly foldRad: number;
  readonly before: number;
}

/** Divides the profile where its tangent turns at a node. */
export function divideAtCorners(
  chart: CylinderChart,
  pieces: readonly CurvePiece[],
): { readonly corners: readonly Corner[]; readonly stretches: readonly (readonly CurvePiece[])[] } {
  const corners: Corner[] = [];
  const stretches: CurvePiece[][] = [[]];
  pieces.forEach((piece, index) => {
    at(stretches, -1).push(piece);
    const next = pieces[index + 1];
    if (!next || Math.abs(planeTurn(piece, next)) <= SMOOTH_FOLD_RAD) return;
    const nodeId = next.startNodeId ?? next.edgeId;
    corners.push({
      nodeId,
      xi: endOfPiece(piece)[0],
      edgeId: `fold-${nodeId}`,
      foldRad: directionAtPlace(chart, { index: index + 1, t: 0 }) - directionAtPlace(chart, { index, t: 1 }),
      before: index,
    });
    stretches.push([]);
  });
  return { corners, stretches };
}

/** Too many corners, as a problem that names the profile; undefined where there are few. */
export function cornerProblem(
  section: Section,
  profile: Profile,
  corners: readonly Corner[],
): Problem | undefined {
  if (corners.length <= MOST_CORNERS) return undefined;
  return {
    kind: "too-many-corners",
    place: { itemId: section.id, profileId: profile.id },
    name: profile.name,
    count: corners.length,
    most: MOST_CORNERS,
  };
}

function planeTurn(before: CurvePiece, after: CurvePiece): number {
  const [a, b] = [derivativeOnPiece(before, 1), derivativeOnPiece(after, 0)];
  return Math.atan2(cross2(a, b), dot2(a, b));
}

/** The bisecting plane through a corner's ruling; `side` 1 for the sheet in front of it, -1 for the one behind. */
export function mitrePlane(chart: CylinderChart, corner: Corner, side: 1 | -1): EndPlane {
  const front = normalAtPlace(chart, { index: corner.before, t: 1 });
  const rear = normalAtPlace(chart, { index: corner.before + 1, t: 0 });
  const up: SpacePoint = { x: front.x + rear.x, y: front.y + rear.y, z: front.z + rear.z };
  const { ruling } = chart;
  const toward = {
    x: side * (ruling.y * up.z - ruling.z * up.y),
    y: side * (ruling.z * up.x - ruling.x * up.z),
    z: side * (ruling.x * up.y - ruling.y * up.x),
  };
  return { origin: spacePointAt(chart, { index: corner.before, t: 1 }, chart.pivotYMm, 0), toward };
}

/** The folds between sheets that both exist, with the stretches of ruling along which they meet. */
export function foldsBetween(
  corners: readonly Corner[],
  sheets: readonly SectionSheet[],
  section: Section,
): readonly CornerFold[] {
  return corners.flatMap(({ nodeId, edgeId, foldRad }) => {
    const touching = sheets.filter(({ loops }) =>
      loops.some(({ edges }) => edges.some((edge) => edge.edgeId === edgeId)),
    );
    const fronts = touching.filter((sheet) => endsAt(sheet, edgeId));
    const rears = touching.filter((sheet) => !endsAt(sheet, edgeId));
    return fronts.flatMap((front) =>
      rears.flatMap((rear): CornerFold[] => {
        const beyond = rulingSpans(rear, edgeId);
        const spans = rulingSpans(front, edgeId).filter((span) =>
          beyond.some((other) => overlapMm(span, other) > SHORTEST_FOLD_MM),
        );
        if (spans.length === 0) return [];
        const stretches = spans.map(([a, b]) => ({
          from: spaceAtEnd(front.chart, a),
          to: spaceAtEnd(front.chart, b),
          lengthMm: Math.abs(b - a),
        }));
        return [{ nodeId, itemId: section.id, sheetIds: [front.id, rear.id], edgeId, foldRad, stretches }];
      }),
    );
  });
}

/** Sheets that share less of a ruling than this only touch. */
const SHORTEST_FOLD_MM = 1e-3;

const foldEdges = ({ loops }: SectionSheet, edgeId: string): readonly RegionEdge[] =>
  loops.flatMap(({ edges }) => edges.filter((edge) => edge.edgeId === edgeId));

/** Whether a sheet's last ruling lies on a corner, rather than its first. */
const endsAt = (sheet: SectionSheet, edgeId: string): boolean =>
  foldEdges(sheet, edgeId).some(({ points }) => at(points, 0).u > sheet.chart.lengthUMm / 2);

/** From where to where along the ruling, v at both ends, a sheet lies on a corner. */
const rulingSpans = (sheet: SectionSheet, edgeId: string): readonly (readonly [number, number])[] =>
  foldEdges(sheet, edgeId).map(({ points }) => [at(points, 0).v, at(points, -1).v]);

const overlapMm = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.min(Math.max(...a), Math.max(...b)) - Math.max(Math.min(...a), Math.min(...b));

/** The space point on a chart's last ruling at v. */
function spaceAtEnd(chart: CylinderChart, v: number): SpacePoint {
  const place = placeOfXi(chart, xiRange(chart)[1]);
  const across = (v - chartPointAt(chart, place, chart.pivotYMm).v) * chart.ruling.y;
  return spacePointAt(chart, place, chart.pivotYMm + across, 0);
}
