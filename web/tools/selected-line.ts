import type { LineRef } from "../../core/project/index.ts";
import type { Selection } from "./types.ts";

/** The drawn line that a selection is on; undefined for parts, ribs and nothing. */
export function lineOfSelection(selection: Selection | undefined): LineRef | undefined {
  if (selection?.kind === "profile") return { of: "profile", profileId: selection.profileId };
  if (selection?.kind !== "item") return undefined;
  return { of: selection.line === "lower-edge" ? "lower-edge" : "item", itemId: selection.itemId };
}

/** The selection of a line as a whole. */
export function selectLine(line: LineRef): Extract<Selection, { kind: "item" | "profile" }> {
  if (line.of === "profile") return { kind: "profile", profileId: line.profileId };
  return { kind: "item", itemId: line.itemId, ...(line.of === "lower-edge" ? { line: "lower-edge" } : {}) };
}
