import { create } from "zustand";

/** Where on the screen the menu of a place is open, px from the window's upper left corner; undefined while shut. */
export interface PlaceMenuStore {
  readonly at: { readonly xPx: number; readonly yPx: number } | undefined;
  openAt(xPx: number, yPx: number): void;
  close(): void;
}

export const usePlaceMenu = create<PlaceMenuStore>()((set) => ({
  at: undefined,
  openAt: (xPx, yPx) => set({ at: { xPx, yPx } }),
  close: () => set({ at: undefined }),
}));
