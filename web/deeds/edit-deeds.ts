import {
  BoxSelect,
  ClipboardPaste,
  Copy,
  CopyPlus,
  FlipVertical2,
  Merge,
  Move,
  Rows3,
  Scissors,
  SquareDashed,
  SquareSplitHorizontal,
} from "lucide-react";
import {
  beginTask,
  chooseAll,
  chosenGrips,
  chosenWholes,
  copyChosen,
  cutChosen,
  duplicateChosen,
  joinChosen,
  pasteCopied,
  pasteHanded,
  splitChosen,
} from "../edit/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

const edit = { group: "edit", heard: "board" } as const;

const isChoosing = (): boolean => useView.getState().tool === "select";
const isAnyChosen = (): boolean => isChoosing() && chosenGrips().length > 0;
const isWholeChosen = (): boolean => isChoosing() && chosenWholes().length > 0;
/** One outline or one fence, from which a parallel can be drawn. */
const isLineChosen = (): boolean => {
  const [grip, ...more] = chosenWholes();
  return isChoosing() && more.length === 0 && (grip?.line.of === "item" || grip?.line.of === "opening");
};
const isAnyDrawn = (): boolean => {
  const { items, openings, profiles } = useDocument.getState().project;
  return isChoosing() && items.length + openings.length + profiles.length > 0;
};

/** What can be done with what is chosen, as wholes. */
export const editDeeds = {
  chooseAll: {
    ...edit,
    name: "choose-all",
    word: "Choose all",
    explains: "Choose everything that is drawn",
    icon: BoxSelect,
    keys: ["Ctrl+A"],
    isPossible: isAnyDrawn,
    run: chooseAll,
  },
  copy: {
    ...edit,
    name: "copy",
    word: "Copy",
    explains: "Copy what is chosen, for this tray or another",
    icon: Copy,
    keys: ["Ctrl+C"],
    isPossible: isWholeChosen,
    run: copyChosen,
  },
  cut: {
    ...edit,
    name: "cut",
    word: "Cut",
    explains: "Copy what is chosen, and take it away",
    icon: Scissors,
    keys: ["Ctrl+X"],
    isPossible: isWholeChosen,
    run: cutChosen,
  },
  paste: {
    ...edit,
    name: "paste",
    word: "Paste",
    explains: "Set down what was copied, here or in another tray",
    icon: ClipboardPaste,
    keys: ["Ctrl+V"],
    takesPaste: pasteHanded,
    run: pasteCopied,
  },
  duplicate: {
    ...edit,
    name: "duplicate",
    word: "Duplicate",
    explains: "Set a copy beside what is chosen",
    icon: CopyPlus,
    keys: ["Ctrl+D"],
    isPossible: isWholeChosen,
    run: duplicateChosen,
  },
  place: {
    ...edit,
    name: "move-by-numbers",
    word: "Move, turn, scale",
    explains: "Move, turn or scale what is chosen by typed numbers",
    icon: Move,
    keys: ["T"],
    isPossible: isAnyChosen,
    run: () => beginTask("move"),
  },
  mirror: {
    ...edit,
    name: "mirror",
    word: "Mirror",
    explains: "Mirror what is chosen across a line along the car, or across a station",
    icon: FlipVertical2,
    keys: ["M"],
    isPossible: isAnyChosen,
    run: () => beginTask("mirror"),
  },
  repeat: {
    ...edit,
    name: "repeat",
    word: "Repeat",
    explains: "Set a row of copies beside what is chosen, such as a row of fences",
    icon: Rows3,
    keys: ["R"],
    isPossible: isWholeChosen,
    run: () => beginTask("repeat"),
  },
  split: {
    ...edit,
    name: "split",
    word: "Split",
    explains: "Split a fence at the chosen node or edge, or a section from one chosen node to the other",
    icon: SquareSplitHorizontal,
    keys: ["X"],
    isPossible: isAnyChosen,
    run: splitChosen,
  },
  join: {
    ...edit,
    name: "join",
    word: "Join",
    explains: "Make one of two fences, or of two sections that share an edge",
    icon: Merge,
    keys: ["J"],
    isPossible: () => isChoosing() && chosenWholes().length === 2,
    run: joinChosen,
  },
  parallel: {
    ...edit,
    name: "parallel",
    word: "Parallel",
    explains: "Move an outline outward or inward by a distance, or draw a fence parallel to another",
    icon: SquareDashed,
    keys: ["O"],
    isPossible: isLineChosen,
    run: () => beginTask("parallel"),
  },
} satisfies Record<string, Deed>;
