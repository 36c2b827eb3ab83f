import { type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import { glueOf, type Project, type ResolvedLines } from "../project/index.ts";
import type { CornerFold, FenceSheet, LyingSheet, Sheet } from "../surfaces/index.ts";
import { centreJoints } from "./centre-joints.ts";
import { cornerJoints } from "./corner-joints.ts";
import { countOut } from "./count-out.ts";
import { findOffers } from "./find-offers.ts";
import { findOverlaps } from "./find-overlaps.ts";
import { JOINT_GROUND, JOINT_LINES, type JointGround, type JointLines } from "./joint-ground.ts";
import { linkedEdges } from "./linked-edges.ts";
import { seatJoints } from "./seat-joints.ts";
import { sharedEdgeJoints } from "./shared-edge-joints.ts";
import type { SheetJoint } from "./sheet-joint.ts";
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
  memory: Memory = NO_MEMORY,
): Joining<Joint> {
  const lying = sheets.filter((sheet): sheet is LyingSheet => sheet.kind !== "fence");
  const fences = sheets.filter((sheet): sheet is FenceSheet => sheet.kind === "fence");
  const ground = { ...project, items: project.items.filter(({ kind }) => kind !== "fence") };
  const from = [
    ...ground.items,
    ...JOINT_GROUND.map((field) => project[field]),
    ...JOINT_LINES.map((field) => lines[field]),
    ...folds,
    ...lying,
  ];
  const met = memory.recall("joints", from, () => meetingsOf(ground, lines, lying, folds));
  const seats = fences.flatMap((fence) =>
    memory.recall(`seat of ${fence.id}`, [fence, ...lying], () => seatJoints(fence, lying)),
  );
  return { ...met, joints: countOut([...met.joints, ...seats]) };
}

/** The joints of the lying sheets, not yet numbered. */
function meetingsOf(
  project: JointGround,
  lines: JointLines,
  lying: readonly LyingSheet[],
  folds: readonly CornerFold[],
): Joining<SheetJoint> {
  const glue = { gapMm: project.glue.gapMm, gapLimitMm: glueOf(project)?.gapLimitMm ?? 0 };
  const sections = lying.filter((sheet) => sheet.kind === "section");
  const linked = linkedEdges(project, lines, lying);
  const found = findOffers(project, lying, linked);
  const meetings = [
    cornerJoints(folds, sections, glue),
    centreJoints(lying, glue),
    sharedEdgeJoints(project, linked, glue),
  ];
  return {
    joints: meetings.flatMap(({ joints }) => joints),
    setBacks: meetings.flatMap(({ setBacks }) => setBacks),
    offers: found.offers,
    problems: [
      ...meetings.flatMap(({ problems }) => problems),
      ...found.problems,
      ...findOverlaps(project, lying),
    ],
  };
}

interface Joining<OneJoint> {
  readonly joints: readonly OneJoint[];
  readonly setBacks: readonly SetBack[];
  readonly offers: readonly JointOffer[];
  readonly problems: readonly Problem[];
}
