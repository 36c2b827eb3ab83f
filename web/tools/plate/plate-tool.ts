import { type Command, newPlate } from "../../../core/project/index.ts";
import { type Drawing, draw, EMPTY_DRAWING, elementsOfDrawing, sightOfDrawing } from "../drawing.ts";
import { itemIdsOf, newId } from "../new-id.ts";
import type { Sight, Step, Tool, ToolContext, ToolEvent } from "../types.ts";

export interface PlateState {
  readonly drawing: Drawing;
  /** Height of the base as typed; undefined takes that of the surface under the first corner. */
  readonly zMm: number | undefined;
}

/** Height of a plate that is drawn where there is no sheet. */
const FIRST_HEIGHT_MM = 60;
const RULES = { view: "plan", closes: true, leastNodes: 3 } as const;

/** Draws the base of a folded plate in plan; its wings are added to its edges afterwards. */
export const plateTool: Tool<PlateState> = {
  start: { drawing: EMPTY_DRAWING, zMm: undefined },
  step,
  sight,
};

function step(state: PlateState, event: ToolEvent, context: ToolContext): Step<PlateState> {
  if (event.kind === "choose-height") return { state: { ...state, zMm: event.zMm }, commands: [] };
  const { drawing, outcome } = draw(state.drawing, event, context, RULES);
  if (outcome === "leave") return { state: plateTool.start, commands: [], tool: "select" };
  if (outcome === "going") return { state: { ...state, drawing }, commands: [] };
  const id = newId("pl", itemIdsOf(context.project));
  return {
    state: plateTool.start,
    commands: [addPlate(id, drawing, heightOf({ ...state, drawing }, context), context)],
    selection: { kind: "item", itemId: id },
    tool: "select",
  };
}

function heightOf({ zMm, drawing }: PlateState, { heightOver }: ToolContext): number {
  const at = drawing.nodes[0]?.at ?? drawing.pointer?.at;
  return zMm ?? (at && heightOver(at)) ?? FIRST_HEIGHT_MM;
}

function addPlate(id: string, drawing: Drawing, zMm: number, { project }: ToolContext): Command {
  const plates = project.items.filter((item) => item.kind === "plate");
  const number = Math.max(0, ...plates.map((plate) => plate.number)) + 1;
  const elements = elementsOfDrawing(drawing);
  const plate = newPlate({ id, number, name: `Plate ${number}`, elements, closed: true, zMm });
  return { kind: "add-plate", plate };
}

function sight(state: PlateState, context: ToolContext): Sight {
  const { nodes } = state.drawing;
  return {
    ...sightOfDrawing(state.drawing, RULES),
    prompt: promptFor(nodes.length),
    zMm: heightOf(state, context),
    ...(nodes.length >= RULES.leastNodes ? { finish: "Close the base" } : {}),
  };
}

function promptFor(count: number): string {
  if (count === 0) return "Click the first corner of its flat base in the plan, or type it.";
  if (count < RULES.leastNodes) return "Click the next corner, or type where it lies.";
  return "Click the first node, or press Enter, to close the base.";
}
