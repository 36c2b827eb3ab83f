import {
  type Curve,
  type CurvePiece,
  derivativeOnPiece,
  endOfPiece,
  extremeParameters,
  flattenPiece,
  pointOnPiece,
  startOfPiece,
} from "../curves/index.ts";
import {
  at,
  cross2,
  dot2,
  FLAT_RADIUS_MM,
  type PlanPoint,
  PROFILE_FALLBACK_MM,
  type Problem,
  SMOOTH_FOLD_RAD,
  type SpacePoint,
  type Vec2,
} from "../foundation/index.ts";
import { type FaceDepths, faceDepths } from "../laminate/index.ts";
import { coreOf, type Profile, type Project, type Section } from "../project/index.ts";
import { chordLimits } from "./chord-limits.ts";
import {
  bendAtPlace,
  chartPointAt,
  cylinderChart,
  directionAtPlace,
  normalAtPlace,
  placeOfXi,
  profileAtPlace,
  spacePointAt,
  xiOfPlan,
  xiRange,
} from "./cylinder-chart.ts";
import { drawnLoop, joinToImage, polygonOf } from "./drawn-loops.ts";
import { traceLoops, type XiLimits } from "./trace-loops.ts";
import type { CornerFold, CylinderChart, EndPlane, Hand, SectionSheet } from "./types.ts";

/** What becomes of one section: its sheets from front to rear, the folds between them, and what went wrong. */
export interface SectionOutcome {
  readonly sheets: readonly SectionSheet[];
  readonly folds: readonly CornerFold[];
  readonly problems: readonly Problem[];
}

/**
 * The sheets of a section: one, or several where profile corners without radius divide it along their rulings.
 * The outline must lie under the profile (profile-too-short), and every face must clear the local radius
 * (offset-exceeds-radius); otherwise the section is left out and named.
 */
export function sectionSheets(
  project: Project,
  section: Section,
  outline: Curve,
  profileCurve: Curve,
): SectionOutcome {
  const profile = project.profiles.find(({ id }) => id === section.profileId);
  if (!profile) return { sheets: [], folds: [], problems: [] };
  const core = coreOf(project, section);
  const depths = faceDepths(project.drawnFace, project.skins, core.thicknessMm);
  const frame = {
    pivotYMm: section.pivotYMm ?? nearestToCentreLine(outline),
    headingRad: section.headingRad,
    tiltRad: section.tiltRad,
  };
  const pieces = profileCurve.pieces.filter((piece) => endOfPiece(piece)[0] - startOfPiece(piece)[0] > 0);
  const whole = cylinderChart(pieces, frame);
  const shortage = profileShortage(section, profile, whole, outline);
  if (shortage) return { sheets: [], folds: [], problems: [shortage] };
  const tight = offsetProblem(section, profile, whole, depths);
  if (tight) return { sheets: [], folds: [], problems: [tight] };

  const isMirrored = project.symmetry === "mirrored";
  const drawn = drawnLoop(outline, typedEdgeNames(section), isMirrored);
  const touchesCentre = drawn.some(({ role }) => role === "centre");
  const isJoined = touchesCentre && section.headingRad === 0 && section.tiltRad === 0;
  const loops = isJoined ? joinToImage(drawn) : [drawn];
  const hands: readonly Hand[] = !isMirrored || isJoined ? ["whole"] : ["right", "left"];
  const planLoops = loops.map((loop) => polygonOf(loop, planParameters, pointOnPiece));

  const planBox = boxOf(planLoops.flat());
  const { corners, stretches } = divideAtCorners(whole, pieces);
  const sheets = stretches.map((stretch, i): SectionSheet => {
    const chart = cylinderChart(stretch, frame);
    const before = corners[i - 1];
    const after = corners[i];
    const limits: XiLimits = { ...(before && { from: before }), ...(after && { to: after }) };
    const ownAreaMm2 = planAreaMm2(planLoops.map((loop) => clipToXi(chart, loop, limits)));
    const limitsOf = chordLimits(loops, Math.max(ownAreaMm2, SLIVER_MM2));
    return {
      kind: "section",
      id: stretches.length === 1 ? `S${section.number}` : `S${section.number}.${i + 1}`,
      itemId: section.id,
      name: stretches.length === 1 ? section.name : `${section.name} ${i + 1}`,
      foamId: core.foamId,
      thicknessMm: core.thicknessMm,
      depths,
      hands,
      chart,
      loops: traceLoops(chart, loops, limits, { neutralMm: depths.neutralMm, limitsOf }),
      planLoops,
      planBox,
      planPieces: loops.flat().map(({ piece }) => piece),
      ends: [
        ...(before ? [mitrePlane(whole, before, -1)] : []),
        ...(after ? [mitrePlane(whole, after, 1)] : []),
      ],
    };
  });
  const present = sheets.filter((sheet) => sheet.loops.length > 0);
  return { sheets: present, folds: foldsBetween(corners, present, section), problems: [] };
}

/** How exactly a plan polygon knows where its sheet ends: under what anybody can mark, and few corners to walk. */
const CONTAINING_ERROR_MM = 0.02;

/** Areas of sheets smaller than this need not be right to a part in a million. */
const SLIVER_MM2 = 1000;

/** The part of a plan polygon between two corner rulings; where it falls in two they stay joined by a line there and back. */
function clipToXi(
  chart: CylinderChart,
  loop: readonly PlanPoint[],
  { from, to }: XiLimits,
): readonly PlanPoint[] {
  const behind = from ? clipPolygon(loop, (p) => xiOfPlan(chart, p) - from.xi) : loop;
  return to ? clipPolygon(behind, (p) => to.xi - xiOfPlan(chart, p)) : behind;
}

/** What is left of a polygon where a linear function of the plan is positive (Sutherland and Hodgman, 1974). */
function clipPolygon(
  polygon: readonly PlanPoint[],
  insideBy: (p: PlanPoint) => number,
): readonly PlanPoint[] {
  return polygon.flatMap((p, i) => {
    const next = at(polygon, (i + 1) % polygon.length);
    const [a, b] = [insideBy(p), insideBy(next)];
    const kept = a >= 0 ? [p] : [];
    if (a >= 0 === b >= 0) return kept;
    const t = a / (a - b);
    return [...kept, { x: p.x + (next.x - p.x) * t, y: p.y + (next.y - p.y) * t }];
  });
}

const planParameters = (piece: CurvePiece): readonly number[] =>
  flattenPiece(piece, { chordErrorMm: CONTAINING_ERROR_MM, turnRad: 0.2 });

function boxOf(points: readonly PlanPoint[]): readonly [PlanPoint, PlanPoint] {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return [
    { x: Math.min(...xs), y: Math.min(...ys) },
    { x: Math.max(...xs), y: Math.max(...ys) },
  ];
}

/** Area of plan polygons, holes taken off. */
function planAreaMm2(polygons: readonly (readonly PlanPoint[])[]): number {
  let twice = 0;
  for (const polygon of polygons) {
    for (const [i, p] of polygon.entries()) {
      const q = at(polygon, (i + 1) % polygon.length);
      twice += p.x * q.y - q.x * p.y;
    }
  }
  return Math.abs(twice) / 2;
}

const typedEdgeNames = (section: Section): Readonly<Record<string, string>> =>
  Object.fromEntries(
    section.outline.elements.flatMap(({ id, edgeName }) => (edgeName ? [[id, edgeName]] : [])),
  );

/** The y of the outline's point nearest the centre line: the default pivot. */
function nearestToCentreLine(outline: Curve): number {
  const ys = outline.pieces.flatMap((piece) =>
    [0, ...extremeParameters(piece, [0, 1])].map((t) => pointOnPiece(piece, t)[1]),
  );
  return ys.reduce((nearest, y) => (Math.abs(y) < Math.abs(nearest) ? y : nearest), Number.POSITIVE_INFINITY);
}

function profileShortage(
  section: Section,
  profile: Profile,
  chart: CylinderChart,
  outline: Curve,
): Problem | undefined {
  const normal: Vec2 = [1, -chart.tanHeading];
  const xis = outline.pieces.flatMap((piece) =>
    [0, ...extremeParameters(piece, normal)].map((t) => {
      const [x, y] = pointOnPiece(piece, t);
      return xiOfPlan(chart, { x, y });
    }),
  );
  const [first, last] = xiRange(chart);
  const missingFrontMm = Math.max(0, first - Math.min(...xis));
  const missingRearMm = Math.max(0, Math.max(...xis) - last);
  if (missingFrontMm <= PROFILE_FALLBACK_MM && missingRearMm <= PROFILE_FALLBACK_MM) return undefined;
  return {
    kind: "profile-too-short",
    place: { itemId: section.id },
    name: section.name,
    profileName: profile.name,
    missingFrontMm,
    missingRearMm,
  };
}

/** The first place where a face's offset is larger than the radius that it bends to. */
function offsetProblem(
  section: Section,
  profile: Profile,
  chart: CylinderChart,
  depths: FaceDepths,
): Problem | undefined {
  for (const [index, { piece }] of chart.pieces.entries()) {
    if (piece.kind === "line") continue;
    for (const t of bendSamples(piece)) {
      const { curvaturePerMm } = bendAtPlace(chart, { index, t });
      const offsetMm = curvaturePerMm > 0 ? depths.upperMm : -depths.airMm;
      if (Math.abs(curvaturePerMm) * FLAT_RADIUS_MM <= 1 || offsetMm * Math.abs(curvaturePerMm) < 1) continue;
      const nodeId = t < 0.5 ? piece.startNodeId : piece.endNodeId;
      return {
        kind: "offset-exceeds-radius",
        place: { itemId: section.id, profileId: profile.id, ...(nodeId !== undefined && { nodeId }) },
        name: profile.name,
        radiusMm: 1 / Math.abs(curvaturePerMm),
        offsetMm,
        atXMm: profileAtPlace(chart, { index, t })[0],
      };
    }
  }
  return undefined;
}

/** Where a piece's curvature is looked at: an arc once, a cubic in 32 places (its curvature is near linear in t). */
export const bendSamples = (piece: CurvePiece): readonly number[] =>
  piece.kind === "arc" ? [0.5] : Array.from({ length: 33 }, (_, i) => i / 32);

interface Corner {
  readonly nodeId: string;
  readonly xi: number;
  readonly edgeId: string;
  readonly foldRad: number;
  readonly before: number;
}

/** Divides the profile where its tangent turns at a node. */
function divideAtCorners(
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

function planeTurn(before: CurvePiece, after: CurvePiece): number {
  const [a, b] = [derivativeOnPiece(before, 1), derivativeOnPiece(after, 0)];
  return Math.atan2(cross2(a, b), dot2(a, b));
}

/** The bisecting plane through a corner's ruling; `side` 1 for the sheet in front of it, -1 for the one behind. */
function mitrePlane(chart: CylinderChart, corner: Corner, side: 1 | -1): EndPlane {
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

function foldsBetween(
  corners: readonly Corner[],
  sheets: readonly SectionSheet[],
  section: Section,
): readonly CornerFold[] {
  return corners.flatMap(({ nodeId, edgeId, foldRad }) => {
    const [front, rear] = sheets.filter(({ loops }) =>
      loops.some(({ edges }) => edges.some((edge) => edge.edgeId === edgeId)),
    );
    if (!front || !rear) return [];
    const stretches = front.loops.flatMap(({ edges }) =>
      edges
        .filter((edge) => edge.edgeId === edgeId)
        .map(({ points }) => {
          const [a, b] = [at(points, 0), at(points, -1)];
          return {
            from: planAtEnd(front.chart, a.v),
            to: planAtEnd(front.chart, b.v),
            lengthMm: Math.abs(b.v - a.v),
          };
        }),
    );
    return [
      { nodeId, itemId: section.id, sheetIds: [front.id, rear.id] as const, edgeId, foldRad, stretches },
    ];
  });
}

/** The plan point on a chart's last ruling at v. */
function planAtEnd(chart: CylinderChart, v: number): PlanPoint {
  const place = placeOfXi(chart, xiRange(chart)[1]);
  const across = (v - chartPointAt(chart, place, chart.pivotYMm).v) * chart.ruling.y;
  const { x, y } = spacePointAt(chart, place, chart.pivotYMm + across, 0);
  return { x, y };
}
