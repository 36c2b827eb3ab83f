import type { Project } from "../../core/project/index.ts";
import { chosenOwnersOf, chosenProfile, type Selection } from "../tools/index.ts";

/** Whose lines are shown as chosen, as `ownerKey` tells it: a chosen section shows its profile as chosen too. */
export function chosenOwners(project: Project, selection: Selection | undefined): readonly string[] {
  const owners = chosenOwnersOf(selection);
  if (selection?.kind === "several") {
    const profiles = project.items.flatMap((item) =>
      item.kind === "section" && owners.includes(`item/${item.id}`) ? [`profile/${item.profileId}`] : [],
    );
    return [...owners, ...profiles];
  }
  const profile = chosenProfile(project, selection);
  return [...owners, ...(profile ? [`profile/${profile.id}`] : [])];
}
