import {
  ArrowDown,
  ArrowLeft,
  ArrowRight,
  ArrowUp,
  Check,
  ChevronLeft,
  ChevronRight,
  type LucideIcon,
  Plus,
  Spline,
  Table2,
  Trash2,
  X,
} from "lucide-react";
import type { Vec2 } from "../../core/foundation/index.ts";
import { takeTask, useEdit } from "../edit/index.ts";
import { hear, sightNow } from "../hand/index.ts";
import { useView } from "../stores/index.ts";
import { chosenEdgeId, chosenNodeId, isDrawn } from "../tools/index.ts";
import type { Deed } from "./deed.ts";
import { focusNumbers } from "./focus-numbers.ts";

const line = { group: "line", heard: "board" } as const;

const isChoosing = (): boolean => useView.getState().tool === "select";
/** Numbers are asked for, of something that is to be done. */
const isAsking = (): boolean => useEdit.getState().task !== undefined;
const isLineChosen = (): boolean => isDrawn(useView.getState().selection);
const isNodeChosen = (): boolean => chosenNodeId(useView.getState().selection) !== undefined;
const areSeveralChosen = (): boolean => useView.getState().selection?.kind === "several";
const isPictureInHand = (): boolean =>
  useView.getState().tool === "underlay" && useView.getState().selection?.kind === "underlay";
const isNoteChosen = (): boolean => useView.getState().selection?.kind === "note";
const isEdgeChosen = (): boolean =>
  isNodeChosen() || areSeveralChosen() || chosenEdgeId(useView.getState().selection) !== undefined;

/** What can be done with the line that is drawn or chosen. */
export const lineDeeds = {
  numbers: {
    ...line,
    name: "numbers",
    word: "Numbers",
    explains: "Go to the numbers of what is chosen",
    icon: Table2,
    keys: ["Enter"],
    isPossible: () => isChoosing() && !isAsking() && useView.getState().selection !== undefined,
    run: focusNumbers,
  },
  finish: {
    ...line,
    name: "finish",
    word: "Finish",
    explains: "Finish the line that is drawn",
    icon: Check,
    keys: ["Enter"],
    wordNow: () => (isAsking() ? "Take" : (sightNow().finish ?? "Finish")),
    isPossible: () => isAsking() || sightNow().finish !== undefined,
    run: () => (isAsking() ? takeTask() : hear({ kind: "finish" })),
  },
  leave: {
    ...line,
    name: "leave",
    word: "Leave off",
    explains: "Leave off, and put back what was there",
    icon: X,
    keys: ["Escape"],
    run: () => (isAsking() ? useEdit.getState().leave() : hear({ kind: "cancel" })),
  },
  previousNode: {
    ...line,
    name: "previous-node",
    word: "Previous node",
    explains: "Choose the previous node, or the previous edge for a transition",
    icon: ChevronLeft,
    keys: ["P"],
    isPossible: () => !isChoosing() || isLineChosen(),
    run: () => hear({ kind: "next-node", by: -1 }),
  },
  nextNode: {
    ...line,
    name: "next-node",
    word: "Next node",
    explains: "Choose the next node, or the next edge for a transition",
    icon: ChevronRight,
    keys: ["N"],
    isPossible: () => !isChoosing() || isLineChosen(),
    run: () => hear({ kind: "next-node", by: 1 }),
  },
  insert: {
    ...line,
    name: "insert",
    word: "Add node",
    explains: "Put a node into the middle of the chosen edge, or double click where it is to be",
    icon: Plus,
    keys: ["I"],
    isPossible: () => isChoosing() && isEdgeChosen(),
    run: () => hear({ kind: "insert" }),
  },
  bend: {
    ...line,
    name: "bend",
    word: "Straight or curved",
    explains: "Turn the chosen edge, or the one that is drawn, between straight and curved",
    icon: Spline,
    keys: ["C"],
    isPossible: () => !isChoosing() || isEdgeChosen(),
    run: () => hear({ kind: "bend" }),
  },
  delete: {
    ...line,
    name: "delete",
    word: "Delete",
    explains: "Delete what is chosen, or take the last node back",
    icon: Trash2,
    keys: ["Delete", "Backspace"],
    wordNow: () => (isChoosing() && isNodeChosen() ? "Delete node" : "Delete"),
    isPossible: () => isNoteChosen() || !isChoosing() || isLineChosen() || areSeveralChosen(),
    run: () => hear({ kind: "delete" }),
  },
} satisfies Record<string, Deed>;

const WAYS: readonly { readonly way: string; readonly by: Vec2; readonly icon: LucideIcon }[] = [
  { way: "left", by: [-1, 0], icon: ArrowLeft },
  { way: "right", by: [1, 0], icon: ArrowRight },
  { way: "up", by: [0, 1], icon: ArrowUp },
  { way: "down", by: [0, -1], icon: ArrowDown },
];

/** Pushing what is chosen by a millimetre, or by ten. */
export const pushDeeds: readonly Deed[] = WAYS.flatMap(({ way, by, icon }) =>
  [1, 10].map(
    (stepMm): Deed => ({
      ...line,
      name: `push-${way}-${stepMm}`,
      word: `Push ${way} by ${stepMm} mm`,
      explains: `Move what is chosen ${way} on the drawing by ${stepMm} mm`,
      icon,
      keys: [`${stepMm === 10 ? "Shift+" : ""}Arrow${way.charAt(0).toUpperCase()}${way.slice(1)}`],
      isPossible: () => isPictureInHand() || (isChoosing() && (isLineChosen() || areSeveralChosen())),
      run: () => hear({ kind: "nudge", byMm: [by[0] * stepMm, by[1] * stepMm] }),
    }),
  ),
);
