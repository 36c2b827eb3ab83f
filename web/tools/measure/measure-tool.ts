import { distance2, formatAngle, type Vec2 } from "../../../core/foundation/index.ts";
import type { Lengths } from "../../lengths/index.ts";
import type { DrawingView } from "../drawing-view.ts";
import { snapPlace } from "../snaps/index.ts";
import { directionOf } from "../typed-place.ts";
import type { Sight, Snap, Step, Tool, ToolContext, ToolEvent } from "../types.ts";

export interface MeasureState {
  readonly from: { readonly view: DrawingView; readonly at: Vec2 } | undefined;
  /** Set by the second click; the measure stays on the board until the next. */
  readonly to: Vec2 | undefined;
  readonly pointer: Snap | undefined;
  readonly view: DrawingView;
}

/** Measures between two places of one view. */
export const measureTool: Tool<MeasureState> = {
  start: { from: undefined, to: undefined, pointer: undefined, view: "plan" },
  step,
  sight,
};

function step(state: MeasureState, event: ToolEvent, context: ToolContext): Step<MeasureState> {
  switch (event.kind) {
    case "move": {
      const { view } = event.place;
      return { state: { ...state, view, pointer: snapPlace({ place: event.place, context }) }, commands: [] };
    }
    case "press":
      return {
        state: mark(state, event.place.view, snapPlace({ place: event.place, context })),
        commands: [],
      };
    case "cancel":
      return state.from === undefined
        ? { state: measureTool.start, commands: [], tool: "select" }
        : { state: { ...measureTool.start, pointer: state.pointer, view: state.view }, commands: [] };
    default:
      return { state, commands: [] };
  }
}

function mark(state: MeasureState, view: DrawingView, snap: Snap): MeasureState {
  const isSecond = state.from !== undefined && state.to === undefined && state.from.view === view;
  return isSecond
    ? { ...state, to: snap.at, pointer: snap, view }
    : { from: { view, at: snap.at }, to: undefined, pointer: snap, view };
}

function sight({ from, to, pointer, view }: MeasureState, { lengths }: ToolContext): Sight {
  const end = to ?? (from?.view === view ? pointer?.at : undefined);
  return {
    prompt:
      from && end
        ? wordMeasure([from.at, end], from.view, lengths)
        : "Click the two places to measure between.",
    view: from?.view ?? view,
    ...(pointer && view === (from?.view ?? view) ? { snap: pointer } : {}),
    ...(from && end
      ? {
          draft: {
            view: from.view,
            nodes: [{ at: from.at, next: "line" as const }],
            pointer: end,
            closes: false,
          },
        }
      : {}),
  };
}

function wordMeasure([from, to]: readonly [Vec2, Vec2], view: DrawingView, lengths: Lengths): string {
  const [first, second] = view === "plan" ? ["x", "y"] : ["x", "z"];
  const parts = [
    `${lengths.show(distance2(from, to))} ${lengths.unit} at ${formatAngle(directionOf(from, to))}`,
    `${first} ${lengths.show(to[0] - from[0])}`,
    `${second} ${lengths.show(to[1] - from[1])}`,
  ];
  return parts.join(", ");
}
