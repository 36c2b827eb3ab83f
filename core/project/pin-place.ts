import { planLineOf } from "./edit-lines.ts";
import type { LineRef, Note, PlanElement, Project, SideNode, ViewPoint } from "./schema.ts";

/** Where a note's pin stands in its view, in mm; undefined when its node is not there, or shows in the other view. */
export function pinPlace(project: Project, note: Note): ViewPoint | undefined {
  const { pin } = note;
  if (pin.kind === "place") return pin.at;
  return viewOfLine(pin.line) === note.view ? nodePlace(project, pin.line, pin.nodeId) : undefined;
}

/** The upper left corner of a note's text in its view, in mm; undefined as its pin. */
export function textPlace(project: Project, note: Note): ViewPoint | undefined {
  const pin = pinPlace(project, note);
  return pin && { x: pin.x + note.leader.x, up: pin.up + note.leader.up };
}

/**
 * The document after an edit, with every note whose node the edit took away left at the place where the node
 * was: what a builder wrote is never lost with the thing it was written about.
 */
export function keepPins(before: Project, after: Project): Project {
  if (after === before || after.notes.length === 0) return after;
  const notes = after.notes.map((note) => {
    if (note.pin.kind === "place" || pinPlace(after, note)) return note;
    const at = pinPlace(before, note);
    return at ? { ...note, pin: { kind: "place", at } as const } : note;
  });
  return notes.every((note, index) => note === after.notes[index]) ? after : { ...after, notes };
}

/** The view whose coordinates the nodes of a line have. */
export function viewOfLine(line: LineRef): Note["view"] {
  switch (line.of) {
    case "item":
    case "opening":
      return "plan";
    case "profile":
    case "lower-edge":
      return "side";
    case "edge":
      return line.view;
  }
}

/** A node's own coordinates in the view of its line; undefined for a depth, a following piece, and what is not there. */
export function nodePlace(project: Project, line: LineRef, nodeId: string): ViewPoint | undefined {
  const item = "itemId" in line ? project.items.find(({ id }) => id === line.itemId) : undefined;
  switch (line.of) {
    case "item":
      return item && inPlan(planLineOf(item).elements, nodeId);
    case "opening":
      return inPlan(project.openings.find(({ id }) => id === line.openingId)?.outline.elements ?? [], nodeId);
    case "profile":
      return inSide(project.profiles.find(({ id }) => id === line.profileId)?.nodes ?? [], nodeId);
    case "lower-edge":
      if (item?.kind !== "fence" || item.lowerEdge.kind !== "heights") return undefined;
      return inSide(item.lowerEdge.nodes, nodeId);
    case "edge": {
      const edge = item?.kind === "transition" ? item[line.side] : undefined;
      const node = edge?.kind === "free" ? edge.nodes.find(({ id }) => id === nodeId) : undefined;
      return node && { x: node.x, up: line.view === "plan" ? node.y : node.z };
    }
  }
}

function inPlan(elements: readonly PlanElement[], nodeId: string): ViewPoint | undefined {
  const node = elements.find(({ id }) => id === nodeId);
  return node?.kind === "node" ? { x: node.x, up: node.y } : undefined;
}

function inSide(nodes: readonly SideNode[], nodeId: string): ViewPoint | undefined {
  const node = nodes.find(({ id }) => id === nodeId);
  return node && { x: node.x, up: node.z };
}
