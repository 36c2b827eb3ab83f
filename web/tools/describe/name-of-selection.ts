import { nameOfItem, nameOfOpening, nameOfProfile, type Project } from "../../../core/project/index.ts";
import type { Selection } from "../types.ts";

/** What is chosen, by its name; undefined where nothing is. */
export function nameOfSelection(project: Project, selection: Selection | undefined): string | undefined {
  switch (selection?.kind) {
    case "item": {
      const item = project.items.find(({ id }) => id === selection.itemId);
      return item && nameOfItem(item);
    }
    case "opening": {
      const opening = project.openings.find(({ id }) => id === selection.openingId);
      return opening && nameOfOpening(opening);
    }
    case "profile": {
      const profile = project.profiles.find(({ id }) => id === selection.profileId);
      return profile && nameOfProfile(profile);
    }
    case "part":
      return selection.partId;
    case "rib":
      return `rib ${selection.ribId}`;
    case "several":
      return `${selection.grips.length} things`;
    default:
      return undefined;
  }
}
