import { assertNever } from "../../core/foundation/index.ts";
import type { LineRef } from "../../core/project/index.ts";
import type { Selection } from "./types.ts";

/** The selections of something that is drawn on the board. */
export type DrawnSelection = Extract<Selection, { kind: "item" | "profile" | "opening" }>;

export const isDrawn = (selection: Selection | undefined): selection is DrawnSelection =>
  selection?.kind === "item" || selection?.kind === "profile" || selection?.kind === "opening";

export const chosenNodeId = (selection: Selection | undefined): string | undefined =>
  isDrawn(selection) ? selection.nodeId : undefined;

export const chosenEdgeId = (selection: Selection | undefined): string | undefined =>
  isDrawn(selection) ? selection.edgeId : undefined;

/** The drawn line that a selection is on; undefined for parts, ribs and nothing. */
export function lineOfSelection(selection: Selection | undefined): LineRef | undefined {
  if (!isDrawn(selection)) return undefined;
  if (selection.kind === "profile") return { of: "profile", profileId: selection.profileId };
  if (selection.kind === "opening") return { of: "opening", openingId: selection.openingId };
  const { itemId, line = "item", view = "plan" } = selection;
  switch (line) {
    case "item":
    case "lower-edge":
      return { of: line, itemId };
    case "first-edge":
      return { of: "edge", itemId, side: "first", view };
    case "second-edge":
      return { of: "edge", itemId, side: "second", view };
    default:
      return assertNever(line);
  }
}

/** The selection of a line as a whole. */
export function selectLine(line: LineRef): DrawnSelection {
  switch (line.of) {
    case "profile":
      return { kind: "profile", profileId: line.profileId };
    case "opening":
      return { kind: "opening", openingId: line.openingId };
    case "item":
      return { kind: "item", itemId: line.itemId };
    case "lower-edge":
      return { kind: "item", itemId: line.itemId, line: "lower-edge" };
    case "edge":
      return {
        kind: "item",
        itemId: line.itemId,
        line: line.side === "first" ? "first-edge" : "second-edge",
        ...(line.view === "side" ? { view: "side" } : {}),
      };
    default:
      return assertNever(line);
  }
}
