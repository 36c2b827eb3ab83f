import type { Project } from "../../core/project/index.ts";
import { chosenOwner, chosenProfile, type Selection } from "../tools/index.ts";

/** Whose lines are shown as chosen, as `ownerKey` tells it: a chosen section shows its profile as chosen too. */
export function chosenOwners(project: Project, selection: Selection | undefined): readonly string[] {
  const owner = chosenOwner(selection);
  const profile = chosenProfile(project, selection);
  return [...(owner ? [owner] : []), ...(profile ? [`profile/${profile.id}`] : [])];
}
