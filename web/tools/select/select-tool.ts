import { add2, assertNever, distance2, subtract2, type Vec2 } from "../../../core/foundation/index.ts";
import type { LineRef } from "../../../core/project/index.ts";
import { everything, insideBox } from "../inside-box.ts";
import { awayPx } from "../nearest.ts";
import { findLine, ownerKey } from "../scene.ts";
import { chosenEdgeId, chosenNodeId, isDrawn, lineOfSelection, selectLine } from "../selected-line.ts";
import { gripsOf, isAmong, selectGrips, wholeOf, withGrips, withToggled } from "../several.ts";
import { snapPlace } from "../snaps/index.ts";
import { chosenOwner, targetAt } from "../target-at.ts";
import type { Place, Selection, Sight, Snap, Step, Target, Tool, ToolContext, ToolEvent } from "../types.ts";
import { bendEdge, deleteChosen, insertNode, nextNode, nudgeChosen } from "./edit-chosen.ts";
import { heightRule } from "./height-rule.ts";
import { moveNodeCommands } from "./move-node-commands.ts";
import { allowedMove, moveWholeCommands, startOfGrips, type WholeStart } from "./move-whole-commands.ts";

export type SelectState =
  | { readonly phase: "resting" }
  /** Pressed on something, and not moved far enough yet to drag it. */
  | { readonly phase: "pressed"; readonly at: Place; readonly target: Target; readonly wasChosen: boolean }
  /** Pressed on one of several that are chosen: a drag moves them all, a click chooses this one alone. */
  | { readonly phase: "pressed-several"; readonly at: Place; readonly target: Target }
  /** Pressed to add or take away: a click does that, a drag draws a box. */
  | { readonly phase: "adding"; readonly at: Place; readonly target: Target | undefined }
  | { readonly phase: "boxing"; readonly at: Place; readonly to: Vec2 }
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
      readonly view: Place["view"];
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
      return release(state, context);
    case "double":
      return double(event.place, context);
    case "cancel":
      return cancel(state, context);
    case "delete":
      return isMoving(state) ? { state, commands: [] } : { state, ...deleteChosen(context) };
    case "choose-all":
      return isMoving(state)
        ? { state, commands: [] }
        : { state: RESTING, commands: [], selection: selectGrips(everything(context.scene)) ?? null };
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
    case "typing":
    case "choose-profile":
    case "choose-height":
    case "choose-shape":
    case "choose-way":
    case "choose-task":
    case "write":
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
  if (place.adds) return { state: { phase: "adding", at: place, target }, commands: [] };
  if (!target) return pressOnImage(place, context);
  if (isAmong(context.selection, target))
    return { state: { phase: "pressed-several", at: place, target }, commands: [] };
  const wasChosen = chosenOwner(context.selection) === ownerKey(target.line);
  return {
    state: { phase: "pressed", at: place, target, wasChosen },
    commands: [],
    selection: selectionOf(target),
  };
}

function release(state: SelectState, context: ToolContext): Step<SelectState> {
  if (isMoving(state)) return { state: RESTING, commands: [], gesture: "closed" };
  const chosen = chosenByRelease(state, context);
  return chosen === undefined ? rest() : { ...rest(), selection: chosen };
}

/** What is chosen when a press that moved nothing is let go; undefined where it stays as it is. */
function chosenByRelease(
  state: SelectState,
  { scene, selection }: ToolContext,
): Selection | null | undefined {
  switch (state.phase) {
    case "pressed-several":
      return selectionOf(state.target);
    case "adding":
      return state.target && (withToggled(selection, state.target) ?? null);
    case "boxing":
      return withGrips(selection, insideBox(scene, boxOf(state))) ?? null;
    default:
      return undefined;
  }
}

const boxOf = ({ at, to }: Extract<SelectState, { phase: "boxing" }>) => ({ view: at.view, from: at.at, to });

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
    case "pressed-several":
      return awayPx(place.at, state.at.at, place.mmPerPx) < DRAG_PX
        ? { state, commands: [] }
        : beginMove(startOfGrips(context.scene, gripsOf(context.selection)), state.at, place, context);
    case "adding":
      return awayPx(place.at, state.at.at, place.mmPerPx) < DRAG_PX || place.view !== state.at.view
        ? { state, commands: [] }
        : { state: { phase: "boxing", at: state.at, to: place.at }, commands: [] };
    case "boxing":
      return { state: place.view === state.at.view ? { ...state, to: place.at } : state, commands: [] };
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
  return beginMove(startOfGrips(context.scene, [wholeOf(target.line)]), at, place, context);
}

function beginMove(start: WholeStart, from: Place, place: Place, context: ToolContext): Step<SelectState> {
  const anchor = nearestNode(start, from);
  if (anchor === undefined) return rest();
  const snap: Snap = { at: from.at, reasons: [] };
  return dragItem(
    { phase: "moving-item", start, from: from.at, anchor, snap, view: from.view },
    place,
    context,
  );
}

function nearestNode(start: WholeStart, { at, view }: Place): Vec2 | undefined {
  const nodes = start.lines.flatMap((line) => (line.view === view ? line.nodes : []));
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

/** What is moved goes by whole steps of the grid, or until its node nearest to the grip lies on something. */
function dragItem(state: MovingItem, place: Place, context: ToolContext): Step<SelectState> {
  const { start, anchor, view } = state;
  if (place.view !== view) return { state, commands: [] };
  const wanted = { ...place, at: add2(anchor, subtract2(place.at, state.from)) };
  const moved = new Set(start.lines.map(({ line }) => ownerKey(line)));
  const withoutItself = {
    ...context,
    scene: {
      ...context.scene,
      lines: context.scene.lines.filter(({ line }) => !moved.has(ownerKey(line))),
    },
  };
  const snap = snapPlace({ place: wanted, context: withoutItself });
  const wantedBy = subtract2(snap.at, anchor);
  const by = view === "plan" ? allowedMove(start, wantedBy, context.scene.mirrored) : wantedBy;
  return {
    state: { ...state, snap: { ...snap, at: add2(anchor, by) } },
    commands: moveWholeCommands(start, by, view),
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
  if (state.phase === "boxing") return rest();
  const { selection } = context;
  const line = lineOfSelection(selection);
  const hasDetail = chosenNodeId(selection) !== undefined || chosenEdgeId(selection) !== undefined;
  return { state: RESTING, commands: [], selection: line && hasDetail ? selectLine(line) : null };
}

function sight(state: SelectState, context: ToolContext): Sight {
  if (state.phase === "moving-node") {
    return {
      prompt: `Let go to set the node down; Alt holds snaps off, Escape puts it back. ${heightRule(context, state.line, state.nodeId)}`,
      view: state.view,
      snap: state.snap,
    };
  }
  if (state.phase === "moving-item") {
    return { prompt: "Let go to set it down; Escape puts it back.", view: state.view, snap: state.snap };
  }
  if (state.phase === "boxing") {
    return {
      prompt: "What lies wholly inside is chosen; where nothing does, the nodes inside. Escape leaves off.",
      view: state.at.view,
      box: boxOf(state),
    };
  }
  return { prompt: restingPrompt(context) };
}

function restingPrompt({ project, selection, choosing }: ToolContext): string {
  if (project.items.length === 0 && project.openings.length === 0)
    return "Nothing is drawn yet. Take Section and draw an outline in the plan.";
  if (choosing === "several")
    return "Press what is to be added or taken away, or drag a box round it. Drags with Several off move it.";
  if (selection?.kind === "several")
    return "Drag one of them to move all, push them with the arrow keys, or press with Shift to add and take away.";
  if (!isDrawn(selection)) {
    return "Click a line to choose it, or draw a box with Shift. Drag a node to reshape it.";
  }
  if (selection.nodeId !== undefined) {
    return "Drag the node, push it with the arrow keys, or type its place in the table of nodes.";
  }
  return "Drag a node to reshape the line. Double click or tap the line to put a node into it.";
}
