import { distance2, subtract2, type Vec2 } from "../../../core/foundation/index.ts";
import {
  type Command,
  levelled,
  movedBy,
  type Placement,
  pixelInView,
  scaledByTwoPoints,
  turnedAbout,
  type Underlay,
} from "../../../core/project/index.ts";
import type { DrawingView } from "../drawing-view.ts";
import type { PictureTask, Place, Sight, Step, Tool, ToolContext, ToolEvent } from "../types.ts";
import { chosenPicture, pictureUnder } from "./picture-under.ts";

export interface UnderlayState {
  readonly task: PictureTask;
  readonly view: DrawingView;
  /** The picture as it lay when it was taken hold of, and where. */
  readonly drag: { readonly picture: Underlay; readonly from: Vec2 } | undefined;
  /** Places picked on the picture: two ends of a known distance, or of a line that is to be level. */
  readonly picked: readonly Vec2[];
  readonly pointer: Vec2 | undefined;
}

const START: UnderlayState = { task: "move", view: "plan", drag: undefined, picked: [], pointer: undefined };

/** Moves a picture under the drawing, sets its scale by two points and a distance, and levels it by a line. */
export const underlayTool: Tool<UnderlayState> = { start: START, step, sight };

function step(state: UnderlayState, event: ToolEvent, context: ToolContext): Step<UnderlayState> {
  switch (event.kind) {
    case "choose-task":
      return { state: { ...START, view: state.view, task: event.task }, commands: [] };
    case "press":
      return state.task === "move" ? grasp(state, event.place, context) : pick(state, event.place, context);
    case "move":
      return move(state, event.place);
    case "release":
      return state.drag
        ? { state: { ...state, drag: undefined }, commands: [], gesture: "closed" }
        : { state, commands: [] };
    case "typed":
      return scale(state, event.typed.lengthMm, context);
    case "nudge":
      return { state, commands: changed(chosenPicture(context), (picture) => movedBy(picture, event.byMm)) };
    case "delete":
      return remove(state, context);
    case "cancel":
      return cancel(state);
    default:
      return { state, commands: [] };
  }
}

function grasp(state: UnderlayState, place: Place, context: ToolContext): Step<UnderlayState> {
  const picture = pictureUnder(context, place);
  const { view } = place;
  if (!picture) return { state: { ...state, view, drag: undefined }, commands: [], selection: null };
  return {
    state: { ...state, view, drag: { picture, from: place.at } },
    commands: [],
    selection: { kind: "underlay", underlayId: picture.id },
  };
}

/** Picks a place on the chosen picture, or on the one that lies there, which is chosen by it. */
function pick(state: UnderlayState, place: Place, context: ToolContext): Step<UnderlayState> {
  const { view, at } = place;
  const chosen = chosenPicture(context);
  const isBegun = state.picked.length === 1 && state.view === view && chosen !== undefined;
  const picture = isBegun || chosen?.view === view ? chosen : pictureUnder(context, place);
  if (!picture) return { state: { ...state, view, picked: [] }, commands: [] };
  const selection = { kind: "underlay", underlayId: picture.id } as const;
  const first = state.picked[0];
  if (!isBegun || first === undefined)
    return { state: { ...state, view, picked: [at] }, commands: [], selection };
  if (state.task === "scale")
    return { state: { ...state, view, picked: [first, at] }, commands: [], selection };
  return {
    state: { ...START, view },
    commands: changed(picture, () => levelled(picture, [first, at])),
    selection,
  };
}

function move(state: UnderlayState, place: Place): Step<UnderlayState> {
  const { drag } = state;
  if (!drag) return { state: { ...state, view: place.view, pointer: place.at }, commands: [] };
  if (place.view !== drag.picture.view) return { state, commands: [] };
  return {
    state,
    commands: changed(drag.picture, (picture) => movedBy(picture, subtract2(place.at, drag.from))),
    gesture: "open",
  };
}

function scale(
  state: UnderlayState,
  distanceMm: number | undefined,
  context: ToolContext,
): Step<UnderlayState> {
  const [first, second] = state.picked;
  if (!first || !second || distanceMm === undefined) return { state, commands: [] };
  const commands = changed(chosenPicture(context), (picture) =>
    scaledByTwoPoints(picture, [first, second], distanceMm),
  );
  return commands.length === 0 ? { state, commands } : { state: { ...START, view: state.view }, commands };
}

function remove(state: UnderlayState, context: ToolContext): Step<UnderlayState> {
  const picture = chosenPicture(context);
  if (!picture || state.drag) return { state, commands: [] };
  return {
    state: { ...START, view: state.view },
    commands: [{ kind: "delete-underlay", underlayId: picture.id }],
    selection: null,
  };
}

/** Escape puts a dragged picture back; else it lets go of what was picked, of the task, then of the tool. */
function cancel(state: UnderlayState): Step<UnderlayState> {
  if (state.drag) return { state: { ...state, drag: undefined }, commands: [], gesture: "abandoned" };
  if (state.picked.length > 0) return { state: { ...state, picked: [] }, commands: [] };
  if (state.task !== "move") return { state: { ...START, view: state.view }, commands: [] };
  return { state: START, commands: [], tool: "select" };
}

function changed(
  picture: Underlay | undefined,
  change: (picture: Underlay) => Placement | undefined,
): readonly Command[] {
  const placement = picture && change(picture);
  if (!picture || !placement) return [];
  const { origin, mmPerPx, turnRad } = placement;
  return [{ kind: "change-underlay", underlayId: picture.id, changes: { origin, mmPerPx, turnRad } }];
}

function sight(state: UnderlayState, context: ToolContext): Sight {
  const { task, view, picked, pointer } = state;
  const [first, second] = picked;
  return {
    prompt: promptOf(state, context),
    view,
    picture: { task, ...(first && second ? { pickedMm: distance2(first, second) } : {}) },
    ...(first
      ? {
          draft: {
            view,
            nodes: picked.map((at) => ({ at, next: "line" as const })),
            ...(second === undefined && pointer ? { pointer } : {}),
            closes: false,
          },
        }
      : {}),
  };
}

function promptOf({ task, picked, drag }: UnderlayState, context: ToolContext): string {
  const { lengths, project } = context;
  const { underlays } = project;
  const [first, second] = picked;
  if (drag) return "Let go to set the picture down; Escape puts it back.";
  if (underlays.length === 0)
    return "Choose a picture to draw over, drop one on the plan or the side view, or paste one.";
  if (underlays.every(({ locked, hidden }) => locked || hidden))
    return "Every picture is locked or hidden. Choose one in the list to unlock or show it.";
  if (task === "scale" && first && second)
    return `The two points are ${lengths.show(distance2(first, second))} ${lengths.unit} apart now. Type their true distance.`;
  if (task === "scale")
    return first
      ? "Click the other end of the known distance."
      : "Click one end of a distance that you know, such as the wheelbase.";
  if (task === "level")
    return first ? "Click another point of the line." : "Click a point of a line that is to be level.";
  return "Drag the picture to move it. Set its scale by two points; lock it when it lies right.";
}

/** The commands that turn a picture to a typed angle about its middle. */
export function turnPictureCommands(picture: Underlay, turnRad: number): readonly Command[] {
  const middle = pixelInView(picture, [picture.widthPx / 2, picture.heightPx / 2]);
  return changed(picture, () => turnedAbout(picture, middle, turnRad - picture.turnRad));
}
