import { distance2, sayNode, type Vec2 } from "../../../core/foundation/index.ts";
import { isSameLine, ownerKey, type SceneLine } from "../scene.ts";
import { chosenOwnersOf } from "../several.ts";
import type { Axis, Coordinate } from "./coordinate.ts";
import { ALIGN_PX, type SnapRequest } from "./snap-request.ts";

/** In line with a node: of the line that is drawn or chosen, so that far things do not pull. */
export function alignedWith(request: SnapRequest, value: number, axis: Axis): Coordinate | undefined {
  const { place } = request;
  const alignMm = ALIGN_PX * place.mmPerPx[axis];
  let best: (Named & { readonly offMm: number; readonly awayMm: number }) | undefined;
  for (const node of nodesInHand(request)) {
    const offMm = Math.abs(node.at[axis] - value);
    if (offMm > alignMm) continue;
    // Of several in line the nearest one is named.
    const awayMm = distance2(node.at, place.at);
    if (best && (offMm > best.offMm || (offMm === best.offMm && awayMm >= best.awayMm))) continue;
    best = { ...node, offMm, awayMm };
  }
  if (!best) return undefined;
  const from = best.at;
  const word = axis === 0 ? "same x as" : place.view === "plan" ? "same y as" : "same height as";
  return {
    value: from[axis],
    reason: `${word} ${best.name}`,
    sign: (at) => ({ kind: "aligned", at: from, guide: [from, at] }),
  };
}

interface Named {
  readonly at: Vec2;
  readonly name: string;
}

function nodesInHand(request: SnapRequest): readonly Named[] {
  const { place, context, moving, draft } = request;
  const drawn = (draft ?? []).map(({ at }, index): Named => ({ at, name: `node ${index + 1}` }));
  const there = context.scene.lines
    .filter((line) => line.view === place.view && isInHand(line, request))
    .flatMap((line) =>
      line.nodes.flatMap(({ nodeId, at }): readonly Named[] =>
        moving && nodeId === moving.nodeId && isSameLine(line.line, moving.line)
          ? []
          : [{ at, name: sayNode(nodeId) }],
      ),
    );
  return [...drawn, ...there];
}

function isInHand(line: SceneLine, { moving, context }: SnapRequest): boolean {
  if (moving) return isSameLine(line.line, moving.line);
  return chosenOwnersOf(context.selection).includes(ownerKey(line.line));
}
