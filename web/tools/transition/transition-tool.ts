import type { Vec2 } from "../../../core/foundation/index.ts";
import {
  type EdgeRef,
  newTransition,
  type SpaceNode,
  type TransitionEdge,
} from "../../../core/project/index.ts";
import { type Drawing, draw, EMPTY_DRAWING, sightOfDrawing } from "../drawing.ts";
import { wordEdge, wordItem } from "../edge-words.ts";
import { itemIdsOf, newId } from "../new-id.ts";
import { isSameLine } from "../scene.ts";
import type { Draft, EdgeWay, ShownEdge, Sight, Step, Tool, ToolContext, ToolEvent } from "../types.ts";
import { edgeRefAt } from "./edge-ref-at.ts";
import { type EdgeToTake, edgesToTake, edgeUnder } from "./edges-to-take.ts";

/** An edge that is given, and how the board shows it until the other is. */
interface GivenEdge {
  readonly edge: TransitionEdge;
  readonly taken?: EdgeToTake;
  readonly drawn?: Draft;
}

export interface TransitionState {
  readonly first: GivenEdge | undefined;
  readonly way: EdgeWay;
  /** The edge that Enter or a click would take. */
  readonly under: EdgeToTake | undefined;
  readonly drawing: Drawing;
  /** Heights of the nodes that are drawn, in their order. */
  readonly heightsMm: readonly number[];
  readonly typedZMm: number | undefined;
}

const RULES = { view: "plan", closes: false, leastNodes: 2 } as const;
/** Height of a free edge that is drawn far from everything. */
const FIRST_HEIGHT_MM = 60;
const START: TransitionState = {
  first: undefined,
  way: "take",
  under: undefined,
  drawing: EMPTY_DRAWING,
  heightsMm: [],
  typedZMm: undefined,
};

/**
 * Makes a transition between two edges. Each is taken by a click on it, or drawn as an edge of its own in plan, at a
 * height that is typed or that of the surface there; it is lifted in the side view afterwards.
 */
export const transitionTool: Tool<TransitionState> = { start: START, step, sight };

function step(state: TransitionState, event: ToolEvent, context: ToolContext): Step<TransitionState> {
  if (event.kind === "choose-height") return stay({ ...state, typedZMm: event.zMm });
  if (event.kind === "choose-way") {
    return stay({ ...state, way: event.way, under: undefined, drawing: EMPTY_DRAWING, heightsMm: [] });
  }
  return isDrawing(state) ? stepDrawing(state, event, context) : stepTaking(state, event, context);
}

const stay = (state: TransitionState): Step<TransitionState> => ({ state, commands: [] });

const isDrawing = ({ way, drawing }: TransitionState): boolean =>
  way === "draw" || drawing.nodes.length > 0 || drawing.pressed !== undefined;

function stepTaking(state: TransitionState, event: ToolEvent, context: ToolContext): Step<TransitionState> {
  switch (event.kind) {
    case "move":
      return stay({ ...pointed(state, event, context), under: edgeUnder(context, event.place) });
    case "press": {
      const under = edgeUnder(context, event.place);
      return under ? take(state, under, context) : stepDrawing(state, event, context);
    }
    case "next-node": {
      const edges = edgesToTake(context);
      const now = edges.findIndex((edge) => isSameEdge(edge, state.under));
      const next = now < 0 && event.by < 0 ? edges.length - 1 : now + event.by;
      return stay({ ...state, under: edges[(next + edges.length) % edges.length] });
    }
    case "finish":
      return state.under ? take(state, state.under, context) : stay(state);
    case "typed":
    case "typing":
      return stepDrawing(state, event, context);
    case "delete":
      return stay({ ...state, first: undefined });
    case "cancel":
      return state.first ? stay(START) : { ...stay(START), tool: "select" };
    default:
      return stay(state);
  }
}

function isSameEdge(one: EdgeToTake, other: EdgeToTake | undefined): boolean {
  return (
    other !== undefined &&
    isSameLine(one.line, other.line) &&
    one.edgeId === other.edgeId &&
    one.hand === other.hand
  );
}

/** Where the pointer is, for a line that may begin there. */
const pointed = (state: TransitionState, event: ToolEvent, context: ToolContext): TransitionState => ({
  ...state,
  drawing: draw(state.drawing, event, context, RULES).drawing,
});

function take(state: TransitionState, taken: EdgeToTake, context: ToolContext): Step<TransitionState> {
  const edge = refOf(taken, context);
  if (!edge || isSameEdge(taken, state.first?.taken)) return stay(state);
  return give(state, { edge: { kind: "stretch", edge }, taken }, context);
}

const refOf = ({ line, edgeId, hand }: EdgeToTake, { project }: ToolContext): EdgeRef | undefined =>
  line.of === "item" ? edgeRefAt(project, { itemId: line.itemId, edgeId, hand }) : undefined;

function stepDrawing(state: TransitionState, event: ToolEvent, context: ToolContext): Step<TransitionState> {
  const { drawing, outcome } = draw(state.drawing, event, context, RULES);
  // Escape with nothing drawn goes back to taking edges.
  if (outcome === "leave") return stay({ ...state, way: "take", drawing, heightsMm: [] });
  const next = { ...state, drawing, under: undefined, heightsMm: heightsFor(state, drawing, context) };
  if (outcome === "going") return stay(next);
  const nodes = spaceNodes(next);
  const drawn: Draft = { view: "plan", nodes: drawing.nodes, closes: false };
  return give(next, { edge: { kind: "free", nodes }, drawn }, context);
}

const heightsFor = (state: TransitionState, { nodes }: Drawing, context: ToolContext): readonly number[] =>
  nodes.map((node, index) => state.heightsMm[index] ?? heightAt(state, node.at, context));

/** As typed; else of what lies there; else of the node before. */
function heightAt(
  { typedZMm, heightsMm }: TransitionState,
  at: Vec2 | undefined,
  context: ToolContext,
): number {
  return typedZMm ?? (at && context.heightOver(at)) ?? heightsMm.at(-1) ?? FIRST_HEIGHT_MM;
}

/** Nodes of the second edge count on from those of the first, so that each has a name of its own. */
function spaceNodes({ first, drawing, heightsMm }: TransitionState): readonly SpaceNode[] {
  const before = first?.edge.kind === "free" ? first.edge.nodes.length : 0;
  return drawing.nodes.map((node, index) => ({
    id: `n${before + index + 1}`,
    x: node.at[0],
    y: node.at[1],
    z: heightsMm[index] ?? FIRST_HEIGHT_MM,
    next: node.next,
  }));
}

function give(state: TransitionState, given: GivenEdge, { project }: ToolContext): Step<TransitionState> {
  if (!state.first) return stay({ ...START, typedZMm: state.typedZMm, first: given });
  const id = newId("t", itemIdsOf(project));
  const others = project.items.filter((item) => item.kind === "transition");
  const number = Math.max(0, ...others.map((other) => other.number)) + 1;
  const name = `Transition ${number}`;
  const edges = { first: state.first.edge, second: given.edge };
  return {
    state: START,
    commands: [{ kind: "add-transition", transition: newTransition({ id, number, name, ...edges }) }],
    selection: { kind: "item", itemId: id },
    tool: "select",
  };
}

function sight(state: TransitionState, context: ToolContext): Sight {
  const { first, under, drawing } = state;
  const { draft, ...fields } = sightOfDrawing(drawing, RULES);
  const edges: readonly ShownEdge[] = [
    ...(first?.taken ? [{ ...first.taken, isTaken: true }] : []),
    ...(under ? [{ ...under, isTaken: false }] : []),
  ];
  const { snap, ...withoutSnap } = fields;
  return {
    // Over an edge that would be taken a snap would say something else.
    ...(under ? withoutSnap : fields),
    ...(draft && !under ? { draft } : {}),
    ...(first?.drawn ? { drawnBefore: first.drawn } : {}),
    edges,
    way: isDrawing(state) ? "draw" : "take",
    prompt: under && !isDrawing(state) ? promptOver(under, context) : promptFor(state),
    zMm: heightAt(state, drawing.pointer?.at, context),
    ...finishFor(state),
  };
}

function finishFor(state: TransitionState): Pick<Sight, "finish"> {
  if (isDrawing(state)) {
    return state.drawing.nodes.length >= RULES.leastNodes ? { finish: "End the edge" } : {};
  }
  return state.under ? { finish: "Take this edge" } : {};
}

/** Names the edge, so that who takes it by the keys knows which it is. */
function promptOver({ line, edgeId, hand }: EdgeToTake, { project }: ToolContext): string {
  if (line.of !== "item") return "";
  const edge = `${wordItem(project, line.itemId)}, ${wordEdge(project, { itemId: line.itemId, edgeId })}`;
  return `${edge}${hand === "left" ? ", its image" : ""}: click or press Enter to take it.`;
}

function promptFor(state: TransitionState): string {
  const which = state.first ? "ends" : "begins";
  if (!isDrawing(state)) {
    return `Click the edge where it ${which}, or bare paper to draw one.`;
  }
  const count = state.drawing.nodes.length;
  if (count === 0) return `Click the first node of the edge where it ${which}, or type it.`;
  if (count < RULES.leastNodes) return "Click the next node of the edge, or type where it lies.";
  return "Click on, or press Enter to end the edge.";
}
