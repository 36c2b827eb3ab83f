import { assertNever, type Vec2 } from "../foundation/index.ts";

/** A plan point that something is turned or scaled about, mm. */
interface About {
  readonly x: number;
  readonly y: number;
}

/**
 * How things are brought somewhere else: moved in plan and in height; turned counter-clockwise from x toward y; made
 * larger or smaller in plan; or mirrored across a line y = atMm ("lengthwise") or across a station x = atMm ("station").
 */
export type Motion =
  | { readonly kind: "move"; readonly byMm: { readonly x: number; readonly y: number; readonly z: number } }
  | { readonly kind: "turn"; readonly about: About; readonly angleRad: number }
  | { readonly kind: "scale"; readonly about: About; readonly factor: number }
  | { readonly kind: "mirror"; readonly across: "lengthwise" | "station"; readonly atMm: number };

/** Where a motion brings a point of the plan. */
export function moveInPlan([x, y]: Vec2, motion: Motion): Vec2 {
  switch (motion.kind) {
    case "move":
      return [x + motion.byMm.x, y + motion.byMm.y];
    case "turn": {
      const { about, angleRad } = motion;
      const [cos, sin] = exactTurn(angleRad);
      const [dx, dy] = [x - about.x, y - about.y];
      return [about.x + dx * cos - dy * sin, about.y + dx * sin + dy * cos];
    }
    case "scale":
      return [
        motion.about.x + (x - motion.about.x) * motion.factor,
        motion.about.y + (y - motion.about.y) * motion.factor,
      ];
    case "mirror":
      return motion.across === "station" ? [2 * motion.atMm - x, y] : [x, 2 * motion.atMm - y];
    default:
      return assertNever(motion);
  }
}

/** Where a motion brings a point of the side view; turning and scaling in plan leave heights, and so profiles, alone. */
export function moveInSide([x, z]: Vec2, motion: Motion): Vec2 {
  switch (motion.kind) {
    case "move":
      return [x + motion.byMm.x, z + motion.byMm.z];
    case "mirror":
      return motion.across === "station" ? [2 * motion.atMm - x, z] : [x, z];
    case "scale":
      return [motion.about.x + (x - motion.about.x) * motion.factor, z];
    case "turn":
      return [x, z];
    default:
      return assertNever(motion);
  }
}

/** The direction of travel that a direction in plan becomes, rad from x toward y. */
export function turnedBy(directionRad: number, motion: Motion): number {
  switch (motion.kind) {
    case "turn":
      return directionRad + motion.angleRad;
    case "mirror":
      return motion.across === "station" ? Math.PI - directionRad : -directionRad;
    case "move":
    case "scale":
      return directionRad;
    default:
      return assertNever(motion);
  }
}

/** What lengths in plan are multiplied by. */
export const stretchOf = (motion: Motion): number => (motion.kind === "scale" ? Math.abs(motion.factor) : 1);

/** Cosine and sine, exact at quarter turns: a turn by 90° leaves round numbers round. */
function exactTurn(angleRad: number): Vec2 {
  const quarters = angleRad / (Math.PI / 2);
  const nearest = Math.round(quarters);
  if (Math.abs(quarters - nearest) > 1e-12) return [Math.cos(angleRad), Math.sin(angleRad)];
  const turns: readonly Vec2[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ];
  return turns[((nearest % 4) + 4) % 4] ?? [1, 0];
}
