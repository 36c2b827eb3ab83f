import type { Profile, Project } from "../../core/project/index.ts";
import type { Selection } from "./types.ts";

/** The profile that is chosen, itself or through the section that uses it. */
export function chosenProfile(project: Project, selection: Selection | undefined): Profile | undefined {
  const id = chosenProfileId(project, selection);
  return project.profiles.find((profile) => profile.id === id);
}

function chosenProfileId(project: Project, selection: Selection | undefined): string | undefined {
  if (selection?.kind === "profile") return selection.profileId;
  if (selection?.kind !== "item") return undefined;
  const item = project.items.find((other) => other.id === selection.itemId);
  return item?.kind === "section" ? item.profileId : undefined;
}
