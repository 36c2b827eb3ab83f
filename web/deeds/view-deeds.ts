import { Box, LayoutGrid, Maximize, Minus, Plus } from "lucide-react";
import { sightNow } from "../hand/index.ts";
import { useView } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

const view = { group: "view", heard: "board" } as const;

/** A minus begins a number while one can be typed. */
const isTypingPlace = (): boolean => sightNow().typing !== undefined;

/** How the drawing is seen. */
export const viewDeeds = {
  fit: {
    ...view,
    name: "fit",
    word: "Fit",
    explains: "Show the whole tray",
    icon: Maximize,
    keys: ["F"],
    run: () => useView.getState().requestFit(),
  },
  larger: {
    ...view,
    name: "larger",
    word: "Larger",
    explains: "Look closer",
    icon: Plus,
    keys: ["+", "="],
    run: () => useView.getState().zoomBy(1.25),
  },
  smaller: {
    ...view,
    name: "smaller",
    word: "Smaller",
    explains: "Look from further away",
    icon: Minus,
    keys: ["-", "−"],
    isPossible: () => !isTypingPlace(),
    run: () => useView.getState().zoomBy(0.8),
  },
  flat: {
    ...view,
    name: "flat",
    word: "Laid flat",
    explains: "Show the parts laid flat, beside the drawing",
    icon: LayoutGrid,
    keys: [],
    run: () => useView.getState().showParts("flat"),
  },
  space: {
    ...view,
    name: "space",
    word: "In 3D",
    explains: "Look at the tray in 3D, beside the drawing",
    icon: Box,
    keys: [],
    run: () => useView.getState().showParts("space"),
  },
} satisfies Record<string, Deed>;
