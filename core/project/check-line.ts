import {
  COINCIDENT_POINTS_MM,
  LARGEST_COORDINATE_MM,
  MOST_NODES,
  ON_CENTRE_LINE_MM,
  type Problem,
  type ProblemPlace,
  sayNode,
  toDegrees,
} from "../foundation/index.ts";
import { isWithin, RANGES, type Range } from "./limits.ts";
import { nameOfItem } from "./names.ts";
import type { Fence, PlanElement, SideNode, SpaceNode, Transition } from "./schema.ts";

/** The thing a line belongs to, as problems name and place it. */
export interface LineOwner {
  readonly name: string;
  readonly place: ProblemPlace;
}

/** The lower edge of a fence, as problems name and place it; its name stands inside a sentence. */
export const lowerEdgeOwner = (fence: Fence): LineOwner => ({
  name: `the lower edge of ${nameOfItem(fence)}`,
  place: { itemId: fence.id, line: "lower-edge" },
});

/** A free edge of a transition, as problems name and place it. */
export const freeEdgeOwner = (transition: Transition, side: "first" | "second"): LineOwner => ({
  name: `the ${side} edge of ${nameOfItem(transition)}`,
  place: { itemId: transition.id, line: side === "first" ? "first-edge" : "second-edge" },
});

const COORDINATE: Range = { least: -LARGEST_COORDINATE_MM, most: LARGEST_COORDINATE_MM };
const POSITIVE: Range = { least: 0, most: LARGEST_COORDINATE_MM };

/**
 * Everything typed wrong on the elements of one line: numbers out of range, ids that come twice, more nodes
 * than can be drawn, and, where `mirrored`, nodes left of the centre line. A line with any of these is not
 * compiled.
 */
export function checkLine(
  elements: readonly (PlanElement | SideNode)[],
  owner: LineOwner,
  symmetry: "mirrored" | "none",
): readonly Problem[] {
  if (elements.length > MOST_NODES)
    return [{ kind: "too-many-nodes", ...owner, count: elements.length, most: MOST_NODES }];
  const seen = new Set<string>();
  return elements.flatMap((element) => {
    const here = { name: owner.name, place: { ...owner.place, nodeId: element.id } };
    const problems: Problem[] = [];
    if (seen.has(element.id))
      problems.push({ kind: "duplicate-id", ...here, field: "node id", id: element.id });
    seen.add(element.id);
    if (element.kind === "node") problems.push(...checkNode(element, here, symmetry));
    return problems;
  });
}

/** As `checkLine`, for the nodes of a free edge in space. */
export function checkSpaceNodes(
  nodes: readonly SpaceNode[],
  owner: LineOwner,
  symmetry: "mirrored" | "none",
): readonly Problem[] {
  const inPlan = nodes.map(({ z: _, ...rest }) => ({ kind: "node" as const, ...rest }));
  const heights = nodes.flatMap((node): readonly Problem[] =>
    isWithin(node.z, COORDINATE)
      ? []
      : [
          {
            kind: "number-out-of-range",
            name: owner.name,
            place: { ...owner.place, nodeId: node.id },
            field: `z of ${sayNode(node.id)}`,
            value: node.z,
            ...COORDINATE,
          },
        ],
  );
  return [...checkLine(inPlan, owner, symmetry), ...heights];
}

function checkNode(
  node: Exclude<PlanElement, { kind: "follow" }> | SideNode,
  owner: LineOwner,
  symmetry: "mirrored" | "none",
): readonly Problem[] {
  const second: readonly [string, number] = "y" in node ? ["y", node.y] : ["z", node.z];
  const numbers: readonly (readonly [string, number | undefined, Range])[] = [
    ["x", node.x, COORDINATE],
    [second[0], second[1], COORDINATE],
    ["Radius", node.radiusMm, POSITIVE],
    ["Knot spacing", node.knotSpacingMm, { least: COINCIDENT_POINTS_MM, most: 10 * LARGEST_COORDINATE_MM }],
    ["Arriving angle", inDegrees(node.tangentInRad), RANGES.tangentDegrees],
    ["Leaving angle", inDegrees(node.tangentOutRad), RANGES.tangentDegrees],
  ];
  const problems: Problem[] = [];
  for (const [label, value, range] of numbers) {
    if (value === undefined || isWithin(value, range)) continue;
    problems.push({
      kind: "number-out-of-range",
      ...owner,
      field: `${label} of ${sayNode(node.id)}`,
      value,
      ...range,
    });
  }
  if (symmetry === "mirrored" && "y" in node && isLeftOfCentreLine(node.y))
    problems.push({ kind: "left-of-centre-line", ...owner, yMm: node.y });
  return problems;
}

const isLeftOfCentreLine = (yMm: number): boolean => yMm < -ON_CENTRE_LINE_MM && yMm >= COORDINATE.least;

const inDegrees = (angleRad: number | undefined): number | undefined =>
  angleRad === undefined ? undefined : toDegrees(angleRad);
