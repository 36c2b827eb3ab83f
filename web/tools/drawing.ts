import { COINCIDENT_POINTS_MM, distance2, type Vec2 } from "../../core/foundation/index.ts";
import type { PlanNode } from "../../core/project/index.ts";
import type { DrawingView } from "./drawing-view.ts";
import { awayPx } from "./nearest.ts";
import { snapPlace } from "./snaps/index.ts";
import { isTyped, placeTyped } from "./typed-place.ts";
import type { DraftNode, Place, Sight, Snap, ToolContext, ToolEvent, TypedPlace } from "./types.ts";

/** A line while it is being drawn node by node. */
export interface Drawing {
  readonly nodes: readonly DraftNode[];
  readonly pointer: Snap | undefined;
  /** Where the pointer went down: the node is placed where it is let go. */
  readonly pressed: { readonly place: Place; readonly at: Vec2 } | undefined;
  /** Numbers typed for the next node; the pointer says what they leave open. */
  readonly typed: TypedPlace;
  readonly nextSegment: "line" | "curve";
}

export const EMPTY_DRAWING: Drawing = {
  nodes: [],
  pointer: undefined,
  pressed: undefined,
  typed: {},
  nextSegment: "line",
};

export interface DrawingRules {
  readonly view: DrawingView;
  readonly closes: boolean;
  readonly leastNodes: number;
}

export interface Drawn {
  readonly drawing: Drawing;
  /** "done": the line is complete; "leave": cancelled with nothing drawn. */
  readonly outcome: "going" | "done" | "leave";
}

/**
 * A line that is being drawn, after an event: a click, the end of a drag or typed numbers add a node, clicking the first node or
 * the last one again ends it, as Enter does; Delete takes the last node back, Escape all of them, then leaves.
 */
export function draw(drawing: Drawing, event: ToolEvent, context: ToolContext, rules: DrawingRules): Drawn {
  switch (event.kind) {
    case "press":
      return going(press(drawing, event.place, context, rules));
    case "move":
      return going(move(drawing, event.place, context, rules));
    case "release":
      return letGo(drawing, event.place, context, rules);
    case "typed": {
      const at = placeTyped(event.typed, drawing.nodes.at(-1)?.at, drawing.pointer?.at);
      return at === undefined ? going(drawing) : addNode(drawing, at, rules);
    }
    case "typing":
      return going({ ...drawing, typed: event.typed });
    case "finish":
      return { drawing, outcome: drawing.nodes.length >= rules.leastNodes ? "done" : "going" };
    case "delete":
      return going({ ...drawing, nodes: drawing.nodes.slice(0, -1) });
    case "bend":
      return going(bendNext(drawing));
    case "cancel":
      return drawing.nodes.length === 0
        ? { drawing: EMPTY_DRAWING, outcome: "leave" }
        : going({ ...EMPTY_DRAWING, pointer: drawing.pointer });
    default:
      return going(drawing);
  }
}

/** The nodes of a drawing as those of a line in plan. */
export const elementsOfDrawing = ({ nodes }: Drawing): readonly PlanNode[] =>
  nodes.map((node, index) => ({
    kind: "node",
    id: `n${index + 1}`,
    x: node.at[0],
    y: node.at[1],
    next: node.next,
  }));

/** What the board shows of a drawing. */
export function sightOfDrawing(drawing: Drawing, rules: DrawingRules): Omit<Sight, "prompt"> {
  const { nodes } = drawing;
  const from = nodes.at(-1)?.at;
  const pointer = pointerOf(drawing);
  return {
    view: rules.view,
    draft: {
      view: rules.view,
      nodes,
      closes: pointer?.closes === true,
      ...(pointer ? { pointer: pointer.at } : {}),
    },
    ...(pointer ? { snap: pointer } : {}),
    typing: {
      view: rules.view,
      ...(from ? { from } : {}),
      ...(pointer ? { pointer: pointer.at } : {}),
    },
    nextSegment: drawing.nextSegment,
  };
}

const going = (drawing: Drawing): Drawn => ({ drawing, outcome: "going" });

/** Where the next node would go: where the pointer has snapped to, but for what is typed. */
function pointerOf({ pointer, nodes, typed }: Drawing): Snap | undefined {
  if (!isTyped(typed)) return pointer;
  const at = placeTyped(typed, nodes.at(-1)?.at, pointer?.at);
  return at && { at, reasons: ["as typed"] };
}

function press(drawing: Drawing, place: Place, context: ToolContext, rules: DrawingRules): Drawing {
  const pointed = pointAt(drawing, place, context, rules);
  const at = pointerOf(pointed)?.at;
  return { ...pointed, pressed: at && { place, at } };
}

/** A drag from bare paper sets the first node down where it began. */
function move(drawing: Drawing, place: Place, context: ToolContext, rules: DrawingRules): Drawing {
  const { pressed, nodes } = drawing;
  const isDrag =
    pressed !== undefined &&
    nodes.length === 0 &&
    place.view === rules.view &&
    awayPx(place.at, pressed.place.at, place.mmPerPx) > place.reachPx;
  const begun = isDrag ? addNode(drawing, pressed.at, rules).drawing : drawing;
  return pointAt(begun, place, context, rules);
}

function pointAt(drawing: Drawing, place: Place, context: ToolContext, rules: DrawingRules): Drawing {
  if (place.view !== rules.view) return { ...drawing, pointer: undefined, pressed: undefined };
  return { ...drawing, pointer: snapFor(drawing, place, context, rules) };
}

const snapFor = (drawing: Drawing, place: Place, context: ToolContext, rules: DrawingRules): Snap =>
  snapPlace({
    place,
    context,
    draft: drawing.nodes,
    canClose: rules.closes && drawing.nodes.length >= rules.leastNodes,
  });

function letGo(drawing: Drawing, place: Place, context: ToolContext, rules: DrawingRules): Drawn {
  if (!drawing.pressed || place.view !== rules.view) return going({ ...drawing, pressed: undefined });
  const lifted = { ...move(drawing, place, context, rules), pressed: undefined };
  const snap = pointerOf(lifted);
  if (!snap) return going(lifted);
  return snap.closes ? { drawing: lifted, outcome: "done" } : addNode(lifted, snap.at, rules);
}

function addNode(drawing: Drawing, at: Vec2, rules: DrawingRules): Drawn {
  const { nodes } = drawing;
  const isFull = nodes.length >= rules.leastNodes;
  const repeats = (node: DraftNode | undefined) =>
    node !== undefined && distance2(node.at, at) <= COINCIDENT_POINTS_MM;
  if (repeats(nodes.at(-1)) || (rules.closes && repeats(nodes[0]))) {
    return { drawing, outcome: isFull ? "done" : "going" };
  }
  return going({ ...drawing, typed: {}, nodes: [...nodes, { at, next: drawing.nextSegment }] });
}

/** The segment that is being drawn, and those after it, change between straight and curved. */
function bendNext(drawing: Drawing): Drawing {
  const nextSegment = drawing.nextSegment === "line" ? "curve" : "line";
  const last = drawing.nodes.at(-1);
  if (last === undefined) return { ...drawing, nextSegment };
  return { ...drawing, nextSegment, nodes: [...drawing.nodes.slice(0, -1), { ...last, next: nextSegment }] };
}
