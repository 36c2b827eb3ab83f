import type { Design } from "../../../core/design.ts";
import { at, type FlatPoint } from "../../../core/foundation/index.ts";
import type { Rib } from "../../../core/jig/index.ts";
import { type Part, partPlaces, polygonOfLoop } from "../../../core/patterns/index.ts";
import { spansAt } from "./wood.ts";

/** The mesh: steps along the way that is sliced, and between its lines, mm. At a radius of 300 a step misses by 0.0017. */
const STEP_MM = 2;
const LINES_MM = 61;
const COARSE_MM = 40;

/**
 * Where a plane cuts a fine mesh of one part's resting face: the mesh is spun over its flat pattern, point by point, and
 * each of its lines across the plane gives one place along the rib and a height above ground.
 */
export function sliceMesh(
  design: Design,
  part: Part,
  {
    runs,
    planeMm,
    depthMm,
  }: { readonly runs: Rib["runs"]; readonly planeMm: number; readonly depthMm: number },
): readonly { readonly alongMm: number; readonly zMm: number; readonly uMm: number }[] {
  const place = partPlaces(design.sheets, part);
  if (place === undefined) return [];
  const loops = part.loops.map(polygonOfLoop);
  const points = loops.flat();
  const range = (axis: "u" | "v") => {
    const values = points.map((p) => p[axis]);
    return [Math.min(...values), Math.max(...values)] as const;
  };
  const [across, along] = runs === "across" ? (["x", "y"] as const) : (["y", "x"] as const);
  const isInside = (p: FlatPoint) => spansAt(loops, p.u).some(([low, high]) => p.v > low && p.v < high);
  // Lines of the mesh run along u for a rib across the car and along v for one along it.
  const [lineAxis, stepAxis] = runs === "across" ? (["v", "u"] as const) : (["u", "v"] as const);
  const [[fromLine, toLine], [fromStep, toStep]] = [range(lineAxis), range(stepAxis)];
  const found: { alongMm: number; zMm: number; uMm: number }[] = [];
  for (let line = fromLine + 3; line < toLine; line += LINES_MM) {
    const spot = (step: number) => {
      const flat = lineAxis === "v" ? { u: step, v: line } : { u: line, v: step };
      const space = place(flat, depthMm);
      return { flat, space, beyondMm: space[across] - planeMm };
    };
    // Fine only where the line goes through the plane.
    for (let coarse = fromStep; coarse < toStep; coarse += COARSE_MM) {
      if (spot(coarse).beyondMm > 0 === spot(coarse + COARSE_MM).beyondMm > 0) continue;
      for (let step = coarse; step < coarse + COARSE_MM; step += STEP_MM) {
        const [a, b] = [spot(step), spot(step + STEP_MM)];
        if (a.beyondMm > 0 === b.beyondMm > 0 || !isInside(a.flat) || !isInside(b.flat)) continue;
        const share = a.beyondMm / (a.beyondMm - b.beyondMm);
        found.push({
          alongMm: a.space[along] + share * (b.space[along] - a.space[along]),
          zMm: a.space.z + share * (b.space.z - a.space.z),
          uMm: a.flat.u,
        });
      }
    }
  }
  return found;
}

/** Whether only one part lies on the rib around a place, and nothing is cut out of its top there. */
export function isPlain(rib: Rib, partId: string, alongMm: number): boolean {
  const before = rib.heights.filter((height) => height.atMm <= alongMm - 2);
  const after = rib.heights.filter((height) => height.atMm >= alongMm + 2);
  if (before.length === 0 || after.length === 0) return false;
  if (at(before, -1).partId !== partId || at(after, 0).partId !== partId) return false;
  const cuts = [
    ...rib.notches.map(({ fromMm, toMm, mouthMm }) => [fromMm - mouthMm, toMm + mouthMm]),
    ...rib.laps.filter(({ from }) => from === "top").map(({ fromMm, toMm }) => [fromMm, toMm]),
    ...rib.reliefs.map(({ atMm, widthMm }) => [atMm - widthMm / 2, atMm + widthMm / 2]),
  ];
  return cuts.every(([from = 0, to = 0]) => alongMm < from - 0.5 || alongMm > to + 0.5);
}

/** How far each face of a part lies from its drawn face, mm. */
export const depthsOf = (design: Design, part: Part) => {
  const sheet = design.sheets.find(({ id }) => id === part.sheetId);
  return sheet?.depths ?? at(design.sheets, 0).depths;
};
