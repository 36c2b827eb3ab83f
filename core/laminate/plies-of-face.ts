import { type ClothPly, laminateOf, type Project } from "../project/index.ts";
import { mixOf } from "./mix-of.ts";
import { plyFigures } from "./ply.ts";

/** More plies than this are a slip of the allowance. */
const MOST_PLIES = 20;

/**
 * The plies of a face from the foam outward: those that the builder chose, else as many of the heaviest cloth at hand as
 * come nearest to the skin that the drawing allows for.
 */
export function pliesOfFace(
  project: Pick<Project, "laminate" | "materials" | "skins">,
  face: "lower" | "upper",
): readonly ClothPly[] {
  const laminate = laminateOf(project);
  const chosen = laminate[face];
  if (chosen) return chosen;
  const [cloth] = project.materials.cloths.toSorted((a, b) => b.arealKgPerM2 - a.arealKgPerM2);
  if (!cloth) return [];
  const allowedMm = project.skins[`${face}Mm`];
  const { thicknessMm } = plyFigures(cloth.arealKgPerM2, mixOf(laminate));
  const count = Math.min(MOST_PLIES, Math.max(0, Math.round(allowedMm / thicknessMm)));
  return Array.from({ length: Number.isFinite(count) ? count : 0 }, () => ({ cloth, warpRad: 0 }));
}
