import type { Design } from "../../core/design.ts";
import { isProfileShown, type Project, standingOf, thingOfLine } from "../../core/project/index.ts";
import type { Scene, SceneLine } from "../tools/index.ts";

/** The scene without the lines of what is hidden: they are not drawn, not grabbed and not snapped to. */
export function sceneWithoutHidden(scene: Scene, project: Project): Scene {
  const lines = scene.lines.filter((line) => isShown(line, project));
  return lines.length === scene.lines.length ? scene : { ...scene, lines };
}

/** What the board draws of the computed tray: everything but the sheets and plates of hidden items. */
export function designWithoutHidden(design: Design | undefined, project: Project): Design | undefined {
  const hidden = new Set(project.items.filter((item) => item.hidden).map(({ id }) => id));
  if (!design || hidden.size === 0) return design;
  return {
    ...design,
    sheets: design.sheets.filter(({ itemId }) => !hidden.has(itemId)),
    plates: design.plates.filter(({ itemId }) => !hidden.has(itemId)),
  };
}

const isShown = ({ line }: SceneLine, project: Project): boolean =>
  line.of === "profile"
    ? isProfileShown(project, line.profileId)
    : !standingOf(project, thingOfLine(line)).hidden;
