import type { LineRef } from "./command-types.ts";
import type {
  Fence,
  Item,
  Opening,
  PlanElement,
  PlanLine,
  Profile,
  Project,
  SideNode,
  SpaceNode,
  Transition,
} from "./schema.ts";

type DepthNode = Extract<Fence["lowerEdge"], { kind: "depths" }>["nodes"][number];

/** What to do with a line of each kind; a kind that is left out stays as it is. */
export interface LineEdits {
  readonly plan?: (elements: readonly PlanElement[]) => readonly PlanElement[];
  readonly side?: (nodes: readonly SideNode[]) => readonly SideNode[];
  readonly depths?: (nodes: readonly DepthNode[]) => readonly DepthNode[];
  readonly space?: (nodes: readonly SpaceNode[]) => readonly SpaceNode[];
}

/** The document with one of its drawn lines edited; the same document when there is no such line or no change. */
export function editLine(project: Project, line: LineRef, edits: LineEdits): Project {
  switch (line.of) {
    case "profile":
      return editProfile(project, line.profileId, (profile) => {
        const nodes = edits.side?.(profile.nodes) ?? profile.nodes;
        return nodes === profile.nodes ? profile : { ...profile, nodes };
      });
    case "item":
      return editPlanLine(project, line.itemId, (planLine) => {
        const elements = edits.plan?.(planLine.elements) ?? planLine.elements;
        return elements === planLine.elements ? planLine : { ...planLine, elements };
      });
    case "lower-edge":
      return editItem(project, line.itemId, (item) =>
        item.kind === "fence" ? editLowerEdge(item, edits) : item,
      );
    case "edge":
      return editItem(project, line.itemId, (item) =>
        item.kind === "transition" ? editFreeEdge(item, line.side, edits) : item,
      );
    case "opening":
      return editOpening(project, line.openingId, (opening) => {
        const { outline } = opening;
        const elements = edits.plan?.(outline.elements) ?? outline.elements;
        return elements === outline.elements ? opening : { ...opening, outline: { ...outline, elements } };
      });
  }
}

/** The document with one item changed. */
export function editItem(project: Project, itemId: string, edit: (item: Item) => Item): Project {
  const items = replaceOne(project.items, (item) => item.id === itemId, edit);
  return items === project.items ? project : { ...project, items };
}

/** The document with the line in plan of one item changed. */
export function editPlanLine(project: Project, itemId: string, edit: (line: PlanLine) => PlanLine): Project {
  return editItem(project, itemId, (item) => withPlanLine(item, edit(planLineOf(item))));
}

/** The document with one profile changed. */
export function editProfile(
  project: Project,
  profileId: string,
  edit: (profile: Profile) => Profile,
): Project {
  const profiles = replaceOne(project.profiles, (profile) => profile.id === profileId, edit);
  return profiles === project.profiles ? project : { ...project, profiles };
}

/** The document with one opening changed. */
export function editOpening(
  project: Project,
  openingId: string,
  edit: (opening: Opening) => Opening,
): Project {
  const openings = replaceOne(project.openings, (opening) => opening.id === openingId, edit);
  return openings === project.openings ? project : { ...project, openings };
}

/** The outline of a section or plate, the line of a fence; a transition has none: its two edges make its outline. */
export function planLineOf(item: Item): PlanLine {
  if (item.kind === "transition") return NO_LINE;
  return item.kind === "fence" ? item.line : item.outline;
}

const NO_LINE: PlanLine = { closed: false, elements: [] };

/** The item with another line in plan. */
export function withPlanLine(item: Item, line: PlanLine): Item {
  if (line === planLineOf(item) || item.kind === "transition") return item;
  return item.kind === "fence" ? { ...item, line } : { ...item, outline: line };
}

/** The list with the first matching entry edited; the same list when nothing matches or changes. */
export function replaceOne<T>(
  list: readonly T[],
  matches: (entry: T) => boolean,
  edit: (entry: T) => T,
): readonly T[] {
  const index = list.findIndex(matches);
  const entry = list[index];
  if (entry === undefined) return list;
  const edited = edit(entry);
  return edited === entry ? list : [...list.slice(0, index), edited, ...list.slice(index + 1)];
}

function editLowerEdge(fence: Fence, edits: LineEdits): Fence {
  const edge = fence.lowerEdge;
  if (edge.kind === "heights") {
    const nodes = edits.side?.(edge.nodes) ?? edge.nodes;
    return nodes === edge.nodes ? fence : { ...fence, lowerEdge: { kind: "heights", nodes } };
  }
  const nodes = edits.depths?.(edge.nodes) ?? edge.nodes;
  return nodes === edge.nodes ? fence : { ...fence, lowerEdge: { kind: "depths", nodes } };
}

function editFreeEdge(transition: Transition, side: "first" | "second", edits: LineEdits): Transition {
  const edge = transition[side];
  if (edge.kind !== "free") return transition;
  const nodes = edits.space?.(edge.nodes) ?? edge.nodes;
  return nodes === edge.nodes ? transition : { ...transition, [side]: { kind: "free", nodes } };
}
