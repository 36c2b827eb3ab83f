import type { LucideIcon } from "lucide-react";
import { CircleQuestionMark, FileDown, FilePlus2, FolderOpen, History, Redo2, Undo2 } from "lucide-react";
import { saveAsFile, startNew } from "../files/index.ts";
import { toggleSteps } from "../history/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { askForFile } from "./ask-for-file.ts";

/** One thing that can be done: the same definition serves menu, button and key. */
export interface Action {
  readonly name: string;
  readonly word: string;
  /** What it does, where the word alone may not say. */
  readonly explains: string;
  readonly icon: LucideIcon;
  /** As read and as listed: `Ctrl+Z`. Ctrl stands for Cmd on a Mac. */
  readonly keys: readonly string[];
  readonly run: () => void;
}

export const actions = {
  undo: {
    name: "undo",
    word: "Undo",
    explains: "Take the last change back",
    icon: Undo2,
    keys: ["Ctrl+Z"],
    run: () => useDocument.getState().undo(),
  },
  redo: {
    name: "redo",
    word: "Redo",
    explains: "Make the change again that was taken back",
    icon: Redo2,
    keys: ["Ctrl+Shift+Z", "Ctrl+Y"],
    run: () => useDocument.getState().redo(),
  },
  steps: {
    name: "steps",
    word: "Steps",
    explains: "Show every step that led here, to go back to any of them",
    icon: History,
    keys: ["G"],
    run: toggleSteps,
  },
  new: {
    name: "new",
    word: "New",
    explains: "Start a tray with nothing drawn; this one stays on the device",
    icon: FilePlus2,
    keys: [],
    run: startNew,
  },
  open: {
    name: "open",
    word: "Open a file",
    explains: "Open a project file; this tray stays on the device",
    icon: FolderOpen,
    keys: ["Ctrl+O"],
    run: askForFile,
  },
  save: {
    name: "save",
    word: "Save as a file",
    explains: "Write the tray into a file of its own",
    icon: FileDown,
    keys: ["Ctrl+S"],
    run: saveAsFile,
  },
  keys: {
    name: "keys",
    word: "Keys",
    explains: "Show what the keys do",
    icon: CircleQuestionMark,
    keys: ["?"],
    run: () => useView.getState().setOverlay("keys"),
  },
} satisfies Record<string, Action>;
