import { assertNever } from "../foundation/index.ts";
import type { Command, LineRef, NodeChanges } from "./command-types.ts";
import { addCopies } from "./copies.ts";
import { deleteNode } from "./delete-node.ts";
import { editItem, editLine, editOpening, editProfile, replaceOne, withPlanLine } from "./edit-lines.ts";
import {
  addNote,
  addUnderlay,
  changeNote,
  changeUnderlay,
  deleteNote,
  deleteUnderlay,
} from "./edit-remarks.ts";
import { followEdge } from "./follow-edge.ts";
import { joinItems } from "./join-items.ts";
import { moveNodes } from "./move-nodes.ts";
import { offsetInPlace } from "./offset-line.ts";
import { keepPins } from "./pin-place.ts";
import type {
  Item,
  Opening,
  PlanElement,
  PlanNode,
  Profile,
  Project,
  SideNode,
  SpaceNode,
} from "./schema.ts";
import { setStanding } from "./set-standing.ts";
import { splitItem } from "./split-item.ts";
import { splitLine } from "./split-line.ts";
import { transformThings } from "./transform-things.ts";
import { unfollowEdge, unfollowItem } from "./unfollow-edge.ts";
import { withChanges } from "./with-changes.ts";

/**
 * The document after a command, its notes still pinned; what the command does not touch is shared with the
 * document before. A command that names something unknown, or an id that is taken, gives the very same document.
 */
export const applyCommand = (project: Project, command: Command): Project =>
  keepPins(project, carryOut(project, command));

function carryOut(project: Project, command: Command): Project {
  switch (command.kind) {
    case "add-section":
      return addItem(
        command.profile ? addProfile(project, command.profile) : project,
        command.section,
        project,
      );
    case "add-fence":
      return addItem(project, command.fence, project);
    case "add-transition":
      return addItem(project, command.transition, project);
    case "add-plate":
      return addItem(project, command.plate, project);
    case "add-opening":
      return addOpening(project, command.opening);
    case "add-profile":
      return addProfile(project, command.profile);
    case "delete-item":
      return deleteItem(project, command.itemId);
    case "delete-opening":
      return deleteOpening(project, command.openingId);
    case "delete-profile":
      return deleteProfile(project, command.profileId);
    case "change-section":
      return editItem(project, command.itemId, (item) =>
        item.kind === "section" ? withChanges(item, command.changes, ["pivotYMm", "bends", "core"]) : item,
      );
    case "change-fence":
      return editItem(project, command.itemId, (item) =>
        item.kind === "fence" ? withChanges(item, command.changes, ["bends", "core", "panel"]) : item,
      );
    case "change-transition":
      return editItem(project, command.itemId, (item) =>
        item.kind === "transition"
          ? withChanges(item, command.changes, ["rulings", "coreSide", "core"])
          : item,
      );
    case "change-plate":
      return editItem(project, command.itemId, (item) =>
        item.kind === "plate" ? withChanges(item, command.changes, []) : item,
      );
    case "change-opening":
      return editOpening(project, command.openingId, (opening) =>
        withChanges(opening, command.changes, ["itemId"]),
      );
    case "ease-edge":
      return editLine(
        project,
        { of: "edge", itemId: command.itemId, side: command.side, view: "plan" },
        { space: () => command.nodes },
      );
    case "rename-profile":
      return editProfile(project, command.profileId, (profile) =>
        withChanges(profile, { name: command.name }, []),
      );
    case "move-node":
      return moveNodes(project, [command]);
    case "move-nodes":
      return moveNodes(project, command.moves);
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
    case "add-note":
      return addNote(project, command.note);
    case "change-note":
      return changeNote(project, command.noteId, command.changes);
    case "delete-note":
      return deleteNote(project, command.noteId);
    case "add-underlay":
      return addUnderlay(project, command.underlay);
    case "change-underlay":
      return changeUnderlay(project, command.underlayId, command.changes);
    case "delete-underlay":
      return deleteUnderlay(project, command.underlayId);
    case "set-standing":
      return setStanding(project, command.things, command.standing);
    case "transform":
      return transformThings(project, command.grips, command.motion);
    case "add-copies":
      return addCopies(project, command.copies);
    case "offset-line":
      return offsetInPlace(project, command.line, command.distanceMm);
    case "split-item":
      return splitItem(project, command.itemId, command.nodeIds, command.half);
    case "join-items": {
      const joined = joinItems(project, command.firstId, command.secondId);
      return joined.ok ? joined.project : project;
    }
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

function addOpening(project: Project, opening: Opening): Project {
  if (project.openings.some(({ id }) => id === opening.id)) return project;
  return { ...project, openings: [...project.openings, opening] };
}

function deleteOpening(project: Project, openingId: string): Project {
  const openings = project.openings.filter(({ id }) => id !== openingId);
  return openings.length === project.openings.length ? project : { ...project, openings };
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

const closeOutline = (project: Project, itemId: string): Project =>
  editItem(project, itemId, (item) =>
    item.kind === "section" || item.kind === "plate"
      ? withPlanLine(item, withChanges(item.outline, { closed: true }, []))
      : item,
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
    space: (nodes) =>
      replaceOne(nodes, isNode, (node) => withChanges(node, spaceChanges(all), OPTIONAL_IN_SPACE)),
  });
}

const OPTIONAL_IN_SPACE = ["radiusMm", "meets", "knotSpacingMm"] as const;

/** What a node in space has of a node's changes: no angles of its own, no name of an edge. */
function spaceChanges(changes: NodeChanges): Pick<NodeChanges, "radiusMm" | "meets" | "next"> {
  const { tangentInRad: _in, tangentOutRad: _out, edgeName: _name, ...rest } = changes;
  return rest;
}

function changeElement(element: PlanElement, changes: NodeChanges): PlanElement {
  if (element.kind === "node") return withChanges(element, changes, OPTIONAL_ON_NODES);
  const { next } = changes;
  const own = "edgeName" in changes ? { edgeName: changes.edgeName } : {};
  return withChanges(element, { ...own, next }, ["edgeName"]);
}

function appendNode(project: Project, line: LineRef, node: PlanNode | SideNode | SpaceNode): Project {
  const isTaken = (list: readonly { readonly id: string }[]) => list.some(({ id }) => id === node.id);
  return editLine(project, line, {
    plan: (elements) =>
      "kind" in node && "y" in node && !isTaken(elements) ? [...elements, node] : elements,
    side: (nodes) => ("kind" in node && "z" in node && !isTaken(nodes) ? [...nodes, node] : nodes),
    space: (nodes) => (!("kind" in node) && !isTaken(nodes) ? [...nodes, node] : nodes),
  });
}
