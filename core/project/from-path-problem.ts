import type { PathProblem } from "../curves/index.ts";
import { assertNever, type Problem, sayNode, toDegrees } from "../foundation/index.ts";
import type { LineOwner } from "./check-line.ts";
import { RANGES } from "./limits.ts";

/** What compiling a path found, as problems of the line's owner. */
export function fromPathProblem(problem: PathProblem, owner: LineOwner, axes: "xy" | "xz"): Problem {
  const atNode = (nodeId: string) => ({ name: owner.name, place: { ...owner.place, nodeId } });
  switch (problem.kind) {
    case "too-few-nodes":
    case "too-many-nodes":
      return { ...owner, ...problem };
    case "zero-length-segment":
      return { ...atNode(problem.nodeIds[1]), ...problem };
    case "radius-does-not-fit":
      return {
        ...atNode(problem.nodeId),
        kind: problem.kind,
        radiusMm: problem.radiusMm,
        largestMm: problem.largestMm,
      };
    case "radius-needs-lines":
      return { ...atNode(problem.nodeId), kind: problem.kind };
    case "not-a-number":
    case "number-out-of-range":
      return fromNumberProblem(problem, atNode(problem.nodeId), axes);
    default:
      return assertNever(problem);
  }
}

type NumberProblem = Extract<PathProblem, { kind: "not-a-number" | "number-out-of-range" }>;

function fromNumberProblem(problem: NumberProblem, owner: LineOwner, axes: "xy" | "xz"): Problem {
  const labels = {
    axis0: "x",
    axis1: axes === "xy" ? "y" : "z",
    radiusMm: "Radius",
    tangentInRad: "Arriving angle",
    tangentOutRad: "Leaving angle",
    knotSpacingMm: "Knot spacing",
  } as const;
  const isAngle = problem.field === "tangentInRad" || problem.field === "tangentOutRad";
  const range =
    problem.kind === "number-out-of-range" ? problem : { least: 0, most: RANGES.stockSideMm.most };
  const shown = isAngle ? { ...RANGES.tangentDegrees } : { least: range.least, most: range.most };
  return {
    ...owner,
    kind: "number-out-of-range",
    field: `${labels[problem.field]} of ${sayNode(problem.nodeId)}`,
    value: isAngle ? toDegrees(problem.value) : problem.value,
    ...shown,
  };
}
