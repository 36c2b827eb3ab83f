import { toCurve, walkCurve } from "../curves/index.ts";
import type { FlatPoint, SpacePoint } from "../foundation/index.ts";
import type { FenceSheet } from "../surfaces/index.ts";
import { flatChartedLie } from "./flat-charted-lie.ts";
import type { FlatRimPoint } from "./rim-of-loop.ts";
import { turnSteps } from "./turn-steps.ts";
import type { ChartSpot, SheetLie } from "./types.ts";

/** The turn of a fence's line is felt over so many steps of each piece. */
const FEELS = 16;

/**
 * How a fence's flat stands in space: u along its line, v the height; its reader looks from the right of the line, and
 * depth grows toward him.
 */
export function fenceLie(sheet: FenceSheet, rims: readonly (readonly FlatRimPoint[])[]): SheetLie {
  const { chart } = sheet;
  const line = toCurve(
    chart.pieces.map(({ piece }) => piece),
    false,
  );
  const walk = walkCurve(line);
  const headingAt = (s: number): SpacePoint => {
    const [x, y] = walk(s).tangent;
    return { x, y, z: 0 };
  };
  const stationsMm = chart.pieces.flatMap(({ piece, startUMm, lengthUMm }) => {
    if (piece.kind === "line") return [startUMm, startUMm + lengthUMm];
    let turnRad = 0;
    for (let k = 0; k < FEELS; k++) {
      const [a, b] = [k, k + 1].map((step) => headingAt(startUMm + (lengthUMm * (step + 0.01)) / FEELS));
      if (a && b) turnRad += Math.abs(Math.asin(Math.min(1, Math.max(-1, a.x * b.y - a.y * b.x))));
    }
    return turnSteps(startUMm, startUMm + lengthUMm, turnRad);
  });
  const spaceAt = ({ along, across }: ChartSpot, { u, v }: FlatPoint, depthMm: number): SpacePoint => {
    const within = Math.min(line.lengthMm, Math.max(0, along + u));
    const {
      at: [x, y],
      tangent: [dx, dy],
    } = walk(within);
    const beyondMm = along + u - within;
    return { x: x + dx * beyondMm + dy * depthMm, y: y + dy * beyondMm - dx * depthMm, z: across + v };
  };
  return flatChartedLie(sheet, rims, {
    stationsMm,
    spaceAt,
    axesAt: (along) => {
      const alongU = headingAt(along);
      return { alongU, alongV: { x: 0, y: 0, z: 1 }, normal: { x: alongU.y, y: -alongU.x, z: 0 } };
    },
  });
}
