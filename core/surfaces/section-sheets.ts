import { type Curve, endOfPiece, extremeParameters, pointOnPiece, startOfPiece } from "../curves/index.ts";
import type { Problem } from "../foundation/index.ts";
import { faceDepths } from "../laminate/index.ts";
import { coreOf, type Project, type Section } from "../project/index.ts";
import type { Fineness } from "./chord-limits.ts";
import { cylinderChart } from "./cylinder-chart.ts";
import { drawnLoop, joinToImage } from "./drawn-loops.ts";
import { openSection } from "./open-section.ts";
import { cornerProblem, divideAtCorners, foldsBetween } from "./profile-corners.ts";
import { sectionBodies } from "./section-bodies.ts";
import { offsetProblem, profileShortage } from "./section-checks.ts";
import type { CornerFold, Hand, SectionSheet } from "./types.ts";

/** What becomes of one section: its sheets from front to rear, the folds between them, and what went wrong. */
export interface SectionOutcome {
  readonly sheets: readonly SectionSheet[];
  readonly folds: readonly CornerFold[];
  /** The openings that take something away. */
  readonly openingIds: readonly string[];
  readonly problems: readonly Problem[];
}

/** What of a project the sheets of a section follow from, besides the section and its curves. */
export const SECTION_GROUND = ["symmetry", "drawnFace", "skins", "core", "profiles", "openings"] as const;
export type SectionGround = Pick<Project, (typeof SECTION_GROUND)[number]> & {
  /** For cutting where it is not said. */
  readonly fineness?: Fineness;
};

const NOTHING: SectionOutcome = { sheets: [], folds: [], openingIds: [], problems: [] };

/**
 * The sheets of a section: one, or several where profile corners without radius divide it along their rulings or
 * openings (by opening id, counter-clockwise) cut it apart: numbered from front to rear, then from inboard to outboard.
 * The outline must lie under the profile (profile-too-short), and every face must clear the local radius
 * (offset-exceeds-radius), and a profile has few corners (too-many-corners); otherwise the section is left out and named.
 */
export function sectionSheets(
  project: SectionGround,
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

  const { fineness = "for cutting" } = project;
  const surface = { whole, frame, stretches, corners, neutralMm: depths.neutralMm, fineness };
  const bodies = sectionBodies(surface, loops, opened);
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

const nothingLeft = (section: Section): Problem => ({
  kind: "opening-leaves-nothing",
  place: { itemId: section.id },
  name: section.name,
});

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
