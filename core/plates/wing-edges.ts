import { addSpace, at, type SpacePoint } from "../foundation/index.ts";
import type { FoldedWing, MetalLine, PlacedWing, WingEdge } from "./types.ts";

/**
 * The free edges of wings as others may follow them, on the drawn half: of a wing that runs over the centre line the
 * part at y ≥ 0. Their nodes are `<wingId>-start` and `<wingId>-end`.
 */
export function wingEdges(folded: readonly FoldedWing[], placed: readonly PlacedWing[]): readonly WingEdge[] {
  return folded.flatMap((wing, i): readonly WingEdge[] => {
    const { half, wingId } = at(placed, i);
    if (half === "image") return [];
    const whole = freeEdge(wing);
    const line = half === "both" ? rightOfCentre(whole) : whole;
    return [{ wingId, startNodeId: `${wingId}-start`, endNodeId: `${wingId}-end`, ...line }];
  });
}

const freeEdge = ({ airFace, upperFace }: FoldedWing): MetalLine => ({
  air: [at(airFace, 3), at(airFace, 2)],
  upper: [at(upperFace, 3), at(upperFace, 2)],
});

/** The part of a straight line at y ≥ 0; it crosses y = 0 square, so both its faces at one place. */
function rightOfCentre({ air, upper }: MetalLine): MetalLine {
  const [from, to] = air;
  const t = from.y / (from.y - to.y);
  const cut = ([a, b]: MetalLine["air"]): MetalLine["air"] => {
    const on: SpacePoint = { ...addSpace(a, addSpace(b, a, -1), t), y: 0 };
    return a.y < 0 ? [on, b] : [a, on];
  };
  return { air: cut(air), upper: cut(upper) };
}
