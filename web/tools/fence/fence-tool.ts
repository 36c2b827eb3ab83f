import { type Fence, newFence } from "../../../core/project/index.ts";
import { type Drawing, draw, EMPTY_DRAWING, elementsOfDrawing, sightOfDrawing } from "../drawing.ts";
import { itemIdsOf, newId } from "../new-id.ts";
import type { Sight, Step, Tool, ToolContext, ToolEvent } from "../types.ts";
import { lowerEdgeUnder } from "./lower-edge-under.ts";

export interface FenceState {
  readonly drawing: Drawing;
}

const RULES = { view: "plan", closes: false, leastNodes: 2 } as const;

/** Draws the line of a fence in plan; its lower edge follows 40 mm under the sheet that it hangs from. */
export const fenceTool: Tool<FenceState> = { start: { drawing: EMPTY_DRAWING }, step, sight };

function step(state: FenceState, event: ToolEvent, context: ToolContext): Step<FenceState> {
  const { drawing, outcome } = draw(state.drawing, event, context, RULES);
  if (outcome === "leave") return { state: fenceTool.start, commands: [], tool: "select" };
  if (outcome === "going") return { state: { drawing }, commands: [] };
  const id = newId("f", itemIdsOf(context.project));
  return {
    state: fenceTool.start,
    commands: [{ kind: "add-fence", fence: fenceFrom(id, drawing, context) }],
    selection: { kind: "item", itemId: id },
    tool: "select",
  };
}

function sight({ drawing }: FenceState): Sight {
  return {
    ...sightOfDrawing(drawing, RULES),
    prompt: promptFor(drawing),
    ...(drawing.nodes.length >= RULES.leastNodes ? { finish: "End the fence" } : {}),
  };
}

function promptFor({ nodes }: Drawing): string {
  if (nodes.length === 0) return "Click where the fence begins, under a section, or type it.";
  if (nodes.length < RULES.leastNodes) return "Click the next node of the fence, or type where it lies.";
  return "Click on, or press Enter to end the fence.";
}

function fenceFrom(id: string, drawing: Drawing, context: ToolContext): Fence {
  const fences = context.project.items.filter((item) => item.kind === "fence");
  const number = Math.max(0, ...fences.map((fence) => fence.number)) + 1;
  const elements = elementsOfDrawing(drawing);
  const fence = newFence({ id, number, name: `Fence ${number}`, elements });
  const lowerEdge = lowerEdgeUnder(
    drawing.nodes.map((node) => node.at),
    context,
  );
  return lowerEdge ? { ...fence, lowerEdge } : fence;
}
