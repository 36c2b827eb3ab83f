import type { Problem } from "../../../core/foundation/index.ts";
import { type FoldedPlate, foldPlate } from "../../../core/plates/index.ts";
import {
  emptyProject,
  type Metal,
  type PlanElement,
  type PlanNode,
  type Plate,
  type Project,
  resolveLines,
  type Wing,
} from "../../../core/project/index.ts";

/** What a small plate differs in from the usual one. */
export interface PlateChanges {
  readonly symmetry?: Project["symmetry"];
  readonly metal?: Partial<Metal>;
  readonly plate?: Partial<Plate>;
}

export const METAL: Metal = {
  id: "sheet",
  name: "Sheet",
  densityKgPerM3: 2700,
  kFactor: 0.5,
  leastRadiusRatio: 0,
  origins: {},
};

export const planNode = (
  id: string,
  x: number,
  y: number,
  changes: Partial<Omit<PlanNode, "kind">> = {},
): PlanNode => ({ kind: "node", id, x, y, next: "line", ...changes });

/** Front, left, rear and right edge are f, i, r and o, counter-clockwise from the front's inner node. */
export const rectangle = (x0: number, x1: number, y0: number, y1: number): readonly PlanNode[] => [
  planNode("i", x0, y0),
  planNode("r", x1, y0),
  planNode("o", x1, y1),
  planNode("f", x0, y1),
];

/** A right-angled wing up along an edge: inside radius 3, 40 mm long, over the whole edge. */
export const wing = (edgeId: string, changes: Partial<Wing> = {}): Wing => ({
  id: `w-${edgeId}`,
  edgeId,
  angleRad: Math.PI / 2,
  insideRadiusMm: 3,
  lengthMm: 40,
  startInsetMm: 0,
  endInsetMm: 0,
  startTaperRad: 0,
  endTaperRad: 0,
  ...changes,
});

/** A plate P1 of 2 mm metal, its air side 50 mm over the ground. */
export function plateOf(
  elements: readonly PlanElement[],
  wings: readonly Wing[],
  changes: Partial<Plate> = {},
): Plate {
  return {
    kind: "plate",
    id: "p",
    number: 1,
    name: "Floor plate",
    outline: { closed: true, elements },
    zMm: 50,
    metalId: "sheet",
    thicknessMm: 2,
    wings,
    bond: { lineMm: 0.5, step: "ramp" },
    ...changes,
  };
}

export function projectOf(plate: Plate, changes: PlateChanges = {}): Project {
  const empty = emptyProject({ id: "tray", title: "Tray", issuedOn: "2026-01-01" });
  return {
    ...empty,
    symmetry: changes.symmetry ?? "none",
    items: [plate],
    materials: { ...empty.materials, metals: [{ ...METAL, ...changes.metal }] },
  };
}

/** Folds the plate of a project, however odd its wings; throws where its outline does not compile. */
export function fold(
  elements: readonly PlanElement[],
  wings: readonly Wing[],
  changes: PlateChanges = {},
): { readonly plate?: FoldedPlate; readonly problems: readonly Problem[] } {
  const plate = plateOf(elements, wings, changes.plate);
  const project = projectOf(plate, changes);
  const bare = plateOf(elements, []);
  const outline = resolveLines(projectOf(bare, changes)).plan.p;
  if (!outline) throw new Error("the outline does not compile");
  return foldPlate(project, plate, outline);
}

/** The plate of a fold that must have no problem. */
export function soundPlate(...given: Parameters<typeof fold>): FoldedPlate {
  const { plate, problems } = fold(...given);
  if (!plate || problems.length > 0) throw new Error(`not sound: ${JSON.stringify(problems)}`);
  return plate;
}
