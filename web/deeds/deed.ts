import type { LucideIcon } from "lucide-react";

/** The groups of the list of deeds, in its order, with their headings. */
export const DeedGroups = {
  line: "The line in hand",
  edit: "What is chosen",
  tool: "Tools",
  view: "How it is seen",
  tray: "The tray",
  stage: "Stages of the work",
} as const;
export type DeedGroup = keyof typeof DeedGroups;

/** One thing that can be done: the same definition serves menu, button, key and the searchable list. */
export interface Deed {
  readonly name: string;
  readonly word: string;
  /** What it does, where the word alone may not say. */
  readonly explains: string;
  readonly icon: LucideIcon;
  readonly group: DeedGroup;
  /** As read and as listed: `Ctrl+Z`. Ctrl stands for Cmd on a Mac. The first possible deed with a key is done. */
  readonly keys: readonly string[];
  /** Where its keys are heard: even while a field is typed into, on the page outside of fields, or on the board. */
  readonly heard: "everywhere" | "page" | "board";
  /** What the browser's own paste hands over is taken, in place of the key: only so the page is given it unasked. */
  readonly takesPaste?: (text: string) => void;
  /** Its word as things stand now, where that changes: "Delete node". */
  readonly wordNow?: () => string;
  /** What it would be done to now, beside what it does: "Move node 3 of Outer floor". */
  readonly about?: () => string | undefined;
  /** Whether it would do something now; always if absent. Read again after every change of the stores. */
  readonly isPossible?: () => boolean;
  readonly run: () => void;
}
