import { create } from "zustand";
import type { Project } from "../../core/project/index.ts";
import type { KeptWork } from "./kept-work.ts";

/** Something about files that the builder must be told, in a dialog over the untouched work. */
export interface Notice {
  readonly title: string;
  readonly text: string;
  /** What the dialog offers to do about it. */
  readonly offers?: "save as a file";
}

/** Where the work in hand is kept, what else is kept on this device, and what must be told. */
export interface FileStore {
  /** The start page, or the work in hand. */
  readonly place: "start" | "work";
  /** Where the work in hand is kept; undefined while nothing is in hand. */
  readonly slot: string | undefined;
  /** Who may change the work in hand: this tab, or another one; or it is being asked. */
  readonly hold: "asking" | "mine" | "elsewhere";
  /** Whether the work in hand is the builder's: changed, made or opened by them. */
  readonly isOwn: boolean;
  /** Everything kept on this device, the one kept last first. */
  readonly works: readonly KeptWork[];
  /** Works as they stand that could not be written; they are tried again while this page is open. */
  readonly unsaved: readonly KeptWork[];
  /** Slots of works that are open in some tab. */
  readonly openSlots: ReadonlySet<string>;
  /** Whether changes reach this device's storage: it may be full, or closed to this page. */
  readonly keeping: "kept" | "full" | "closed";
  /** Whether a dialog has told the builder since changes last reached it. */
  readonly hasToldNotKept: boolean;
  /** The document as it was last written into a file of its own. */
  readonly inFile: Project | undefined;
  readonly notice: Notice | undefined;
  tell(notice: Notice | undefined): void;
}

export const useFiles = create<FileStore>()((set) => ({
  place: "start",
  slot: undefined,
  hold: "mine",
  isOwn: false,
  works: [],
  unsaved: [],
  openSlots: new Set(),
  keeping: "kept",
  hasToldNotKept: false,
  inFile: undefined,
  notice: undefined,
  tell: (notice) => set({ notice }),
}));
