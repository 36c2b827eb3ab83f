import { assertNever } from "../foundation/index.ts";
import type { Command, FenceChanges, LineRef, NodeChanges, SectionChanges } from "./command-types.ts";
import { deleteNode } from "./delete-node.ts";
import { editItem, editLine, editProfile, replaceOne, withPlanLine } from "./edit-lines.ts";
import { followEdge } from "./follow-edge.ts";
import { moveNode } from "./move-node.ts";
import type { Item, PlanElement, PlanNode, Profile, Project, SideNode } from "./schema.ts";
import { splitLine } from "./split-line.ts";
import { unfollowEdge, unfollowItem } from "./unfollow-edge.ts";
import { withChanges } from "./with-changes.ts";

/**
 * The document after a command; what the command does not touch is shared with the document before. A command
 * that names something unknown, or an id that is taken, gives the very same document.
 */
export function applyCommand(project: Project, command: Command): Project {
  switch (command.kind) {
    case "add-section":
      return addItem(
        command.profile ? addProfile(project, command.profile) : project,
        command.section,
        project,
      );
    case "add-fence":
      return addItem(project, command.fence, project);
    case "add-profile":
      return addProfile(project, command.profile);
    case "delete-item":
      return deleteItem(project, command.itemId);
    case "delete-profile":
      return deleteProfile(project, command.profileId);
    case "change-section":
      return changeItem(project, command.itemId, command.changes, "section");
    case "change-fence":
      return changeItem(project, command.itemId, command.changes, "fence");
    case "rename-profile":
      return editProfile(project, command.profileId, (profile) =>
        withChanges(profile, { name: command.name }, []),
      );
    case "move-node":
      return moveNode(project, command.line, command.nodeId, command.to);
    case "change-node":
      return changeNode(project, command.line, command.nodeId, command.changes);
    case "append-node":
      return appendNode(project, command.line, command.node);
    case "split-segment":
      return splitLine(project, command.line, command);
    case "delete-node":
      return deleteNode(project, command.line, command.nodeId);
    case "close-outline":
      return closeOutline(project, command.itemId);
    case "follow-edge":
      return followEdge(project, command.itemId, command, {
        id: command.newId,
        edge: command.edge,
        direction: command.direction,
      });
    case "unfollow-edge":
      return unfollowEdge(project, command.itemId, command.followId);
    case "change-settings":
      return withChanges(project, command.changes, []);
    default:
      return assertNever(command);
  }
}

/** `refused` is what to give back where the item's id is taken. */
function addItem(project: Project, item: Item, refused: Project): Project {
  if (project.items.some(({ id }) => id === item.id)) return refused;
  return { ...project, items: [...project.items, item] };
}

function addProfile(project: Project, profile: Profile): Project {
  if (project.profiles.some(({ id }) => id === profile.id)) return project;
  return { ...project, profiles: [...project.profiles, profile] };
}

/** What followed the item's edges stays where it runs. */
function deleteItem(project: Project, itemId: string): Project {
  if (!project.items.some(({ id }) => id === itemId)) return project;
  const freed = unfollowItem(project, itemId);
  return { ...freed, items: freed.items.filter(({ id }) => id !== itemId) };
}

function deleteProfile(project: Project, profileId: string): Project {
  if (!project.profiles.some(({ id }) => id === profileId)) return project;
  return { ...project, profiles: project.profiles.filter(({ id }) => id !== profileId) };
}

function changeItem(
  project: Project,
  itemId: string,
  changes: SectionChanges | FenceChanges,
  kind: Item["kind"],
): Project {
  return editItem(project, itemId, (item) => {
    if (item.kind !== kind) return item;
    return item.kind === "section"
      ? withChanges(item, changes, ["pivotYMm", "core"])
      : withChanges(item, changes, ["core"]);
  });
}

const closeOutline = (project: Project, itemId: string): Project =>
  editItem(project, itemId, (item) =>
    item.kind === "section" ? withPlanLine(item, withChanges(item.outline, { closed: true }, [])) : item,
  );

const OPTIONAL_ON_NODES = [
  "radiusMm",
  "meets",
  "tangentInRad",
  "tangentOutRad",
  "knotSpacingMm",
  "edgeName",
] as const;

function changeNode(project: Project, line: LineRef, nodeId: string, changes: NodeChanges): Project {
  const isNode = (element: { readonly id: string }) => element.id === nodeId;
  // A straight segment has no knots.
  const all = changes.next === "line" ? { ...changes, knotSpacingMm: undefined } : changes;
  return editLine(project, line, {
    plan: (elements) => replaceOne(elements, isNode, (element) => changeElement(element, all)),
    side: (nodes) => replaceOne(nodes, isNode, (node) => withChanges(node, all, OPTIONAL_ON_NODES)),
  });
}

function changeElement(element: PlanElement, changes: NodeChanges): PlanElement {
  if (element.kind === "node") return withChanges(element, changes, OPTIONAL_ON_NODES);
  const { next } = changes;
  const own = "edgeName" in changes ? { edgeName: changes.edgeName } : {};
  return withChanges(element, { ...own, next }, ["edgeName"]);
}

function appendNode(project: Project, line: LineRef, node: PlanNode | SideNode): Project {
  const isTaken = (list: readonly { readonly id: string }[]) => list.some(({ id }) => id === node.id);
  return editLine(project, line, {
    plan: (elements) => ("y" in node && !isTaken(elements) ? [...elements, node] : elements),
    side: (nodes) => ("z" in node && !isTaken(nodes) ? [...nodes, node] : nodes),
  });
}
