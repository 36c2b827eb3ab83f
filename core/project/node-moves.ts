import type { Vec2 } from "../foundation/index.ts";
import type { Grip, NodeMove } from "./command-types.ts";
import { planLineOf } from "./edit-lines.ts";
import { type Motion, moveInPlan, moveInSide } from "./motion.ts";
import { ownerKey } from "./owner-key.ts";
import type { LineRef, PlanElement, Project, SideNode } from "./schema.ts";

/** The named wholes by key. */
export function wholesOf(project: Project, grips: readonly Grip[]): ReadonlyMap<string, LineRef> {
  const isThere = (line: LineRef) =>
    line.of === "profile"
      ? project.profiles.some(({ id }) => id === line.profileId)
      : line.of === "opening"
        ? project.openings.some(({ id }) => id === line.openingId)
        : project.items.some(({ id }) => id === line.itemId);
  return new Map(
    grips.flatMap(({ line, nodeId }) =>
      nodeId === undefined && isThere(line) ? [[ownerKey(line), line] as const] : [],
    ),
  );
}

/** The lines of a whole whose nodes go along; a fence's lower edge is seen to with the rest of the fence. */
export function linesOf(project: Project, line: LineRef): readonly LineRef[] {
  if (line.of === "profile" || line.of === "opening") return [line];
  const item = project.items.find(({ id }) => id === line.itemId);
  if (item?.kind !== "transition") return [{ of: "item", itemId: line.itemId }];
  return (["first", "second"] as const).flatMap((side) =>
    (["plan", "side"] as const).map((view): LineRef => ({ of: "edge", itemId: item.id, side, view })),
  );
}

interface NodePlace {
  readonly id: string;
  readonly view: "plan" | "side";
  readonly at: Vec2;
}

export function placesOf(project: Project, line: LineRef): readonly NodePlace[] {
  if (line.of === "profile")
    return (project.profiles.find(({ id }) => id === line.profileId)?.nodes ?? []).map(inSide);
  if (line.of === "opening")
    return inPlan(project.openings.find(({ id }) => id === line.openingId)?.outline.elements ?? []);
  const item = project.items.find(({ id }) => id === line.itemId);
  if (!item) return [];
  if (line.of === "item") return inPlan(planLineOf(item).elements);
  if (line.of === "lower-edge")
    return item.kind === "fence" && item.lowerEdge.kind === "heights" ? item.lowerEdge.nodes.map(inSide) : [];
  const edge = item.kind === "transition" ? item[line.side] : undefined;
  if (edge?.kind !== "free") return [];
  return edge.nodes.map(({ id, x, y, z }) =>
    line.view === "plan" ? { id, view: "plan", at: [x, y] } : { id, view: "side", at: [x, z] },
  );
}

const inSide = ({ id, x, z }: SideNode): NodePlace => ({ id, view: "side", at: [x, z] });

const inPlan = (elements: readonly PlanElement[]): readonly NodePlace[] =>
  elements.flatMap((element): readonly NodePlace[] =>
    element.kind === "node" ? [{ id: element.id, view: "plan", at: [element.x, element.y] }] : [],
  );

export function movesOf(
  project: Project,
  line: LineRef,
  motion: Motion,
  nodeId?: string,
): readonly NodeMove[] {
  const inX = xOfEdgeInPlan(project, line, motion);
  return placesOf(project, line).flatMap(({ id, view, at }): readonly NodeMove[] => {
    if (nodeId !== undefined && id !== nodeId) return [];
    if (view === "plan") return [{ line, nodeId: id, to: moveInPlan(at, motion) }];
    const [x, z] = moveInSide(at, motion);
    return [{ line, nodeId: id, to: [inX?.(id) ?? x, z] }];
  });
}

/** Where the nodes of a free edge come to lie in x: what the plan says, which the side view follows. */
function xOfEdgeInPlan(
  project: Project,
  line: LineRef,
  motion: Motion,
): ((nodeId: string) => number | undefined) | undefined {
  if (line.of !== "edge") return undefined;
  const places = placesOf(project, { ...line, view: "plan" });
  const xs = new Map(places.map(({ id, at }) => [id, moveInPlan(at, motion)[0]]));
  return (nodeId) => xs.get(nodeId);
}
