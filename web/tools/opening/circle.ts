import { COINCIDENT_POINTS_MM, distance2, type Vec2 } from "../../../core/foundation/index.ts";
import type { PlanLine, PlanNode } from "../../../core/project/index.ts";

/** A circle in plan; a half one lies on the centre line and is joined to its image there. */
export interface Circle {
  readonly centre: Vec2;
  readonly radiusMm: number;
  readonly isHalf: boolean;
}

/**
 * A circle as an outline: a square whose four corners are rounded by half its side, so that the arcs meet. The half
 * of one on the centre line has two such corners, and a straight edge along that line.
 */
export function circleOutline({ centre, radiusMm, isHalf }: Circle): PlanLine {
  const [x, y] = centre;
  const node = (index: number, at: Vec2, isRound: boolean): PlanNode => ({
    kind: "node",
    id: `n${index}`,
    x: at[0],
    y: at[1],
    next: "line",
    ...(isRound ? { radiusMm } : {}),
  });
  const [left, right] = [x - radiusMm, x + radiusMm];
  const [near, far] = [isHalf ? y : y - radiusMm, y + radiusMm];
  return {
    closed: true,
    elements: [
      node(1, [left, near], !isHalf),
      node(2, [right, near], !isHalf),
      node(3, [right, far], true),
      node(4, [left, far], true),
    ],
  };
}

/** The circle that an outline is, if it is one made as `circleOutline` makes it. */
export function circleOf({ closed, elements }: PlanLine): Circle | undefined {
  const nodes = elements.flatMap((element) => (element.kind === "node" ? [element] : []));
  const [a, b, c, d] = nodes;
  if (!closed || elements.length !== 4 || !a || !b || !c || !d) return undefined;
  const radiusMm = c.radiusMm ?? 0;
  const isHalf = a.radiusMm === undefined;
  const centre: Vec2 = [(a.x + b.x) / 2, isHalf ? a.y : (a.y + d.y) / 2];
  const circle = { centre, radiusMm, isHalf };
  const isSame = circleOutline(circle).elements.every((wanted, index) => {
    const node = nodes[index];
    return node && wanted.kind === "node" && isSameNode(node, wanted);
  });
  return radiusMm > 0 && isSame ? circle : undefined;
}

const isSameNode = (one: PlanNode, other: PlanNode): boolean =>
  one.next === other.next &&
  Math.abs((one.radiusMm ?? 0) - (other.radiusMm ?? 0)) <= COINCIDENT_POINTS_MM &&
  distance2([one.x, one.y], [other.x, other.y]) <= COINCIDENT_POINTS_MM;
