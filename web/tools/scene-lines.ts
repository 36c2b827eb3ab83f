import type { Curve } from "../../core/curves/index.ts";
import { assertNever } from "../../core/foundation/index.ts";
import {
  type Fence,
  type Item,
  type LineRef,
  nameOfItem,
  nameOfOpening,
  type Opening,
  type PlanLine,
  type Profile,
  type Project,
  type ResolvedLines,
  type SideNode,
} from "../../core/project/index.ts";
import type { Scene, SceneLine } from "./scene.ts";
import { sceneEdges, sceneNode } from "./scene-edges.ts";
import { transitionLines } from "./transition-lines.ts";

/** Everything drawn in plan and side view, from the document and its compiled lines. Plan before side. */
export function sceneOf(project: Project, resolved: ResolvedLines): Scene {
  return sceneOfLines(project, {
    items: project.items.flatMap((item) => sceneLinesOf(item, resolved)),
    openings: project.openings.map((opening) => sceneOfOpening(opening, resolved)),
    profiles: project.profiles.map((profile) => sceneOfProfile(profile, resolved)),
  });
}

/** A scene put together of the lines of every item, opening and profile. */
export function sceneOfLines(
  project: Project,
  of: {
    readonly items: readonly SceneLine[];
    readonly openings: readonly SceneLine[];
    readonly profiles: readonly SceneLine[];
  },
): Scene {
  const inPlan = of.items.filter((line) => line.view === "plan");
  const inSide = of.items.filter((line) => line.view === "side");
  return {
    mirrored: project.symmetry === "mirrored",
    lines: [...inPlan, ...of.openings, ...of.profiles, ...inSide],
  };
}

/** The line of a profile in the side view. */
export const sceneOfProfile = (profile: Profile, resolved: ResolvedLines): SceneLine =>
  sceneOfSide({
    line: { of: "profile", profileId: profile.id },
    kind: "profile",
    name: profile.name,
    nodes: profile.nodes,
    curve: resolved.profiles[profile.id],
  });

/** The outline of an opening in plan. */
export const sceneOfOpening = (opening: Opening, resolved: ResolvedLines): SceneLine =>
  sceneOfPlan(opening.outline, resolved.openings[opening.id], {
    line: { of: "opening", openingId: opening.id },
    kind: "opening",
    name: nameOfOpening(opening),
  });

/**
 * The lines of an item: its outline or line in plan, the lower edge of a fence that has heights, and the free edges
 * of a transition in both views.
 */
export function sceneLinesOf(item: Item, resolved: ResolvedLines): readonly SceneLine[] {
  const curve = resolved.plan[item.id];
  const shared = { line: { of: "item", itemId: item.id }, name: nameOfItem(item) } as const;
  switch (item.kind) {
    case "section":
    case "plate":
      return [sceneOfPlan(item.outline, curve, { ...shared, kind: item.kind })];
    case "transition":
      return transitionLines(item, curve);
    case "fence":
      return [
        sceneOfPlan(item.line, curve, { ...shared, kind: "fence" }),
        ...lowerEdgeOf(item, resolved.lowerEdges[item.id]),
      ];
    default:
      return assertNever(item);
  }
}

function lowerEdgeOf(fence: Fence, curve: Curve | undefined): readonly SceneLine[] {
  if (fence.lowerEdge.kind !== "heights") return [];
  const line = { of: "lower-edge", itemId: fence.id } as const;
  const { nodes } = fence.lowerEdge;
  return [sceneOfSide({ line, kind: "lower-edge", name: nameOfItem(fence), nodes, curve })];
}

function sceneOfPlan(
  { elements, closed }: PlanLine,
  curve: Curve | undefined,
  fields: Pick<SceneLine, "line" | "kind" | "name">,
): SceneLine {
  const nodes = elements.flatMap((element, index) =>
    element.kind === "node"
      ? [
          sceneNode(
            element,
            [element.x, element.y],
            elements[index - 1] ?? (closed ? elements.at(-1) : undefined),
          ),
        ]
      : [],
  );
  return { ...fields, view: "plan", closed, nodes, ...sceneEdges(elements, nodes, closed, curve) };
}

interface SideLine {
  readonly line: LineRef;
  readonly kind: "profile" | "lower-edge";
  readonly name: string;
  readonly nodes: readonly SideNode[];
  readonly curve: Curve | undefined;
}

function sceneOfSide({ line, kind, name, nodes, curve }: SideLine): SceneLine {
  const drawn = nodes.map((node, index) => sceneNode(node, [node.x, node.z], nodes[index - 1]));
  const edges = sceneEdges(nodes, drawn, false, curve);
  return { line, view: "side", kind, name, closed: false, nodes: drawn, ...edges };
}
