import { create } from "zustand";
import { createJSONStorage, persist } from "zustand/middleware";
import { begun, type Clock, rings, type Span, withClock } from "./clock.ts";

/** The clocks that run on this device; kept here, so that they go on while the page is closed. Never in the document. */
export interface ClocksStore {
  readonly clocks: readonly Clock[];
  begin(span: Span): void;
  /** Whatever rings has been heard. */
  hear(): void;
  putAway(id: string): void;
}

export const useClocks = create<ClocksStore>()(
  persist(
    (set) => ({
      clocks: [],
      begin: (span) => set(({ clocks }) => ({ clocks: withClock(clocks, begun(span, Date.now())) })),
      hear: () =>
        set(({ clocks }) => ({
          clocks: clocks.map((clock) => (rings(clock, Date.now()) ? { ...clock, isHeard: true } : clock)),
        })),
      putAway: (id) => set(({ clocks }) => ({ clocks: clocks.filter((clock) => clock.id !== id) })),
    }),
    { name: "traywright-clocks", version: 1, storage: createJSONStorage(() => localStorage) },
  ),
);
