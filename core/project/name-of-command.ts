import { sayNode } from "../foundation/index.ts";
import type { Command, Copies, LineRef, NodeChanges, Standing } from "./command-types.ts";
import { fieldWord } from "./field-words.ts";
import { nameOfItem, nameOfNote, nameOfOpening, nameOfProfile, nameOfUnderlay } from "./names.ts";
import { ownerKey } from "./owner-key.ts";
import type { Item, Project, ThingRef } from "./schema.ts";

/** A command in a few plain words for the history, such as "Move node 3 of Outer floor"; told before it is applied. */
export function nameOfCommand(project: Project, command: Command): string {
  switch (command.kind) {
    case "add-section":
      return `Add ${nameOfItem(command.section)}`;
    case "add-fence":
      return `Add ${nameOfItem(command.fence)}`;
    case "add-transition":
      return `Add ${nameOfItem(command.transition)}`;
    case "add-plate":
      return `Add ${nameOfItem(command.plate)}`;
    case "add-opening":
      return `Add ${nameOfOpening(command.opening)}`;
    case "add-profile":
      return `Add ${nameOfProfile(command.profile)}`;
    case "delete-item":
      return `Delete ${itemName(project, command.itemId)}`;
    case "delete-opening":
      return `Delete ${openingName(project, command.openingId)}`;
    case "delete-profile":
      return `Delete ${profileName(project, command.profileId)}`;
    case "change-section":
    case "change-fence":
    case "change-transition":
    case "change-plate":
      return sayChange(itemName(project, command.itemId), command.changes);
    case "change-opening":
      return sayChange(openingName(project, command.openingId), command.changes);
    case "ease-edge":
      return `Ease ${itemName(project, command.itemId)}`;
    case "rename-profile":
      return `Rename ${profileName(project, command.profileId)}`;
    case "move-node":
      return `Move ${nodeName(project, command.line, command.nodeId)}`;
    case "move-nodes":
      return `Move ${ownersName(
        project,
        command.moves.map(({ line }) => line),
      )}`;
    case "change-node":
      return sayNodeChange(nodeName(project, command.line, command.nodeId), command.changes);
    case "append-node":
      return `Add a node to ${lineName(project, command.line)}`;
    case "split-segment":
      return `Put a node behind ${nodeName(project, command.line, command.afterNodeId)}`;
    case "delete-node":
      return `Delete ${nodeName(project, command.line, command.nodeId)}`;
    case "close-outline":
      return `Close ${itemName(project, command.itemId)}`;
    case "follow-edge":
      return `Let ${itemName(project, command.itemId)} follow ${itemName(project, command.edge.itemId)}`;
    case "unfollow-edge":
      return `Give ${itemName(project, command.itemId)} its own nodes`;
    case "add-note":
      return `Pin ${nameOfNote(command.note)}`;
    case "change-note":
      return `Change ${noteName(project, command.noteId)}`;
    case "delete-note":
      return `Delete ${noteName(project, command.noteId)}`;
    case "add-underlay":
      return `Lay ${nameOfUnderlay(command.underlay)} under the drawing`;
    case "change-underlay":
      return `Change ${thingName(project, { of: "underlay", underlayId: command.underlayId })}`;
    case "delete-underlay":
      return `Delete ${thingName(project, { of: "underlay", underlayId: command.underlayId })}`;
    case "set-standing":
      return `${STANDING_VERBS[command.standing]} ${thingNames(project, command.things)}`;
    case "transform":
      return `${MOTION_WORDS[command.motion.kind]} ${ownersName(
        project,
        command.grips.map(({ line }) => line),
      )}`;
    case "add-copies":
      return `Add ${nameOfCopies(command.copies)}`;
    case "offset-line":
      return `Move ${lineName(project, command.line)} to its parallel`;
    case "split-item":
      return `Split ${itemName(project, command.itemId)}`;
    case "join-items":
      return `Join ${itemName(project, command.firstId)} and ${itemName(project, command.secondId)}`;
    case "change-settings":
      return `Change ${settingNames(Object.keys(command.changes))}`;
  }
}

const STANDING_VERBS: Readonly<Record<Standing, string>> = {
  locked: "Lock",
  unlocked: "Unlock",
  hidden: "Hide",
  shown: "Show",
};

/** What is changed on a thing, where it is one field: `Change the tilt of Outer floor`. */
function sayChange(name: string, changes: object): string {
  const [field = "", ...others] = Object.keys(changes);
  if (field === "name" && others.length === 0) return `Rename ${name}`;
  return field !== "" && others.length === 0 ? `Change the ${fieldWord(field)} of ${name}` : `Change ${name}`;
}

function sayNodeChange(name: string, changes: NodeChanges): string {
  const keys = Object.keys(changes);
  if (keys.length !== 1) return `Change ${name}`;
  if (changes.next !== undefined)
    return changes.next === "line" ? `Go straight on from ${name}` : `Go on in a curve from ${name}`;
  return keys[0] === "radiusMm" ? `Change the radius at ${name}` : `Change ${name}`;
}

const MOTION_WORDS = { move: "Move", turn: "Turn", scale: "Scale", mirror: "Mirror" } as const;

function nameOfCopies({ items, openings, profiles }: Copies): string {
  const names = [...items.map(nameOfItem), ...openings.map(nameOfOpening), ...profiles.map(nameOfProfile)];
  const [only] = names;
  return names.length === 1 && only !== undefined ? only : `${names.length} copies`;
}

const SETTING_NAMES: Readonly<Record<string, string>> = {
  title: "the title",
  titleBlock: "the title block",
  symmetry: "mirroring",
  drawnFace: "the drawn face",
  core: "the foam",
  skins: "the skins",
  materials: "the materials",
  stock: "the stock",
  cutting: "the cutting",
  bending: "the bending",
  marking: "the marking out",
  jig: "the jig",
  glue: "the glue",
  schedule: "the calendar",
  shopping: "the shopping list",
  joints: "the joints",
  asBuilt: "the measured foam",
  openingSettings: "the openings",
  paper: "the paper",
};

function settingNames(keys: readonly string[]): string {
  const names = keys.map((key) => SETTING_NAMES[key] ?? key);
  return names.length > 0 ? names.join(" and ") : "nothing";
}

/** `node 3 of Outer floor`, as tables and problems name it. */
const nodeName = (project: Project, line: LineRef, nodeId: string): string =>
  `${sayNode(nodeId)} of ${lineName(project, line)}`;

/** The one thing that all lines belong to, else how many things they belong to. */
function ownersName(project: Project, lines: readonly LineRef[]): string {
  const names = new Map(lines.map((line) => [ownerKey(line), ownerName(project, line)]));
  const [only] = names.values();
  return names.size === 1 && only !== undefined ? only : `${names.size} things`;
}

/** What a line is called: `the lower edge of Side fence`. */
export function lineName(project: Project, line: LineRef): string {
  switch (line.of) {
    case "item":
      return itemName(project, line.itemId);
    case "profile":
      return profileName(project, line.profileId);
    case "lower-edge":
      return `the lower edge of ${itemName(project, line.itemId)}`;
    case "edge":
      return `the ${line.side} edge of ${itemName(project, line.itemId)}`;
    case "opening":
      return openingName(project, line.openingId);
  }
}

/** What the item, profile or opening is called whose line it is. */
export const ownerName = (project: Project, line: LineRef): string =>
  line.of === "lower-edge" || line.of === "edge" ? itemName(project, line.itemId) : lineName(project, line);

const findItem = (project: Project, itemId: string): Item | undefined =>
  project.items.find((item) => item.id === itemId);

function itemName(project: Project, itemId: string): string {
  const item = findItem(project, itemId);
  return item ? nameOfItem(item) : itemId;
}

function openingName(project: Project, openingId: string): string {
  const opening = project.openings.find(({ id }) => id === openingId);
  return opening ? nameOfOpening(opening) : openingId;
}

function profileName(project: Project, profileId: string): string {
  const profile = project.profiles.find((candidate) => candidate.id === profileId);
  return profile ? nameOfProfile(profile) : profileId;
}

function noteName(project: Project, noteId: string): string {
  const note = project.notes.find(({ id }) => id === noteId);
  return note ? nameOfNote(note) : noteId;
}

/** What the builder calls something that can be locked and hidden. */
export function thingName(project: Project, thing: ThingRef): string {
  switch (thing.of) {
    case "item":
      return itemName(project, thing.itemId);
    case "opening":
      return openingName(project, thing.openingId);
    case "profile":
      return profileName(project, thing.profileId);
    case "underlay": {
      const underlay = project.underlays.find(({ id }) => id === thing.underlayId);
      return underlay ? nameOfUnderlay(underlay) : thing.underlayId;
    }
  }
}

/** One name; of several the first, and how many more. */
function thingNames(project: Project, things: readonly ThingRef[]): string {
  const [first, ...rest] = things;
  if (first === undefined) return "nothing";
  const name = thingName(project, first);
  return rest.length === 0 ? name : `${name} and ${rest.length} more`;
}
