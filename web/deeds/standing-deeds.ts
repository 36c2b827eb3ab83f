import { Eye, EyeOff, Lock } from "lucide-react";
import {
  canStandOtherwise,
  hideChosen,
  isAnythingHidden,
  lockChosen,
  showEverything,
} from "../standing/index.ts";
import type { Deed } from "./deed.ts";

/** Locking, hiding, and showing again. */
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
} satisfies Record<string, Deed>;
