import { create } from "zustand";

/** Whose line lies under the pointer, as `ownerKey` tells it, so that both views light it. */
export interface Pointed {
  readonly owner: string | undefined;
  point(owner: string | undefined): void;
}

export const usePointed = create<Pointed>()((set, get) => ({
  owner: undefined,
  point: (owner) => {
    if (get().owner !== owner) set({ owner });
  },
}));
