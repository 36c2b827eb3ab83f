import type { Problem } from "../foundation/index.ts";
import { glueOf, type Project, type ResolvedLines } from "../project/index.ts";
import type { CornerFold, FenceSheet, LyingSheet, Sheet } from "../surfaces/index.ts";
import { centreJoints } from "./centre-joints.ts";
import { cornerJoints } from "./corner-joints.ts";
import { countOut } from "./count-out.ts";
import { findOffers } from "./find-offers.ts";
import { findOverlaps } from "./find-overlaps.ts";
import { linkedEdges } from "./linked-edges.ts";
import { seatJoints } from "./seat-joints.ts";
import { sharedEdgeJoints } from "./shared-edge-joints.ts";
import type { Joint, JointOffer, SetBack } from "./types.ts";

/**
 * Every joint of the tray and every set-back that it asks of an edge: folds at profile corners, halves that meet
 * on the centre line, edges that refer to another sheet's edge, and fences under their sheets. Where an edge that
 * refers to another misses it, there is a problem, and no joint.
 */
export function findJoints(
  project: Project,
  lines: ResolvedLines,
  sheets: readonly Sheet[],
  folds: readonly CornerFold[],
): {
  readonly joints: readonly Joint[];
  readonly setBacks: readonly SetBack[];
  readonly offers: readonly JointOffer[];
  readonly problems: readonly Problem[];
} {
  const glue = { gapMm: project.glue.gapMm, gapLimitMm: glueOf(project)?.gapLimitMm ?? 0 };
  const lying = sheets.filter((sheet): sheet is LyingSheet => sheet.kind !== "fence");
  const sections = lying.filter((sheet) => sheet.kind === "section");
  const fences = sheets.filter((sheet): sheet is FenceSheet => sheet.kind === "fence");
  const linked = linkedEdges(project, lines, lying);
  const found = findOffers(project, lying, linked);
  const meetings = [
    cornerJoints(folds, sections, glue),
    centreJoints(lying, glue),
    sharedEdgeJoints(project, linked, glue),
  ];
  const seats = fences.flatMap((fence) => seatJoints(fence, lying));
  return {
    joints: countOut([...meetings.flatMap(({ joints }) => joints), ...seats]),
    setBacks: meetings.flatMap(({ setBacks }) => setBacks),
    offers: found.offers,
    problems: [
      ...meetings.flatMap(({ problems }) => problems),
      ...found.problems,
      ...findOverlaps(project, lying),
    ],
  };
}
