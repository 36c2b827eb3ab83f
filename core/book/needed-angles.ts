import type { Strip } from "../cutting/index.ts";
import { at, toDegrees } from "../foundation/index.ts";
import type { PartEdge } from "../patterns/index.ts";

/** An angle off square that edges are cut to, and how much edge needs it. */
export interface NeededAngle {
  readonly angleDeg: number;
  readonly lengthMm: number;
}

/** Angles are told apart by this, and by twice as much again and again where they would be too many, degrees. */
const STEP_DEG = 0.5;
/** Pieces that a stretch between two stations of a bevel is counted in. */
const PIECES = 8;

/**
 * The angles off square of all bevelled edges, rounded to 0.5°, the most used first (by length of edge, then the
 * smaller); rounded coarser where there would be more than `most`. Under a quarter of a degree nothing is needed.
 */
export function neededAngles(strips: readonly Strip[], most: number): readonly NeededAngle[] {
  const edges = strips.flatMap((strip) => strip.edges);
  for (let stepDeg = STEP_DEG; ; stepDeg *= 2) {
    const angles = anglesOf(edges, stepDeg);
    if (angles.length <= most || stepDeg > 45) return angles.slice(0, most);
  }
}

function anglesOf(edges: readonly PartEdge[], stepDeg: number): readonly NeededAngle[] {
  const lengths = new Map<number, number>();
  for (const { bevels } of edges) {
    for (let i = 1; i < bevels.length; i++) {
      const [a, b] = [at(bevels, i - 1), at(bevels, i)];
      for (let k = 0; k < PIECES; k++) {
        const bevelRad = a.bevelRad + ((b.bevelRad - a.bevelRad) * (k + 0.5)) / PIECES;
        const angleDeg = stepDeg * Math.round(Math.abs(toDegrees(bevelRad)) / stepDeg);
        if (angleDeg === 0) continue;
        lengths.set(angleDeg, (lengths.get(angleDeg) ?? 0) + (b.alongMm - a.alongMm) / PIECES);
      }
    }
  }
  return [...lengths]
    .map(([angleDeg, lengthMm]) => ({ angleDeg, lengthMm }))
    .sort((a, b) => b.lengthMm - a.lengthMm || a.angleDeg - b.angleDeg);
}
