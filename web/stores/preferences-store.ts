import { create } from "zustand";
import { createJSONStorage, persist } from "zustand/middleware";
import type { Units } from "../lengths/index.ts";

/** What this builder likes on this device; kept here, never in the document. */
export interface Preferences {
  readonly light: "system" | "light" | "dark";
  /** On which side the tools stand: by the drawing hand. */
  readonly hand: "right" | "left";
  /** In what lengths are typed and shown on the drawing board; the document is always in mm. */
  readonly units: Units;
  readonly shelfWidthPx: number;
  /** The same while the tray is looked at in 3D. */
  readonly lookWidthPx: number;
  /** Height of the shelf when it is a drawer from below. */
  readonly drawerHeightPx: number;
}

export interface PreferencesStore extends Preferences {
  prefer(changes: Partial<Preferences>): void;
}

export const usePreferences = create<PreferencesStore>()(
  persist(
    (set) => ({
      light: "system",
      hand: "right",
      units: "mm",
      shelfWidthPx: 336,
      lookWidthPx: 560,
      drawerHeightPx: 280,
      prefer: (changes) => set(changes),
    }),
    { name: "traywright-preferences", version: 1, storage: createJSONStorage(() => localStorage) },
  ),
);
