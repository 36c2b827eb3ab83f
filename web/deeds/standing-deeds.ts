import { Eye, EyeOff, Lock, StickyNote } from "lucide-react";
import {
  canStandOtherwise,
  hideChosen,
  isAnythingHidden,
  lockChosen,
  showEverything,
} from "../standing/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

const chosenNoteId = (): string | undefined => {
  const { selection } = useView.getState();
  return selection?.kind === "note" ? selection.noteId : undefined;
};

/** Locking, hiding, showing again, and taking a chosen note away. */
export const standingDeeds = {
  lock: {
    name: "lock",
    word: "Lock or unlock",
    explains: "Keep what is chosen from being changed, or let it be changed again",
    icon: Lock,
    group: "line",
    heard: "board",
    keys: ["L"],
    isPossible: canStandOtherwise,
    run: lockChosen,
  },
  hide: {
    name: "hide",
    word: "Hide",
    explains: "Leave what is chosen undrawn on the board; it is still made and printed",
    icon: EyeOff,
    group: "view",
    heard: "board",
    keys: ["H"],
    isPossible: canStandOtherwise,
    run: hideChosen,
  },
  showAll: {
    name: "show-all",
    word: "Show all that is hidden",
    explains: "Draw everything on the board again",
    icon: Eye,
    group: "view",
    heard: "board",
    keys: ["Shift+H"],
    isPossible: isAnythingHidden,
    run: showEverything,
  },
  deleteNote: {
    name: "delete-note",
    word: "Delete note",
    explains: "Take the chosen note away",
    icon: StickyNote,
    group: "line",
    heard: "board",
    keys: ["Delete", "Backspace"],
    isPossible: () => useView.getState().tool === "select" && chosenNoteId() !== undefined,
    run: () => {
      const noteId = chosenNoteId();
      if (noteId === undefined) return;
      useDocument.getState().dispatch({ kind: "delete-note", noteId });
      useView.getState().select(undefined);
    },
  },
} satisfies Record<string, Deed>;
