import { addSpace, at, lengthSpace, type SpacePoint } from "../foundation/index.ts";
import { type Box, boxesOverlap, boxOfPrism, overlapMm, type Prism } from "./convex-overlap.ts";
import type { FoldedWing } from "./types.ts";

/** Two wings that stand in one another when folded, and how deep. */
export interface WingCollision {
  readonly wings: readonly [FoldedWing, FoldedWing];
  readonly overlapMm: number;
}

/** Metal that touches, or springs aside by so little, does not collide. */
const TOUCHING_MM = 0.05;

/**
 * The first two wings whose metal, bends included, stands in one another when all are folded. A wing never meets its
 * own base: its metal lies wholly over the base's upper face when it is bent up and under its air side when bent down.
 */
export function wingCollision(wings: readonly FoldedWing[]): WingCollision | undefined {
  const bodies = wings.map((wing) =>
    prismsOf(wing).map((prism): Body => ({ prism, box: boxOfPrism(prism) })),
  );
  for (let j = 1; j < wings.length; j++) {
    for (let i = 0; i < j; i++) {
      const depthMm = deepest(at(bodies, i), at(bodies, j));
      if (depthMm > TOUCHING_MM) return { wings: [at(wings, i), at(wings, j)], overlapMm: depthMm };
    }
  }
  return undefined;
}

interface Body {
  readonly prism: Prism;
  readonly box: Box;
}

function deepest(one: readonly Body[], other: readonly Body[]): number {
  let deepestMm = 0;
  for (const a of one) {
    for (const b of other) {
      if (boxesOverlap(a.box, b.box)) deepestMm = Math.max(deepestMm, overlapMm(a.prism, b.prism));
    }
  }
  return deepestMm;
}

/** The wing's flat, and its bend in steps; those with no extent, as of a sharp inside corner, are still thick outside. */
function prismsOf({ airFace, upperFace, bend }: FoldedWing): readonly Prism[] {
  const flat: Prism = { face: airFace, through: difference(at(upperFace, 0), at(airFace, 0)) };
  const steps = bend.slice(1).map((to, i): Prism => {
    const from = at(bend, i);
    const corners = [from.air[0], to.air[0], to.upper[0], from.upper[0]];
    return { face: withoutRepeats(corners), through: difference(from.air[1], from.air[0]) };
  });
  return [flat, ...steps];
}

const difference = (a: SpacePoint, b: SpacePoint): SpacePoint => addSpace(a, b, -1);

const withoutRepeats = (points: readonly SpacePoint[]): readonly SpacePoint[] =>
  points.filter((p, i) => lengthSpace(difference(p, at(points, i - 1))) > 1e-9);
