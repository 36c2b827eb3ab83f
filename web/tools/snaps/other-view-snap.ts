import { sayNode } from "../../../core/foundation/index.ts";
import { findLine, ownerKey, type SceneLine } from "../scene.ts";
import { chosenNodeId, lineOfSelection } from "../selected-line.ts";
import { chosenOwnersOf } from "../several.ts";
import type { Axis, Coordinate } from "./coordinate.ts";
import { reachBesideGrid } from "./grid-snap.ts";
import { ALIGN_PX, type SnapRequest } from "./snap-request.ts";

/**
 * What the other view says of a coordinate: the x of a node there; in the side view also the height of the surface over
 * what is chosen in plan.
 */
export function fromOtherView(request: SnapRequest, value: number, axis: Axis): Coordinate | undefined {
  const reachMm = reachBesideGrid(request, axis, ALIGN_PX);
  const found = axis === 0 ? stationsOfNodes(request) : chosenHeights(request);
  let best: Found | undefined;
  for (const one of found) {
    const offMm = Math.abs(one.value - value);
    if (offMm <= reachMm && (!best || offMm < Math.abs(best.value - value))) best = one;
  }
  return (
    best && { ...best, sign: (at) => ({ kind: "otherView", at, ...(axis === 0 ? { isToRuler: true } : {}) }) }
  );
}

interface Found {
  readonly value: number;
  readonly reason: string;
}

/** The nodes of the other view: of what is chosen, or all while something new is drawn in plan. */
function stationsOfNodes({ place, context, draft }: SnapRequest): readonly Found[] {
  const owners = chosenOwnersOf(context.selection);
  const word = place.view === "plan" ? "in side view" : "in plan";
  const counts = (line: SceneLine) =>
    line.view !== place.view &&
    (owners.includes(ownerKey(line.line)) || (draft !== undefined && line.view === "side"));
  return context.scene.lines.filter(counts).flatMap((line) =>
    line.nodes.map(({ nodeId, at }) => ({
      value: at[0],
      reason: `same x as ${sayNode(nodeId)} of ${line.name} ${word}`,
    })),
  );
}

/** More nodes than these are not asked for their heights at every move of the hand. */
const MOST_HEIGHTS = 12;

function chosenHeights({ place, context }: SnapRequest): readonly Found[] {
  if (place.view !== "side") return [];
  const chosen = lineOfSelection(context.selection);
  const line = chosen && findLine(context.scene, chosen);
  if (line?.view !== "plan") return [];
  const nodeId = chosenNodeId(context.selection);
  const nodes = nodeId === undefined ? line.nodes : line.nodes.filter((node) => node.nodeId === nodeId);
  return nodes.slice(0, MOST_HEIGHTS).flatMap((node): readonly Found[] => {
    const zMm = context.heightOver(node.at);
    if (zMm === undefined) return [];
    return [
      {
        value: zMm,
        reason: `height ${context.lengths.show(zMm)} of ${sayNode(node.nodeId)} of ${line.name} in plan`,
      },
    ];
  });
}
