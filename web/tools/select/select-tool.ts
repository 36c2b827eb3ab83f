import { add2, assertNever, distance2, subtract2, type Vec2 } from "../../../core/foundation/index.ts";
import type { LineRef } from "../../../core/project/index.ts";
import { awayPx } from "../nearest.ts";
import { findLine, ownerKey } from "../scene.ts";
import { chosenEdgeId, chosenNodeId, isDrawn, lineOfSelection, selectLine } from "../selected-line.ts";
import { snapPlace } from "../snap-place.ts";
import { chosenOwner, targetAt } from "../target-at.ts";
import type { Place, Selection, Sight, Snap, Step, Target, Tool, ToolContext, ToolEvent } from "../types.ts";
import { bendEdge, deleteChosen, insertNode, nextNode, nudgeChosen } from "./edit-chosen.ts";
import { moveNodeCommands } from "./move-node-commands.ts";
import { allowedMove, moveWholeCommands, startOfWhole, type WholeStart } from "./move-whole-commands.ts";

export type SelectState =
  | { readonly phase: "resting" }
  /** Pressed on something, and not moved far enough yet to drag it. */
  | { readonly phase: "pressed"; readonly at: Place; readonly target: Target; readonly wasChosen: boolean }
  | {
      readonly phase: "moving-node";
      readonly line: LineRef;
      readonly nodeId: string;
      /** From the pointer to the node, as it was grabbed. */
      readonly grip: Vec2;
      readonly snap: Snap;
      readonly view: Place["view"];
    }
  | {
      readonly phase: "moving-item";
      readonly start: WholeStart;
      readonly from: Vec2;
      readonly anchor: Vec2;
      readonly snap: Snap;
    };

/** A press that moves less than this is a click, px. */
const DRAG_PX = 3;
const RESTING: SelectState = { phase: "resting" };

/** Chooses, and drags nodes and whole items: one drag is one step to undo. */
export const selectTool: Tool<SelectState> = { start: RESTING, step, sight };

function step(state: SelectState, event: ToolEvent, context: ToolContext): Step<SelectState> {
  switch (event.kind) {
    case "press":
      return press(event.place, context);
    case "move":
      return move(state, event.place, context);
    case "release":
      return isMoving(state) ? { state: RESTING, commands: [], gesture: "closed" } : rest();
    case "double":
      return double(event.place, context);
    case "cancel":
      return cancel(state, context);
    case "delete":
      return isMoving(state) ? { state, commands: [] } : { state, ...deleteChosen(context) };
    case "next-node":
      return { state, commands: [], ...nextNode(context, event.by) };
    case "nudge":
      return isMoving(state)
        ? { state, commands: [] }
        : { state, commands: nudgeChosen(context, event.byMm) };
    case "bend":
      return { state, commands: bendEdge(context) };
    case "insert":
      return { state, ...insertNode(context, undefined) };
    case "typed":
    case "choose-profile":
    case "choose-height":
    case "choose-shape":
    case "choose-way":
    case "finish":
      return { state, commands: [] };
    default:
      return assertNever(event);
  }
}

const rest = (): Step<SelectState> => ({ state: RESTING, commands: [] });
const isMoving = (state: SelectState): boolean =>
  state.phase === "moving-node" || state.phase === "moving-item";

function press(place: Place, context: ToolContext): Step<SelectState> {
  const target = targetAt(place, context.scene, context.selection);
  if (!target) return pressOnImage(place, context);
  const wasChosen = chosenOwner(context.selection) === ownerKey(target.line);
  return {
    state: { phase: "pressed", at: place, target, wasChosen },
    commands: [],
    selection: selectionOf(target),
  };
}

/** A press on the mirror image chooses what it is the image of; on bare paper it chooses nothing. */
function pressOnImage(place: Place, context: ToolContext): Step<SelectState> {
  const isImage = context.scene.mirrored && place.view === "plan" && place.at[1] < 0;
  const mirrored = { ...place, at: [place.at[0], -place.at[1]] as const };
  const target = isImage ? targetAt(mirrored, context.scene, context.selection) : undefined;
  return { state: RESTING, commands: [], selection: target ? selectLine(target.line) : null };
}

function selectionOf(target: Target): Selection {
  const chosen = selectLine(target.line);
  if (target.on === "node") return { ...chosen, nodeId: target.nodeId };
  return target.on === "edge" ? { ...chosen, edgeId: target.edgeId } : chosen;
}

function move(state: SelectState, place: Place, context: ToolContext): Step<SelectState> {
  switch (state.phase) {
    case "resting":
      return { state, commands: [] };
    case "pressed":
      return awayPx(place.at, state.at.at, place.mmPerPx) < DRAG_PX
        ? { state, commands: [] }
        : beginDrag(state, place, context);
    case "moving-node":
      return dragNode(state, place, context);
    case "moving-item":
      return dragItem(state, place, context);
    default:
      return assertNever(state);
  }
}

type Pressed = Extract<SelectState, { phase: "pressed" }>;
type MovingNode = Extract<SelectState, { phase: "moving-node" }>;
type MovingItem = Extract<SelectState, { phase: "moving-item" }>;

function beginDrag(state: Pressed, place: Place, context: ToolContext): Step<SelectState> {
  const { target, at } = state;
  const snap: Snap = { at: at.at, reasons: [] };
  if (target.on === "node") {
    const node = findLine(context.scene, target.line)?.nodes.find((other) => other.nodeId === target.nodeId);
    if (!node) return rest();
    const grip = subtract2(node.at, at.at);
    const { line, nodeId } = target;
    return dragNode({ phase: "moving-node", line, nodeId, grip, snap, view: at.view }, place, context);
  }
  // Only what was chosen before is dragged as a whole, so that a stray pull moves no sheet.
  if (!state.wasChosen || at.view !== "plan") return { state, commands: [] };
  const start = startOfWhole(context.scene, ownerKey(target.line));
  const anchor = nearestNode(start, at.at);
  return anchor === undefined
    ? rest()
    : dragItem({ phase: "moving-item", start, from: at.at, anchor, snap }, place, context);
}

function nearestNode(start: WholeStart, at: Vec2): Vec2 | undefined {
  const nodes = start.lines.flatMap((line) => (line.view === "plan" ? line.nodes : []));
  const sorted = nodes.toSorted((a, b) => distance2(a.at, at) - distance2(b.at, at));
  return sorted[0]?.at;
}

function dragNode(state: MovingNode, place: Place, context: ToolContext): Step<SelectState> {
  if (place.view !== state.view) return { state, commands: [] };
  const { line, nodeId } = state;
  const wanted = { ...place, at: add2(place.at, state.grip) };
  const snap = snapPlace({ place: wanted, context, moving: { line, nodeId } });
  return {
    state: { ...state, snap },
    commands: moveNodeCommands(context.project, line, nodeId, snap.at),
    gesture: "open",
  };
}

/** The item goes by whole steps of the grid, or until its node nearest to the grip lies on something. */
function dragItem(state: MovingItem, place: Place, context: ToolContext): Step<SelectState> {
  if (place.view !== "plan") return { state, commands: [] };
  const { start, anchor } = state;
  const wanted = { ...place, at: add2(anchor, subtract2(place.at, state.from)) };
  const withoutItself = {
    ...context,
    scene: {
      ...context.scene,
      lines: context.scene.lines.filter(({ line }) => ownerKey(line) !== start.owner),
    },
  };
  const snap = snapPlace({ place: wanted, context: withoutItself });
  const by = allowedMove(start, subtract2(snap.at, anchor), context.scene.mirrored);
  return {
    state: { ...state, snap: { ...snap, at: add2(anchor, by) } },
    commands: moveWholeCommands(start, by),
    gesture: "open",
  };
}

function double(place: Place, context: ToolContext): Step<SelectState> {
  const target = targetAt(place, context.scene, context.selection);
  if (target?.on !== "edge" || target.followed) return rest();
  return { state: RESTING, ...insertNode(context, target) };
}

/** Escape takes a drag back; else it lets go of the node, then of the item. */
function cancel(state: SelectState, context: ToolContext): Step<SelectState> {
  if (isMoving(state)) return { state: RESTING, commands: [], gesture: "abandoned" };
  const { selection } = context;
  const line = lineOfSelection(selection);
  const hasDetail = chosenNodeId(selection) !== undefined || chosenEdgeId(selection) !== undefined;
  return { state: RESTING, commands: [], selection: line && hasDetail ? selectLine(line) : null };
}

function sight(state: SelectState, context: ToolContext): Sight {
  if (state.phase === "moving-node") {
    return {
      prompt: "Let go to set the node down; Alt holds snaps off, Escape puts it back.",
      view: state.view,
      snap: state.snap,
    };
  }
  if (state.phase === "moving-item") {
    return { prompt: "Let go to set it down; Escape puts it back.", view: "plan", snap: state.snap };
  }
  return { prompt: restingPrompt(context) };
}

function restingPrompt({ project, selection }: ToolContext): string {
  if (project.items.length === 0 && project.openings.length === 0)
    return "Nothing is drawn yet. Take Section and draw an outline in the plan.";
  if (!isDrawn(selection)) {
    return "Click a line to choose it. Drag a node to reshape it.";
  }
  if (selection.nodeId !== undefined) {
    return "Drag the node, push it with the arrow keys, or type its place in the table of nodes.";
  }
  return "Drag a node to reshape the line. Double click or tap the line to put a node into it.";
}
