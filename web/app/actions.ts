import type { LucideIcon } from "lucide-react";
import { CircleQuestionMark, FileDown, FilePlus, FolderOpen, Redo2, Undo2 } from "lucide-react";
import { useDocument, useView } from "../stores/index.ts";

/** One thing that can be done: the same definition serves menu, button and key. */
export interface Action {
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
    word: "Undo",
    explains: "Take the last change back",
    icon: Undo2,
    keys: ["Ctrl+Z"],
    run: () => useDocument.getState().undo(),
  },
  redo: {
    word: "Redo",
    explains: "Make the change again that was taken back",
    icon: Redo2,
    keys: ["Ctrl+Shift+Z", "Ctrl+Y"],
    run: () => useDocument.getState().redo(),
  },
  keys: {
    word: "Keys",
    explains: "Show what the keys do",
    icon: CircleQuestionMark,
    keys: ["?"],
    run: () => useView.getState().setOverlay("keys"),
  },
} satisfies Record<string, Action>;

export const fileIcons = { FileDown, FilePlus, FolderOpen };
