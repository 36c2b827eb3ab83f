import { create } from "zustand";

/** What is drawn over the board to help the hand; never saved with the document, never undone. */
export interface DrawingAids {
  /** Lengths, radii and places of what is chosen. */
  readonly dimensions: boolean;
  /** The curvature comb of the chosen line. */
  readonly comb: boolean;
  turn(aid: "dimensions" | "comb"): void;
}

export const useDrawingAids = create<DrawingAids>()((set) => ({
  dimensions: true,
  comb: false,
  turn: (aid) => set((aids) => ({ [aid]: !aids[aid] })),
}));
