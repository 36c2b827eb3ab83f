import type { Rest } from "./resting-face.ts";
import type { TopPoint } from "./top-stretches.ts";

/** Which way a rib's body goes from its station plane: toward greater or lesser x (across) or y (along). */
export type BodySide = 1 | -1;

export interface BodyChoice {
  readonly side: BodySide;
  readonly cut: "square" | "bevel";
  /** How far the far edge of a square cut stands above the foam, at worst, mm. */
  readonly mostProudMm: number;
}

export interface BodySettings {
  readonly thicknessMm: number;
  readonly proudLimitMm: number;
  /** +1 when greater z is higher on the jig (upright), −1 when lower (inverted). */
  readonly upSign: 1 | -1;
  /** The side for a top that is level across the rib. */
  readonly levelSide: BodySide;
}

/** Differences below this are rounding, mm. */
const LEVEL_MM = 1e-6;

/**
 * Which side of the station plane a rib's body lies on: the side where the foam moves away from the rib, so that
 * a square cut touches with its station edge alone (a rule of geometry and common practice). Where the slope
 * changes along the rib, the side that stands less proud; where that is still over the limit the top is
 * bevelled, with the station plane on the fuller face, so that there is wood to plane off.
 * `restAt(offset, along)` is what rests beside the station plane.
 */
export function chooseBody(
  top: readonly TopPoint[],
  restAt: (offsetMm: number, alongMm: number) => Rest | undefined,
  settings: BodySettings,
): BodyChoice {
  const { levelSide, proudLimitMm } = settings;
  const proud = (side: BodySide) => mostProudMm(top, restAt, side, settings);
  const ahead = proud(levelSide);
  const back: BodySide = levelSide === 1 ? -1 : 1;
  const behind = ahead > LEVEL_MM ? proud(back) : ahead;
  const away = behind < ahead - LEVEL_MM ? back : levelSide;
  const least = Math.min(ahead, behind);
  if (least <= proudLimitMm) return { side: away, cut: "square", mostProudMm: least };
  return { side: away === 1 ? -1 : 1, cut: "bevel", mostProudMm: least };
}

function mostProudMm(
  top: readonly TopPoint[],
  restAt: (offsetMm: number, alongMm: number) => Rest | undefined,
  side: BodySide,
  { thicknessMm, upSign }: BodySettings,
): number {
  let worstMm = 0;
  for (const { atMm, zMm } of top) {
    const far = restAt(side * thicknessMm, atMm);
    if (far !== undefined) worstMm = Math.max(worstMm, upSign * (zMm - far.zMm));
  }
  return worstMm < LEVEL_MM ? 0 : worstMm;
}
