import { isOnPicture, type Underlay } from "../../../core/project/index.ts";
import type { Place, ToolContext } from "../types.ts";

/** The picture that a press takes hold of: the uppermost one there that is neither locked nor hidden. */
export const pictureUnder = ({ project }: ToolContext, { view, at }: Place): Underlay | undefined =>
  project.underlays.findLast(
    (underlay) => underlay.view === view && isFree(underlay) && isOnPicture(underlay, at),
  );

/** The chosen picture, where it is neither locked nor hidden. */
export function chosenPicture({ project, selection }: ToolContext): Underlay | undefined {
  if (selection?.kind !== "underlay") return undefined;
  return project.underlays.find((underlay) => underlay.id === selection.underlayId && isFree(underlay));
}

const isFree = (underlay: Underlay): boolean => !(underlay.locked || underlay.hidden);
