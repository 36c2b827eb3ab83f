import { Check, CircleStop, Eraser, LayoutDashboard } from "lucide-react";
import { useDesign, useLaying, useView } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

const tray = { group: "tray", heard: "page", keys: [] } as const;

/** The first group that has no layout that holds. */
const nextGroup = () => useDesign.getState().design?.stock.find(({ standing }) => standing !== "accepted");

/** Laying the group of pieces with this id on stock. */
export const layOutDeed = (groupId: string): Deed => ({
  ...tray,
  name: `lay-out-${groupId}`,
  word: "Lay out",
  explains: "Look for the layout that takes the fewest sheets; locked pieces stay",
  icon: LayoutDashboard,
  run: () => useLaying.getState().start(groupId),
});

/** What can be done about pieces on stock. */
export const stockDeeds = {
  layOut: {
    ...tray,
    name: "lay-out",
    word: "Lay out on stock",
    explains: "Look for a layout of the next foam or board that has none yet",
    icon: LayoutDashboard,
    about: () => nextGroup()?.name,
    isPossible: () => !useLaying.getState().isRunning && nextGroup() !== undefined,
    run: () => {
      const group = nextGroup();
      if (group === undefined) return;
      useView.getState().setStage("stock");
      useLaying.getState().start(group.groupId);
    },
  },
  stop: {
    ...tray,
    name: "stop-laying",
    word: "Stop",
    explains: "Stop looking; the best layout so far stays to be accepted",
    icon: CircleStop,
    isPossible: () => useLaying.getState().isRunning,
    run: () => useLaying.getState().stop(),
  },
  accept: {
    ...tray,
    name: "accept-layout",
    word: "Accept",
    explains: "Take the best layout so far into the tray's file",
    icon: Check,
    isPossible: () => useLaying.getState().found !== undefined,
    run: () => useLaying.getState().accept(),
  },
  discard: {
    ...tray,
    name: "discard-layout",
    word: "Discard",
    explains: "Forget the layout that was found",
    icon: Eraser,
    isPossible: () => useLaying.getState().groupId !== undefined,
    run: () => useLaying.getState().discard(),
  },
} satisfies Record<string, Deed>;
