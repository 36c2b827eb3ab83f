import { create } from "zustand";
import type { KeptWork } from "./work-database.ts";

/** Something about files that the builder must be told, in a dialog over the untouched work. */
export interface Notice {
  readonly title: string;
  readonly text: string;
}

/** Where the work in hand is kept, what else is kept on this device, and what must be told. */
export interface FileStore {
  readonly slot: string;
  readonly isEdited: boolean;
  readonly earlier: readonly KeptWork[];
  readonly notice: Notice | undefined;
  tell(notice: Notice | undefined): void;
}

export const useFiles = create<FileStore>()((set) => ({
  slot: "first",
  isEdited: false,
  earlier: [],
  notice: undefined,
  tell: (notice) => set({ notice }),
}));
