import { at, type FlatPoint } from "../foundation/index.ts";
import { type FibreStretch, fibreOf, type Sheet } from "../surfaces/index.ts";

/** The points of an edge laid flat, with set-back and bevel at each. */
export interface EdgePoints {
  readonly points: readonly FlatPoint[];
  readonly setBackMm: readonly number[];
  readonly bevelsRad: readonly number[];
}

/** The same along the middle of the foam, with where on its trace each point is. */
export interface LaidPoints extends EdgePoints {
  readonly shares: readonly number[];
}

/** In a stretch of its own a slanting edge has a point at least so often, mm: between them it is as good as straight. */
const STRETCH_STEP_MM = 2;

/** Moves the points of an edge from the middle of the foam to the fibre that keeps its length. */
export function stretching(
  sheet: Sheet,
  stretches: readonly FibreStretch[],
): (laid: LaidPoints, flatOn: (share: number) => FlatPoint | undefined) => EdgePoints {
  if (stretches.length === 0) return ({ shares: _, ...laid }) => laid;
  const fibre = fibreOf(sheet, stretches);
  const borders = stretches.flatMap(({ fromMm, toMm }) => [fromMm, toMm]);
  return ({ shares, points, setBackMm, bevelsRad }, flatOn) => {
    const first = at(points, 0);
    // Along the bend a straight stays straight, and rulings stay where they are.
    const isStraight = points.every(({ v }) => Math.abs(v - first.v) < 1e-12);
    const filled: FlatPoint[] = [];
    const [amounts, bevels]: [number[], number[]] = [[], []];
    points.forEach((point, i) => {
      const before = points[i - 1];
      const parts = before && !isStraight ? partsBetween(before, point, stretches, borders) : [];
      for (const part of parts) {
        const share = at(shares, i - 1) + (at(shares, i) - at(shares, i - 1)) * part;
        const chord = before && between(before, point, part);
        const place = flatOn(share) ?? chord;
        if (!place) continue;
        filled.push(place);
        amounts.push(mixed(setBackMm, i, part));
        bevels.push(mixed(bevelsRad, i, part));
      }
      filled.push(point);
      amounts.push(at(setBackMm, i));
      bevels.push(at(bevelsRad, i));
    });
    return {
      points: filled.map(({ u, v }) => ({ u: fibre.flatAt(u), v })),
      setBackMm: amounts,
      bevelsRad: bevels,
    };
  };
}

/** Shares between two points at which a slanting edge gets a point more: at borders of stretches, and steps inside them. */
function partsBetween(
  a: FlatPoint,
  b: FlatPoint,
  stretches: readonly FibreStretch[],
  borders: readonly number[],
): readonly number[] {
  const span = b.u - a.u;
  if (Math.abs(span) < 1e-9) return [];
  const [low, high] = span > 0 ? [a.u, b.u] : [b.u, a.u];
  const steps = stretches.flatMap(({ fromMm, toMm }) => {
    const [from, to] = [Math.max(low, fromMm), Math.min(high, toMm)];
    const count = Math.ceil((to - from) / STRETCH_STEP_MM);
    return Array.from({ length: Math.max(0, count - 1) }, (_, k) => from + ((to - from) * (k + 1)) / count);
  });
  const us = [...borders.filter((u) => u > low + 1e-9 && u < high - 1e-9), ...steps];
  return [...new Set(us.map((u) => (u - a.u) / span))].sort((x, y) => x - y);
}

const between = (a: FlatPoint, b: FlatPoint, share: number): FlatPoint => ({
  u: a.u + (b.u - a.u) * share,
  v: a.v + (b.v - a.v) * share,
});

const mixed = (values: readonly number[], i: number, part: number): number =>
  at(values, i - 1) + (at(values, i) - at(values, i - 1)) * part;
