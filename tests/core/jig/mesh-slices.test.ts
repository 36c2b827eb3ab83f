import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { at, type FlatPoint } from "../../../core/foundation/index.ts";
import type { Rib, RibSet } from "../../../core/jig/index.ts";
import { type Part, partPlaces, polygonOfLoop } from "../../../core/patterns/index.ts";
import { readExample } from "../../read-example.ts";
import { boardOf, spansAt, woodAt } from "./wood.ts";

/** The tolerance for a rib's top. */
const TOP_MM = 0.02;
/** The mesh: steps along the way that is sliced, and between its lines, mm. At a radius of 300 a step misses by 0.0017. */
const STEP_MM = 2;
const LINES_MM = 61;
const COARSE_MM = 40;

/**
 * Where a plane cuts a fine mesh of one part's resting face: the mesh is spun over its flat pattern, point by point, and
 * each of its lines across the plane gives one place along the rib and a height above ground.
 */
function slice(
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
function isPlain(rib: Rib, partId: string, alongMm: number): boolean {
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

/** Every rib of a set against the mesh: the worst miss at its station plane, and the most that it pokes through anywhere. */
function judged(
  design: Design,
  set: RibSet,
  depthOf: (part: Part) => number,
  offMm: (part: Part, uMm: number) => number,
) {
  const { attitude, levelZMm } = set.baseboard;
  const sign = attitude === "upright" ? 1 : -1;
  let [count, worstMm, pokesMm] = [0, 0, Number.NEGATIVE_INFINITY];
  for (const rib of set.ribs) {
    const [front, rear] = boardOf(rib);
    for (const part of design.parts.filter(({ kind }) => kind !== "fence")) {
      for (const planeMm of [rib.atMm, (front + rear) / 2, front + rear - rib.atMm]) {
        const cut = { runs: rib.runs, planeMm, depthMm: depthOf(part) };
        for (const { alongMm, zMm, uMm } of slice(design, part, cut)) {
          if (!isPlain(rib, part.id, alongMm)) continue;
          const topMm = at(at(woodAt(rib, alongMm), -1), 1);
          const wholeMm = topMm - sign * (zMm - levelZMm);
          const missMm = Math.sign(wholeMm) * Math.max(0, Math.abs(wholeMm) - offMm(part, uMm));
          if (planeMm === rib.atMm) {
            count += 1;
            worstMm = Math.max(worstMm, Math.abs(missMm));
          } else if (rib.cut === "square") pokesMm = Math.max(pokesMm, missMm - rib.mostProudMm);
        }
      }
    }
  }
  return { count, worstMm, pokesMm };
}

/** What flat planks may stand off the drawn curve, mm: their sagitta, and upright a little more where they slope. */
const offPlanks = ({ zones }: Part, uMm: number): number =>
  Math.max(
    0,
    ...zones.flatMap(({ bend, fromUMm, toUMm }) =>
      uMm > fromUMm - 4 && uMm < toUMm + 4
        ? (bend?.planks ?? []).map(({ sagittaMm }) => 1.2 * sagittaMm)
        : [],
    ),
  );

const demo = readExample("hill-climb-floor");
const depthsOf = (design: Design, part: Part) => {
  const sheet = design.sheets.find(({ id }) => id === part.sheetId);
  return sheet?.depths ?? at(design.sheets, 0).depths;
};

describe("a fine mesh of the demo's tray, sliced along every rib", () => {
  it.each(["upright", "inverted"] as const)(
    "%s: tops lie on the resting face to 0.02 mm and nothing pokes through",
    (attitude) => {
      const design = designTray({
        ...demo,
        jig: {
          ...demo.jig,
          attitude,
          along: { kind: "typed", atMm: [120, 250] },
          making: { cradle: { paddingMm: 4 } },
        },
      });
      const { jig } = design;
      const inJig = judged(
        design,
        jig,
        (part) => {
          const { coreLowerMm, coreUpperMm } = depthsOf(design, part);
          return attitude === "upright" ? coreLowerMm : coreUpperMm;
        },
        offPlanks,
      );
      expect(inJig.count).toBeGreaterThan(120);
      expect(inJig.worstMm).toBeLessThan(TOP_MM);
      expect(inJig.pokesMm).toBeLessThan(TOP_MM);

      const { cradle } = jig;
      expect(cradle).toBeDefined();
      if (cradle === undefined) return;
      const inCradle = judged(
        design,
        cradle,
        (part) => {
          const { airMm, upperMm } = depthsOf(design, part);
          return attitude === "upright" ? upperMm + 4 : airMm - 4;
        },
        () => 0,
      );
      expect(inCradle.count).toBeGreaterThan(120);
      expect(inCradle.worstMm).toBeLessThan(TOP_MM);
      expect(inCradle.pokesMm).toBeLessThan(TOP_MM);
    },
  );
});
