import type { SpacePoint, Vec2 } from "../../core/foundation/index.ts";
import type { FoldedPlate } from "../../core/plates/index.ts";
import { crossingsOfLoop } from "./crossings-of-loop.ts";

/** A piece of a folded plate cut by the plane of the hairline: its outline (y, z). */
export interface CutMetal {
  readonly key: string;
  readonly itemId: string;
  readonly outline: readonly Vec2[];
}

/** A plate cut square to the length of the car at a station: its base, wings and bends, on every hand. */
export function cutPlate(plate: FoldedPlate, xMm: number): readonly CutMetal[] {
  const wings = plate.wings.flatMap(({ airFace, upperFace, bend }) => [
    strip(crossings(airFace, xMm), crossings(upperFace, xMm)),
    strip(
      bend.flatMap(({ air }) => crossings(air, xMm)),
      bend.flatMap(({ upper }) => crossings(upper, xMm)),
    ),
  ]);
  const drawn = [...cutBase(plate, xMm), ...wings].filter((outline) => outline.length > 2);
  const hands = plate.parts.map(({ hand }) => hand);
  return hands.flatMap((hand) =>
    drawn.map((outline, index) => ({
      key: `${plate.id}/${hand}/${index}`,
      itemId: plate.itemId,
      outline: hand === "left" ? outline.map(([y, z]): Vec2 => [-y, z]) : outline,
    })),
  );
}

function cutBase({ base, zMm, thicknessMm }: FoldedPlate, xMm: number): readonly (readonly Vec2[])[] {
  const ys = base.flatMap((loop) => crossingsOfLoop(loop, xMm)).sort((a, b) => a - b);
  return ys.flatMap((from, index): readonly (readonly Vec2[])[] => {
    const to = ys[index + 1];
    if (index % 2 === 1 || to === undefined) return [];
    const top = zMm + thicknessMm;
    return [
      [
        [from, zMm],
        [to, zMm],
        [to, top],
        [from, top],
      ],
    ];
  });
}

/** Where the closed line through points in space goes through a station, as (y, z). */
const crossings = (points: readonly SpacePoint[], xMm: number): readonly Vec2[] =>
  points.flatMap((from, index): readonly Vec2[] => {
    const to = points[index + 1] ?? (points.length > 2 ? points[0] : undefined);
    if (!to || from.x > xMm === to.x > xMm) return [];
    const share = (xMm - from.x) / (to.x - from.x);
    return [[from.y + share * (to.y - from.y), from.z + share * (to.z - from.z)]];
  });

/** The outline between the two faces of a wing or a bend, each from one end to the other. */
const strip = (air: readonly Vec2[], upper: readonly Vec2[]): readonly Vec2[] => [
  ...air,
  ...[...upper].reverse(),
];
