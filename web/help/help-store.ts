import { create } from "zustand";
import type { TermName } from "./terms.ts";

/** The word that is being explained, and the mark that asked for it. */
export interface HelpStore {
  readonly asked: { readonly term: TermName; readonly mark: HTMLElement } | undefined;
  explain(term: TermName, mark: HTMLElement): void;
  leave(): void;
}

export const useHelp = create<HelpStore>()((set) => ({
  asked: undefined,
  explain: (term, mark) => set({ asked: { term, mark } }),
  leave: () => set({ asked: undefined }),
}));
