import type { Project } from "../../core/project/index.ts";

/** How many hatches (with their tints) there are; they begin again after the last. */
export const HATCH_COUNT = 6;

/** The hatch of everything made of an item: 1 to 6 in the order of the items, both hands alike. */
export function hatchOfItem(project: Project, itemId: string): number {
  const index = project.items.findIndex((item) => item.id === itemId);
  return (Math.max(index, 0) % HATCH_COUNT) + 1;
}

/** How a part is filled: hatched, or with its tint alone where its rulings are drawn, which look like a hatch. */
export const partFill = (
  part: { readonly rulings: readonly unknown[] },
  hatch: number,
): { readonly fill: string; readonly fillOpacity?: number } =>
  part.rulings.length > 0 ? { fill: `var(--tint-${hatch})`, fillOpacity: 0.35 } : { fill: hatchFill(hatch) };

/** The fill of a hatch for SVG, drawn by `HatchPatterns`. */
export const hatchFill = (hatch: number): string => `url(#hatch-${hatch})`;
