import type { Problem } from "../foundation/index.ts";
import { isWithin, type Range } from "./limits.ts";
import { coreOf } from "./lookups.ts";
import { nameOfItem } from "./names.ts";
import type { Fence, Project } from "./schema.ts";

/** Both skins of a panel are together no thicker than this, mm: more is a slip of the caliper (common practice). */
const MOST_SKINS_MM = 20;

/** What a cured panel of a fence's foam can measure, mm. */
export function panelRange(project: Pick<Project, "core">, fence: Fence): Range {
  const { thicknessMm } = coreOf(project, fence);
  return { least: thicknessMm, most: thicknessMm + MOST_SKINS_MM };
}

/** The thickness that the builder measured of a fence's panel, where it can be one. */
export function measuredPanelMm(project: Pick<Project, "core">, fence: Fence): number | undefined {
  const measuredMm = fence.panel?.measuredMm;
  return measuredMm !== undefined && isWithin(measuredMm, panelRange(project, fence))
    ? measuredMm
    : undefined;
}

/**
 * What is typed wrong of panels. The fence is made all the same: as reckoned, and without the ply. Problems:
 * number-out-of-range, unknown-reference.
 */
export const checkPanels = (project: Project): readonly Problem[] =>
  project.items.flatMap((item): readonly Problem[] => {
    if (item.kind !== "fence" || item.panel === undefined) return [];
    const named = { name: nameOfItem(item), place: { itemId: item.id } };
    const { measuredMm: value, plies = [] } = item.panel;
    const range = panelRange(project, item);
    const field = "Measured thickness of the panel";
    const wrong = value !== undefined && !isWithin(value, range);
    const missing = plies.filter(({ clothId }) => !project.materials.cloths.some(({ id }) => id === clothId));
    return [
      ...(wrong ? [{ kind: "number-out-of-range" as const, ...named, field, value, ...range }] : []),
      ...missing.map(({ clothId: missingId }) => ({
        kind: "unknown-reference" as const,
        ...named,
        field: "cloth",
        missingId,
      })),
    ];
  });
