import type { Problem } from "../foundation/index.ts";
import { type ItemEdge, nameOfItem } from "../project/index.ts";
import type { LyingSheet } from "../surfaces/index.ts";
import type { CutChoice } from "./cut-of-fold.ts";
import { edgesWithId, movingEdgesWithId } from "./edge-places.ts";
import type { Candidate } from "./find-partner.ts";
import type { JointGround } from "./joint-ground.ts";
import type { LinkedEdge } from "./linked-edges.ts";
import { type ChoiceOf, type Meeting, meetAlong } from "./meet-along.ts";
import type { GlueLine, Meetings, SheetJoint } from "./sheet-joint.ts";
import type { SetBack } from "./types.ts";

/**
 * The joints along edges that refer to another sheet's edge or that the builder joined, with set-backs on both sides.
 * A joint is counted from the follower. Problems: edges that run beside each other and do not meet, a third sheet on
 * one edge, a chosen cut that the fold does not allow.
 */
export function sharedEdgeJoints(
  project: JointGround,
  edges: readonly LinkedEdge[],
  glue: GlueLine,
): Meetings {
  const joints: SheetJoint[] = [];
  const setBacks: SetBack[] = [];
  const problems: Problem[] = [];
  for (const linked of edges) {
    const { sheet, edgeId, isFollower } = linked;
    const candidates = candidatesOf(linked);
    if (candidates.length === 0 || edgesWithId(sheet, edgeId).length === 0) continue;
    const settings = { ...glue, toleranceMm: project.joints.toleranceMm };
    const choiceOf = choiceFor(project, linked);
    const met = meetAlong(sheet, edgeId, candidates, { ...settings, choiceOf });
    if (met.gap && isFollower) problems.push(apart(project, linked, met.gap));
    if (met.third) problems.push(thirdProblem(project, linked, met.third));
    if (met.refused && isFollower)
      problems.push({
        ...placeOf(project, linked),
        kind: "cut-not-possible",
        ...met.refused,
        cut: met.refused.choice.cut,
      });
    if (met.uncut && isFollower)
      problems.push({
        ...placeOf(project, linked),
        kind: "fold-too-sharp",
        otherName: nameOfSheet(project, met.uncut.candidate.sheet),
        foldRad: met.uncut.foldRad,
        at: { x: met.uncut.at.x, y: met.uncut.at.y },
      });
    setBacks.push(met.setBack, ...imageSetBack(sheet, met.setBack));
    if (isFollower) joints.push(...met.joints.map((joint) => ({ ...joint, kind: "shared edge" as const })));
  }
  return { joints, setBacks, problems };
}

function candidatesOf({ others }: LinkedEdge): readonly Candidate[] {
  const seen = new Set<string>();
  return others.flatMap(({ sheet, edgeId, isImage }): readonly Candidate[] => {
    const key = `${sheet.id}/${edgeId}/${isImage ?? false}`;
    const edges = movingEdgesWithId(sheet, edgeId);
    if (seen.has(key) || edges.length === 0) return [];
    seen.add(key);
    return [{ sheet, edgeId, edges, ...(isImage && { isImage }) }];
  });
}

const isEdge = (edge: ItemEdge, itemId: string, edgeId: string): boolean =>
  edge.itemId === itemId && edge.edgeId === edgeId;

/** The builder's cut for the joint, given at either of its edges. */
function choiceFor({ joints }: JointGround, { sheet, edgeId }: LinkedEdge): ChoiceOf {
  return (candidate): CutChoice | undefined => {
    const chosen = joints.cuts.find(
      ({ edge }) =>
        isEdge(edge, sheet.itemId, edgeId) || isEdge(edge, candidate.sheet.itemId, candidate.edgeId),
    );
    if (!chosen) return undefined;
    const { cut, throughItemId } = chosen;
    if (throughItemId === sheet.itemId) return { cut, through: 0 };
    return throughItemId === candidate.sheet.itemId ? { cut, through: 1 } : { cut };
  };
}

/** A joined sheet has its edge on the left half as well, run the other way. */
function imageSetBack(sheet: LyingSheet, setBack: SetBack): readonly SetBack[] {
  const edgeId = `${setBack.edgeId}.left`;
  if (edgesWithId(sheet, edgeId).length === 0) return [];
  const edges = setBack.edges.toReversed().map(({ shares, amountsMm, bevelsRad, isJoined }) => ({
    isJoined,
    shares: shares.toReversed().map((share) => 1 - share),
    amountsMm: amountsMm.toReversed(),
    bevelsRad: bevelsRad.toReversed(),
  }));
  return [{ ...setBack, edgeId, edges }];
}

const nameOfSheet = (project: JointGround, sheet: LyingSheet): string => {
  const item = project.items.find(({ id }) => id === sheet.itemId);
  return item ? nameOfItem(item) : sheet.name;
};

const placeOf = (project: JointGround, { sheet, edgeId }: LinkedEdge) => ({
  place: { itemId: sheet.itemId, nodeId: edgeId },
  name: nameOfSheet(project, sheet),
});

const apart = (project: JointGround, linked: LinkedEdge, gap: NonNullable<Meeting["gap"]>): Problem => ({
  ...placeOf(project, linked),
  kind: "sheets-do-not-meet",
  otherName: nameOfSheet(project, gap.candidate.sheet),
  gapMm: gap.gapMm,
  at: { x: gap.at.x, y: gap.at.y },
});

const thirdProblem = (
  project: JointGround,
  linked: LinkedEdge,
  third: NonNullable<Meeting["third"]>,
): Problem => ({
  ...placeOf(project, linked),
  kind: "edge-has-three-sheets",
  otherName: nameOfSheet(project, third.sheets[0]),
  thirdName: nameOfSheet(project, third.sheets[1]),
  at: { x: third.at.x, y: third.at.y },
});
