import type { FlatPoint } from "../foundation/index.ts";
import type { BendLine, PlatePart } from "./types.ts";

/**
 * The image of a flat: v changes sign, and the walk is turned round so that outlines stay counter-clockwise. Bends
 * keep their direction, since both are seen from the upper face; their lines run the other way round.
 */
export const mirrorPlatePart = (part: PlatePart, id: string): PlatePart => ({
  ...part,
  id,
  hand: "left",
  loops: part.loops.map(({ edges }) => ({
    edges: edges.toReversed().map((edge) => ({ ...edge, points: edge.points.toReversed().map(imageOf) })),
  })),
  bends: part.bends.map((bend) => ({
    ...bend,
    baseTangent: turned(bend.baseTangent),
    middle: turned(bend.middle),
    wingTangent: turned(bend.wingTangent),
  })),
});

const imageOf = ({ u, v }: FlatPoint): FlatPoint => ({ u, v: v === 0 ? 0 : -v });

const turned = ([from, to]: BendLine["middle"]): BendLine["middle"] => [imageOf(to), imageOf(from)];
