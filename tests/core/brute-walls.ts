import { type CurvePiece, pointOnPiece } from "../../core/curves/index.ts";
import type { PlanPoint, SpacePoint } from "../../core/foundation/index.ts";
import { type BruteSheet, bruteOffset } from "./brute-force.ts";

/** The point of the face at a depth over a plan point: the foot is moved until its offset stands there. */
export function bruteFaceOver(sheet: BruteSheet, p: PlanPoint, depthMm: number): SpacePoint {
  let foot = p;
  let over = bruteOffset(sheet, foot, depthMm);
  for (let i = 0; i < 80; i++) {
    const [dx, dy] = [p.x - over.x, p.y - over.y];
    if (Math.hypot(dx, dy) < 1e-11) break;
    foot = { x: foot.x + dx, y: foot.y + dy };
    over = bruteOffset(sheet, foot, depthMm);
  }
  return over;
}

/** Length of a plumb wall's edge on the face at a depth: chords over its plan curve, twice, extrapolated. */
export function brutePlumbLength(sheet: BruteSheet, piece: CurvePiece, depthMm: number, count = 240): number {
  const points = Array.from({ length: count + 1 }, (_, i) => {
    const [x, y] = pointOnPiece(piece, i / count);
    return bruteFaceOver(sheet, { x, y }, depthMm);
  });
  const chords = (step: number): number => {
    let sum = 0;
    for (let i = 0; i + step <= count; i += step) {
      const [a, b] = [points[i], points[i + step]];
      if (a && b) sum += Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
    }
    return sum;
  };
  return chords(1) + (chords(1) - chords(2)) / 3;
}

/** Area of the face at a depth that stands over a circle in plan: 1 / cos of its lean, ring by ring. */
export function bruteAreaOverCircle(
  sheet: BruteSheet,
  centre: PlanPoint,
  radiusMm: number,
  depthMm: number,
): number {
  const [rings, spokes, h] = [40, 64, 0.02];
  let sum = 0;
  for (let i = 0; i < rings; i++) {
    const r = (radiusMm * (i + 0.5)) / rings;
    for (let k = 0; k < spokes; k++) {
      const a = (2 * Math.PI * (k + 0.5)) / spokes;
      const p = { x: centre.x + r * Math.cos(a), y: centre.y + r * Math.sin(a) };
      const z = (dx: number, dy: number) => bruteFaceOver(sheet, { x: p.x + dx, y: p.y + dy }, depthMm).z;
      const [zx, zy] = [(z(h, 0) - z(-h, 0)) / (2 * h), (z(0, h) - z(0, -h)) / (2 * h)];
      sum += r * Math.hypot(1, zx, zy);
    }
  }
  return (sum * 2 * Math.PI * radiusMm) / (rings * spokes);
}
