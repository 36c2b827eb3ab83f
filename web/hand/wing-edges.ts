import type { FoldedPlate } from "../../core/plates/index.ts";
import { useDesign } from "../stores/index.ts";
import type { WingEdgeInPlan } from "../tools/index.ts";

const NONE: readonly WingEdgeInPlan[] = [];
const known = new WeakMap<readonly FoldedPlate[], readonly WingEdgeInPlan[]>();

/** The free edges of all wings in plan, as the tray was last computed. */
export function wingEdgesInPlan(): readonly WingEdgeInPlan[] {
  const plates = useDesign.getState().design?.plates;
  if (!plates) return NONE;
  const before = known.get(plates);
  if (before) return before;
  const edges = plates.flatMap(({ itemId, wingEdges }) =>
    wingEdges.map(({ wingId, air: [from, to] }): WingEdgeInPlan => {
      return { itemId, wingId, from: [from.x, from.y], to: [to.x, to.y] };
    }),
  );
  known.set(plates, edges);
  return edges;
}
