import type { SetBack } from "../joints/index.ts";
import type { Project } from "../project/index.ts";
import { partIdOf, type Sheet } from "../surfaces/index.ts";
import { layFlat, plainLoops } from "./lay-flat.ts";
import { letInOf } from "./let-in-of-sheet.ts";
import { mirrorLoop } from "./mirror-part.ts";
import { choicesOf } from "./part-bends.ts";
import type { Part } from "./types.ts";

/** A part of which nothing is known yet but its flat outline. */
export type PartOutline = Pick<Part, "id" | "loops">;

/** The flat outlines alone of the parts that `layParts` makes of the same sheets and set-backs; flat frame, mm. */
export function layOutlines(
  project: Project,
  sheets: readonly Sheet[],
  setBacks: readonly SetBack[],
): readonly PartOutline[] {
  return sheets.flatMap((sheet) => {
    const own = setBacks.filter(({ sheetId }) => sheetId === sheet.id);
    const { materials, bending } = project;
    const choices = choicesOf(project.items.find(({ id }) => id === sheet.itemId));
    const ground = { materials, bending, choices, letIn: letInOf(project, sheet) };
    const loops = plainLoops(layFlat(ground, sheet, own).moved);
    return sheet.hands.map((hand) => ({
      id: partIdOf(sheet.id, hand),
      loops: hand === "left" ? loops.map(mirrorLoop) : loops,
    }));
  });
}
