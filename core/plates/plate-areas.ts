import { at, type FlatPoint, type PlanPoint } from "../foundation/index.ts";
import { narrowedMm } from "./bend-figures.ts";
import type { PlacedWing, PlateLoop } from "./types.ts";

/** The flat areas of one hand: base between its bends, bends, wings, and all together by the outline as written. */
export interface PlateAreas {
  readonly baseAreaMm2: number;
  readonly bendAreaMm2: number;
  readonly wingAreaMm2: number;
  readonly flatAreaMm2: number;
}

/** Each area by its own computation, so that their sum means something. */
export function plateAreas(loops: readonly PlateLoop[], wings: readonly PlacedWing[]): PlateAreas {
  return {
    baseAreaMm2: sum(loops.map((loop) => areaMm2(baseOutline(loop).map(({ x, y }) => ({ u: x, v: y }))))),
    bendAreaMm2: sum(wings.map((wing) => widthMm(wing) * wing.figures.allowanceMm)),
    wingAreaMm2: sum(
      wings.map((wing) => {
        const { figures, startTaperRad, endTaperRad } = wing;
        const narrower = narrowedMm(figures, startTaperRad) + narrowedMm(figures, endTaperRad);
        return (widthMm(wing) - narrower / 2) * figures.flangeMm;
      }),
    ),
    flatAreaMm2: sum(loops.map((loop) => areaMm2(polygonOfPlateLoop(loop)))),
  };
}

/** The closed polygon of a loop: every edge's points but its last. */
export const polygonOfPlateLoop = ({ edges }: PlateLoop): readonly FlatPoint[] =>
  edges.flatMap(({ points }) => points.slice(0, -1));

/** The base without what is folded off it: along the tangent where each bend begins, and round the reliefs. */
export function baseOutline({ edges }: PlateLoop): readonly PlanPoint[] {
  return edges.flatMap(({ role, points }, i): readonly PlanPoint[] => {
    if (role === "wing free edge") return [];
    if (role !== "wing side") return points.slice(0, -1).map(({ u, v }) => ({ x: u, y: v }));
    // The side on which the walk goes out begins at the bend's foot; the one on which it comes back ends there.
    const goesOut = at(edges, (i + 1) % edges.length).role === "wing free edge";
    if (!goesOut) return [];
    const foot = at(points, 0);
    return [{ x: foot.u, y: foot.v }];
  });
}

const widthMm = ({ startAlongMm, endAlongMm }: PlacedWing): number => endAlongMm - startAlongMm;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Positive for a counter-clockwise polygon; about its first point, to keep digits. */
function areaMm2(polygon: readonly FlatPoint[]): number {
  const origin = polygon[0];
  if (!origin) return 0;
  let twice = 0;
  for (const [i, b] of polygon.entries()) {
    const a = at(polygon, i - 1);
    twice += (a.u - origin.u) * (b.v - origin.v) - (b.u - origin.u) * (a.v - origin.v);
  }
  return twice / 2;
}
