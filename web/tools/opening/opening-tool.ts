import {
  add2,
  COINCIDENT_POINTS_MM,
  distance2,
  roundTo,
  scale2,
  subtract2,
  type Vec2,
} from "../../../core/foundation/index.ts";
import { type Command, newOpening, type PlanLine } from "../../../core/project/index.ts";
import { wordGrid } from "../../lengths/index.ts";
import { type Drawing, draw, EMPTY_DRAWING, elementsOfDrawing, sightOfDrawing } from "../drawing.ts";
import { newId, openingIdsOf } from "../new-id.ts";
import { snapPlace } from "../snaps/index.ts";
import { isTyped, placeTyped } from "../typed-place.ts";
import type {
  OpeningShape,
  Place,
  Sight,
  Snap,
  Step,
  Tool,
  ToolContext,
  ToolEvent,
  TypedPlace,
} from "../types.ts";
import { type Circle, circleOutline } from "./circle.ts";

export interface OpeningState {
  readonly shape: OpeningShape;
  readonly drawing: Drawing;
  /** Of a circle. */
  readonly centre: Vec2 | undefined;
  readonly pointer: Snap | undefined;
  /** Typed for the circle and not yet set. */
  readonly typed: TypedPlace;
}

const RULES = { view: "plan", closes: true, leastNodes: 3 } as const;
const START: OpeningState = {
  shape: "outline",
  drawing: EMPTY_DRAWING,
  centre: undefined,
  pointer: undefined,
  typed: {},
};

/** Draws an opening in plan, corner by corner or as a circle: its centre, then its radius. */
export const openingTool: Tool<OpeningState> = { start: START, step, sight };

function step(state: OpeningState, event: ToolEvent, context: ToolContext): Step<OpeningState> {
  if (event.kind === "choose-shape") return { state: { ...START, shape: event.shape }, commands: [] };
  if (state.shape === "circle") return stepCircle(state, event, context);
  const { drawing, outcome } = draw(state.drawing, event, context, RULES);
  if (outcome === "leave") return { state: START, commands: [], tool: "select" };
  if (outcome === "going") return { state: { ...state, drawing }, commands: [] };
  return add({ closed: true, elements: elementsOfDrawing(drawing) }, context);
}

function stepCircle(state: OpeningState, event: ToolEvent, context: ToolContext): Step<OpeningState> {
  const stay = (changes: Partial<OpeningState>): Step<OpeningState> => ({
    state: { ...state, ...changes },
    commands: [],
  });
  switch (event.kind) {
    case "move":
      return stay({ pointer: snapOf(event.place, state, context) });
    case "press": {
      const pointer = snapOf(event.place, state, context);
      return stay({ pointer, centre: state.centre ?? typedOr(state, pointer)?.at });
    }
    case "release":
      return endCircle(state, typedOr(state, snapOf(event.place, state, context)), context);
    case "typed":
      return state.centre
        ? add(
            outlineOf(state.centre, typedRadius(event.typed, state.centre, state.pointer), context),
            context,
          )
        : stay({ centre: placeTyped(event.typed, undefined, state.pointer?.at), typed: {} });
    case "typing":
      return stay({ typed: event.typed });
    case "delete":
      return stay({ centre: undefined });
    case "cancel":
      return state.centre ? stay({ centre: undefined }) : { state: START, commands: [], tool: "select" };
    default:
      return stay({});
  }
}

/** About a centre the grid is one of radii, not of places. */
function snapOf(place: Place, { centre }: OpeningState, context: ToolContext): Snap | undefined {
  if (place.view !== "plan") return undefined;
  if (!centre) return snapPlace({ place, context });
  const { snaps } = context;
  const snap = snapPlace({ place, context: { ...context, snaps: { ...snaps, grid: false } } });
  const away = subtract2(snap.at, centre);
  const radiusMm = Math.hypot(...away);
  const onGridMm = Math.round(radiusMm / snaps.gridMm) * snaps.gridMm;
  if (
    snap.reasons.length > 0 ||
    !place.snaps ||
    !snaps.isOn ||
    !snaps.grid ||
    !(onGridMm > 0) ||
    radiusMm === 0
  )
    return snap;
  return {
    at: add2(centre, scale2(away, onGridMm / radiusMm)),
    reasons: [`grid ${wordGrid(context.lengths, snaps.gridMm)}`],
  };
}

/** Where the pointer is, but for what is typed. */
function typedOr({ typed, centre }: OpeningState, pointer: Snap | undefined): Snap | undefined {
  if (!isTyped(typed)) return pointer;
  const at = placeTyped(typed, centre, pointer?.at);
  return at && { at, reasons: ["as typed"] };
}

/** Letting go over the centre is the end of its click; anywhere else it is the end of a drag, or a second click. */
function endCircle(state: OpeningState, pointer: Snap | undefined, context: ToolContext): Step<OpeningState> {
  const { centre } = state;
  if (!centre || !pointer || distance2(centre, pointer.at) <= COINCIDENT_POINTS_MM) {
    return { state: { ...state, pointer }, commands: [] };
  }
  return add(outlineOf(centre, distance2(centre, pointer.at), context), context);
}

function typedRadius(typed: TypedPlace, centre: Vec2, pointer: Snap | undefined): number {
  const at = placeTyped(typed, centre, pointer?.at);
  return typed.lengthMm ?? (at ? distance2(centre, at) : 0);
}

/** With mirroring a circle stays on its half: as a half one about the centre line, else no larger than up to it. */
function circleOn(centre: Vec2, radiusMm: number, { scene }: ToolContext): Circle {
  if (!scene.mirrored || centre[1] >= radiusMm) return { centre, radiusMm, isHalf: false };
  if (centre[1] <= COINCIDENT_POINTS_MM) return { centre: [centre[0], 0], radiusMm, isHalf: true };
  return { centre, radiusMm: centre[1], isHalf: false };
}

const outlineOf = (centre: Vec2, radiusMm: number, context: ToolContext): PlanLine | undefined =>
  radiusMm > COINCIDENT_POINTS_MM
    ? circleOutline(circleOn(centre, roundTo(radiusMm, 6), context))
    : undefined;

function add(outline: PlanLine | undefined, { project }: ToolContext): Step<OpeningState> {
  if (!outline) return { state: START, commands: [] };
  const id = newId("o", openingIdsOf(project));
  const number = Math.max(0, ...project.openings.map((opening) => opening.number)) + 1;
  const opening = newOpening({ id, number, name: `Opening ${number}`, ...outline });
  const command: Command = { kind: "add-opening", opening };
  return {
    state: START,
    commands: [command],
    selection: { kind: "opening", openingId: id },
    tool: "select",
  };
}

function sight(state: OpeningState, context: ToolContext): Sight {
  if (state.shape === "circle") return sightOfCircle(state, context);
  const { nodes } = state.drawing;
  return {
    ...sightOfDrawing(state.drawing, RULES),
    prompt: promptFor(nodes.length),
    shape: state.shape,
    ...(nodes.length >= RULES.leastNodes ? { finish: "Close the opening" } : {}),
  };
}

function promptFor(count: number): string {
  if (count === 0) return "Click the first corner of the opening in the plan, or type it.";
  if (count < RULES.leastNodes) return "Click the next corner, or type where it lies.";
  return "Click the first node, or press Enter, to close the opening.";
}

function sightOfCircle(state: OpeningState, context: ToolContext): Sight {
  const { shape, centre } = state;
  const pointer = typedOr(state, state.pointer);
  const shared = { view: "plan", shape, ...(pointer ? { snap: pointer } : {}) } as const;
  const at = pointer ? { pointer: pointer.at } : {};
  if (!centre) {
    return {
      ...shared,
      prompt: "Click the centre of the circle in the plan, or type it.",
      typing: { view: "plan", ...at },
    };
  }
  const { radiusMm } = circleOn(centre, pointer ? distance2(centre, pointer.at) : 0, context);
  return {
    ...shared,
    prompt: "Click where the circle runs, or type its radius.",
    typing: { view: "plan", from: centre, radius: true, ...at },
    draft: { view: "plan", nodes: [], closes: false, circle: { centre, radiusMm } },
  };
}
