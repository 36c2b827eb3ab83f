import {
  type Curve,
  type CurvePiece,
  endOfPiece,
  extremeParameters,
  flattenPiece,
  pointOnPiece,
  startOfPiece,
} from "../curves/index.ts";
import type { Problem } from "../foundation/index.ts";
import { faceDepths } from "../laminate/index.ts";
import { coreOf, type Project, type Section } from "../project/index.ts";
import { chordLimits } from "./chord-limits.ts";
import { cylinderChart } from "./cylinder-chart.ts";
import { drawnLoop, joinToImage, polygonOf } from "./drawn-loops.ts";
import { boxOf, clipToXi, planAreaMm2 } from "./plan-polygons.ts";
import { cornerProblem, divideAtCorners, foldsBetween, mitrePlane } from "./profile-corners.ts";
import { offsetProblem, profileShortage } from "./section-checks.ts";
import { traceLoops, type XiLimits } from "./trace-loops.ts";
import type { CornerFold, Hand, SectionSheet } from "./types.ts";

/** What becomes of one section: its sheets from front to rear, the folds between them, and what went wrong. */
export interface SectionOutcome {
  readonly sheets: readonly SectionSheet[];
  readonly folds: readonly CornerFold[];
  readonly problems: readonly Problem[];
}

/**
 * The sheets of a section: one, or several where profile corners without radius divide it along their rulings.
 * The outline must lie under the profile (profile-too-short), and every face must clear the local radius
 * (offset-exceeds-radius), and a profile has few corners (too-many-corners); otherwise the section is left out and named.
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
  const { corners, stretches } = divideAtCorners(whole, pieces);
  const stepped = cornerProblem(section, profile, corners);
  if (stepped) return { sheets: [], folds: [], problems: [stepped] };

  const isMirrored = project.symmetry === "mirrored";
  const drawn = drawnLoop(outline, typedEdgeNames(section), isMirrored);
  const touchesCentre = drawn.some(({ role }) => role === "centre");
  const isJoined = touchesCentre && section.headingRad === 0 && section.tiltRad === 0;
  const loops = isJoined ? joinToImage(drawn) : [drawn];
  const hands: readonly Hand[] = !isMirrored || isJoined ? ["whole"] : ["right", "left"];
  const planLoops = loops.map((loop) => polygonOf(loop, planParameters, pointOnPiece));

  const planBox = boxOf(planLoops.flat());
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

const planParameters = (piece: CurvePiece): readonly number[] =>
  flattenPiece(piece, { chordErrorMm: CONTAINING_ERROR_MM, turnRad: 0.2 });

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
