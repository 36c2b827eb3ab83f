import { Footprints, HandHelping, MessageSquareText, PanelTopOpen } from "lucide-react";
import { startPractice } from "../guide/index.ts";
import { useDesign, usePlaceMenu, useView } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

/** What makes the work reachable otherwise than by pointing: words for the drawing, a menu by key, big print. */
export const accessDeeds = {
  describe: {
    name: "describe",
    word: "Say what is drawn",
    explains: "Tell in words what is chosen, or everything that is drawn",
    icon: MessageSquareText,
    group: "view",
    keys: ["W"],
    heard: "board",
    run: () => useView.getState().setOverlay("described"),
  },
  menuHere: {
    name: "menu-here",
    word: "Menu of what is chosen",
    explains:
      "Open what can be done with what is chosen; a long press or the right button opens it at a place",
    icon: PanelTopOpen,
    group: "view",
    keys: ["Shift+F10", "ContextMenu"],
    heard: "board",
    run: openMenuOverBoard,
  },
  bench: {
    name: "bench",
    word: "Bench mode",
    explains:
      "Read the steps, marks and heights in big print, one at a time, with nothing that can be changed",
    icon: HandHelping,
    group: "view",
    keys: ["B"],
    heard: "page",
    isPossible: () => (useDesign.getState().design?.parts.length ?? 0) > 0,
    run: () => useView.getState().setOverlay("bench"),
  },
  guide: {
    name: "guide",
    word: "Guided practice",
    explains:
      "Draw, type, round and print one small piece in two minutes; a strip tells the next thing to do",
    icon: Footprints,
    group: "tray",
    keys: [],
    heard: "page",
    run: () => void startPractice(),
  },
} satisfies Record<string, Deed>;

/** Near the upper left of the drawing, where it hides least of what is chosen. */
function openMenuOverBoard(): void {
  const box = document.querySelector(".drawing")?.getBoundingClientRect();
  if (box) usePlaceMenu.getState().openAt(box.left + 24, box.top + 24);
}
