import type { Vec2 } from "../../../core/foundation/index.ts";
import { type Note, nodePlace } from "../../../core/project/index.ts";
import { newId } from "../new-id.ts";
import { findLine } from "../scene.ts";
import { snapPlace } from "../snaps/index.ts";
import { targetAt } from "../target-at.ts";
import type { Place, Sight, Snap, Step, Tool, ToolContext, ToolEvent } from "../types.ts";

export interface NoteState {
  readonly view: Note["view"];
  readonly pointer: Snap | undefined;
  /** A note with its pin, before it has words. */
  readonly begun: Sight["note"] | undefined;
}

const START: NoteState = { view: "plan", pointer: undefined, begun: undefined };

/** Width of a new note on paper, mm: about five words a line. */
const NEW_WIDTH_MM = 40;
/** Where a new note stands from its pin on the screen, px: clear of the hand. */
const LEADER_PX: Vec2 = [36, 44];
const MOST_LETTERS = 500;

/** Pins a note to a place, or to a node so that it goes where that goes; its words are typed where it stands. */
export const noteTool: Tool<NoteState> = { start: START, step, sight };

function step(state: NoteState, event: ToolEvent, context: ToolContext): Step<NoteState> {
  switch (event.kind) {
    case "move": {
      const { view } = event.place;
      return { state: { ...state, view, pointer: snapPlace({ place: event.place, context }) }, commands: [] };
    }
    // Not at the press: what is pressed takes the keys away from the words that are to be typed.
    case "release":
      return { state: begin(event.place, context), commands: [] };
    case "write":
      return write(state, event.text, context);
    case "cancel":
      return state.begun
        ? { state: { ...state, begun: undefined }, commands: [] }
        : { state: START, commands: [], tool: "select" };
    default:
      return { state, commands: [] };
  }
}

function begin(place: Place, context: ToolContext): NoteState {
  const snap = snapPlace({ place, context });
  const { view } = place;
  const { at, pin } = pinAt(place, snap, context);
  return {
    view,
    pointer: snap,
    begun: {
      view,
      pin,
      at: { x: at[0], up: at[1] },
      widthMm: NEW_WIDTH_MM,
      leader: { x: LEADER_PX[0] * place.mmPerPx[0], up: LEADER_PX[1] * place.mmPerPx[1] },
    },
  };
}

/** A node under the pointer takes the note along; anything else is a place. */
function pinAt(
  place: Place,
  snap: Snap,
  context: ToolContext,
): { readonly at: Vec2; readonly pin: Note["pin"] } {
  const target = targetAt(place, context.scene, context.selection);
  const node =
    target?.on === "node"
      ? findLine(context.scene, target.line)?.nodes.find(({ nodeId }) => nodeId === target.nodeId)
      : undefined;
  if (target?.on === "node" && node && nodePlace(context.project, target.line, target.nodeId))
    return { at: node.at, pin: { kind: "node", line: target.line, nodeId: target.nodeId } };
  return { at: snap.at, pin: { kind: "place", at: { x: snap.at[0], up: snap.at[1] } } };
}

function write({ view, begun }: NoteState, typed: string, context: ToolContext): Step<NoteState> {
  const text = typed.trim().slice(0, MOST_LETTERS);
  if (!begun || text === "") return { state: { ...START, view }, commands: [], tool: "select" };
  const id = newId(
    "note",
    context.project.notes.map((note) => note.id),
  );
  const { at: _at, ...rest } = begun;
  return {
    state: { ...START, view },
    commands: [{ kind: "add-note", note: { id, text, ...rest } }],
    selection: { kind: "note", noteId: id },
    tool: "select",
  };
}

function sight({ view, pointer, begun }: NoteState): Sight {
  if (begun)
    return {
      prompt: "Type the note. Ctrl+Enter or a click beside it sets it down; Escape leaves it off.",
      view: begun.view,
      note: begun,
    };
  return {
    prompt: "Click where the note belongs: on a node, it goes where the node goes.",
    view,
    ...(pointer ? { snap: pointer } : {}),
  };
}
