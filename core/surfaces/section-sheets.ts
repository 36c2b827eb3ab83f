import {
  type Curve,
  type CurvePiece,
  endOfPiece,
  extremeParameters,
  flattenPiece,
  pointOnPiece,
  startOfPiece,
} from "../curves/index.ts";
import type { PlanPoint, Problem } from "../foundation/index.ts";
import { faceDepths } from "../laminate/index.ts";
import { coreOf, type Project, type Section } from "../project/index.ts";
import { chordLimits } from "./chord-limits.ts";
import { cylinderChart } from "./cylinder-chart.ts";
import { type DrawnPiece, drawnLoop, joinToImage, polygonOf } from "./drawn-loops.ts";
import { meetWallsAt } from "./meet-walls.ts";
import { openSection } from "./open-section.ts";
import { boxOf, clipToXi, planAreaMm2 } from "./plan-polygons.ts";
import { cornerProblem, divideAtCorners, foldsBetween, mitrePlane } from "./profile-corners.ts";
import { bordersOfLoops, countIslands, islandsOf } from "./region-islands.ts";
import { offsetProblem, profileShortage } from "./section-checks.ts";
import { traceLoops, type XiLimits } from "./trace-loops.ts";
import type { CornerFold, CylinderChart, EndPlane, Hand, RegionLoop, SectionSheet } from "./types.ts";

/** What becomes of one section: its sheets from front to rear, the folds between them, and what went wrong. */
export interface SectionOutcome {
  readonly sheets: readonly SectionSheet[];
  readonly folds: readonly CornerFold[];
  /** The openings that take something away. */
  readonly openingIds: readonly string[];
  readonly problems: readonly Problem[];
}

const NOTHING: SectionOutcome = { sheets: [], folds: [], openingIds: [], problems: [] };

/**
 * The sheets of a section: one, or several where profile corners without radius divide it along their rulings or
 * openings (by opening id, counter-clockwise) cut it apart: numbered from front to rear, then from inboard to outboard.
 * The outline must lie under the profile (profile-too-short), and every face must clear the local radius
 * (offset-exceeds-radius), and a profile has few corners (too-many-corners); otherwise the section is left out and named.
 */
export function sectionSheets(
  project: Project,
  section: Section,
  outline: Curve,
  profileCurve: Curve,
  openings: Readonly<Record<string, Curve>> = {},
): SectionOutcome {
  const profile = project.profiles.find(({ id }) => id === section.profileId);
  if (!profile) return NOTHING;
  const isMirrored = project.symmetry === "mirrored";
  const drawn = drawnLoop(outline, typedEdgeNames(section), isMirrored);
  const touchesCentre = drawn.some(({ role }) => role === "centre");
  const isJoined = touchesCentre && section.headingRad === 0 && section.tiltRad === 0;
  const loops = isJoined ? joinToImage(drawn) : [drawn];
  const hands: readonly Hand[] = !isMirrored || isJoined ? ["whole"] : ["right", "left"];
  const opened = openSection(project, section, loops, { curves: openings, isJoined });
  const openingIds = opened?.openingIds ?? [];

  const core = coreOf(project, section);
  const depths = faceDepths(project.drawnFace, project.skins, core.thicknessMm);
  const frame = {
    pivotYMm: pivotOf(section, outline),
    headingRad: section.headingRad,
    tiltRad: section.tiltRad,
  };
  const pieces = profileCurve.pieces.filter((piece) => endOfPiece(piece)[0] - startOfPiece(piece)[0] > 0);
  const whole = cylinderChart(pieces, frame);
  const shortage = profileShortage(section, profile, whole, outline);
  if (shortage) return { ...NOTHING, openingIds, problems: [shortage] };
  const tight = offsetProblem(section, profile, whole, depths);
  if (tight) return { ...NOTHING, openingIds, problems: [tight] };
  const { corners, stretches } = divideAtCorners(whole, pieces);
  const stepped = cornerProblem(section, profile, corners);
  if (stepped) return { ...NOTHING, openingIds, problems: [stepped] };

  const left = opened?.loops ?? loops;
  const traced = stretches.map((stretch, i): TracedStretch => {
    const chart = cylinderChart(stretch, frame);
    const [before, after] = [corners[i - 1], corners[i]];
    const limits: XiLimits = { ...(before && { from: before }), ...(after && { to: after }) };
    const trace = (drawnLoops: Loops): readonly RegionLoop[] => {
      const polygons = drawnLoops.map(planPolygon);
      const ownAreaMm2 = planAreaMm2(polygons.map((loop) => clipToXi(chart, loop, limits)));
      const limitsOf = chordLimits(drawnLoops, Math.max(ownAreaMm2, SLIVER_MM2));
      return traceLoops(chart, drawnLoops, limits, { neutralMm: depths.neutralMm, limitsOf });
    };
    const region = trace(opened ? meetWallsAt(chart, opened, depths.neutralMm) : loops);
    const count = opened ? countIslands(region) : 1;
    const isDivided = count > 1 && count > countIslands(trace(loops));
    const ends = [
      ...(before ? [mitrePlane(whole, before, -1)] : []),
      ...(after ? [mitrePlane(whole, after, 1)] : []),
    ];
    return { chart, region, ends, isDivided };
  });
  const isDivided = traced.some((stretch) => stretch.isDivided);
  const planLoops = left.map(planPolygon);
  const cover = opened && {
    square: opened.squareLoops.map(planPolygon),
    upright: opened.uprightLoops.map(planPolygon),
    own: [],
    others: [],
  };
  const drawnWhole = {
    planLoops,
    planBox: boxOf(planLoops.flat()),
    planPieces: left.flat().map(({ piece }) => piece),
  };
  const bodies = traced.flatMap(({ chart, region, ends }): Body[] => {
    if (!isDivided || !cover) {
      const borders = opened && { borders: bordersOfLoops(region) };
      return [{ chart, ends, loops: region, ...drawnWhole, ...borders, ...(cover && { cover }) }];
    }
    const islands = islandsOf(region);
    return islands.map((island): Body => {
      const others = islands.filter((other) => other !== island).flatMap((other) => other.planLoops);
      const borders = bordersOfLoops(island.loops);
      return {
        chart,
        ends,
        loops: island.loops,
        planLoops: island.planLoops,
        planBox: boxOf(island.planLoops.flat()),
        planPieces: borders.map(({ piece }) => piece),
        borders,
        cover: { ...cover, own: island.planLoops, others },
      };
    });
  });
  const sheets = bodies.map(
    (body, i): SectionSheet => ({
      kind: "section",
      id: bodies.length === 1 ? `S${section.number}` : `S${section.number}.${i + 1}`,
      itemId: section.id,
      name: bodies.length === 1 ? section.name : `${section.name} ${i + 1}`,
      foamId: core.foamId,
      thicknessMm: core.thicknessMm,
      depths,
      hands,
      ...body,
    }),
  );
  const present = sheets.filter((sheet) => sheet.loops.length > 0);
  return {
    sheets: present,
    folds: foldsBetween(corners, present, section),
    openingIds,
    problems: present.length === 0 && opened ? [nothingLeft(section)] : [],
  };
}

type Loops = readonly (readonly DrawnPiece[])[];

/** The region of a section between two profile corners. */
interface TracedStretch {
  readonly chart: CylinderChart;
  readonly region: readonly RegionLoop[];
  readonly ends: readonly EndPlane[];
  /** Whether openings make more pieces of it than the outline does. */
  readonly isDivided: boolean;
}

/** What the sheets of one section do not share. */
type Body = Pick<
  SectionSheet,
  "chart" | "ends" | "loops" | "planLoops" | "planBox" | "planPieces" | "borders" | "cover"
>;

const nothingLeft = (section: Section): Problem => ({
  kind: "opening-leaves-nothing",
  place: { itemId: section.id },
  name: section.name,
});

const planPolygon = (loop: readonly DrawnPiece[]): readonly PlanPoint[] =>
  polygonOf(loop, planParameters, pointOnPiece);

/** How exactly a plan polygon knows where its sheet ends: under what anybody can mark, and few corners to walk. */
const CONTAINING_ERROR_MM = 0.02;

/** Areas of sheets smaller than this need not be right to a part in a million. */
const SLIVER_MM2 = 1000;

const planParameters = (piece: CurvePiece): readonly number[] =>
  flattenPiece(piece, { chordErrorMm: CONTAINING_ERROR_MM, turnRad: 0.2 });

const typedEdgeNames = (section: Section): Readonly<Record<string, string>> =>
  Object.fromEntries(
    section.outline.elements.flatMap(({ id, edgeName }) => (edgeName ? [[id, edgeName]] : [])),
  );

/** The line that heading and tilt leave where it is: the typed one, else the outline's edge nearest the centre line. */
export const pivotOf = (section: Section, outline: Curve): number =>
  section.pivotYMm ?? nearestToCentreLine(outline);

function nearestToCentreLine(outline: Curve): number {
  const ys = outline.pieces.flatMap((piece) =>
    [0, ...extremeParameters(piece, [0, 1])].map((t) => pointOnPiece(piece, t)[1]),
  );
  return ys.reduce((nearest, y) => (Math.abs(y) < Math.abs(nearest) ? y : nearest), Number.POSITIVE_INFINITY);
}
