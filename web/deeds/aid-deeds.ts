import { Magnet, Ruler, Waves } from "lucide-react";
import { useDrawingAids, useView } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

const aid = { group: "view", heard: "board" } as const;

/** Helps for the hand on the board, each to be turned on and off. */
export const aidDeeds = {
  snaps: {
    ...aid,
    name: "snaps",
    word: "Snaps",
    explains: "Snaps on or off; Alt holds them off while it is down",
    icon: Magnet,
    keys: ["Q"],
    wordNow: () => (useView.getState().snaps.isOn ? "Snaps off" : "Snaps on"),
    run: () => {
      const { snaps, setSnaps } = useView.getState();
      setSnaps({ isOn: !snaps.isOn });
    },
  },
  dimensions: {
    ...aid,
    name: "dimensions",
    word: "Dimensions",
    explains: "Show the dimensions of what is chosen, or leave them away",
    icon: Ruler,
    keys: ["D"],
    wordNow: () => (useDrawingAids.getState().dimensions ? "Dimensions off" : "Dimensions on"),
    run: () => useDrawingAids.getState().turn("dimensions"),
  },
  comb: {
    ...aid,
    name: "comb",
    word: "Curvature comb",
    explains: "Show how the chosen line bends, so that a kink is seen before it is cut",
    icon: Waves,
    keys: ["K"],
    wordNow: () => (useDrawingAids.getState().comb ? "Curvature comb off" : "Curvature comb on"),
    run: () => useDrawingAids.getState().turn("comb"),
  },
} satisfies Record<string, Deed>;
