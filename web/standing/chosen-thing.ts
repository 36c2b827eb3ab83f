import type { ThingRef } from "../../core/project/index.ts";
import type { Selection } from "../tools/index.ts";

/** What is chosen, as something that can be locked and hidden; undefined for notes, parts, ribs and nothing. */
export function chosenThing(selection: Selection | undefined): ThingRef | undefined {
  switch (selection?.kind) {
    case "item":
      return { of: "item", itemId: selection.itemId };
    case "opening":
      return { of: "opening", openingId: selection.openingId };
    case "profile":
      return { of: "profile", profileId: selection.profileId };
    case "underlay":
      return { of: "underlay", underlayId: selection.underlayId };
    default:
      return undefined;
  }
}
