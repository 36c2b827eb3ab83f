import type { Board, Foam, Glue, Item, Metal, Project } from "./schema.ts";

/** The foam of an item: its own if it names one, else the tray's. Thickness in mm. */
export const coreOf = (
  project: Pick<Project, "core">,
  item: Item,
): { readonly foamId: string; readonly thicknessMm: number } =>
  (item.kind === "plate" ? undefined : item.core) ?? project.core;

/** The foam with an id; undefined when the project has none such. */
export const foamOf = (project: Pick<Project, "materials">, foamId: string): Foam | undefined =>
  project.materials.foams.find((foam) => foam.id === foamId);

/** Whether a foam is polystyrene: as it says, else where it may be cut hot, which only polystyrene may. */
export const isPolystyrene = ({ family, hotWire }: Foam): boolean =>
  (family ?? (hotWire === "allowed" ? "polystyrene" : "other")) === "polystyrene";

/** The metal of a plate; undefined when the project has none such. */
export const metalOf = (project: Project, metalId: string): Metal | undefined =>
  project.materials.metals.find((metal) => metal.id === metalId);

/** The glue that the project's joints use; undefined when the project has none such. */
export const glueOf = (project: Pick<Project, "materials" | "glue">): Glue | undefined =>
  project.materials.glues.find((glue) => glue.id === project.glue.glueId);

/** The board that ribs are cut from; undefined when the project has none such. */
export const ribBoardOf = (project: Pick<Project, "materials" | "jig">): Board | undefined =>
  project.materials.boards.find((board) => board.id === project.jig.boardId);

/**
 * The least radius of a cold bend at mid-thickness, as a multiple of the thickness: of a test on scrap where there is one
 * (bent over a thing of radius r, a scrap t thick has r + t/2 in its middle), else as it is typed.
 */
export const leastBendRatioOf = ({ leastBendRatio, bendTest }: Foam): number =>
  bendTest ? bendTest.radiusMm / bendTest.thicknessMm + 0.5 : leastBendRatio;
