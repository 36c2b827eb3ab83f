import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { at } from "../../../core/foundation/index.ts";
import type { RibSet } from "../../../core/jig/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { readExample } from "../../read-example.ts";
import { depthsOf, isPlain, sliceMesh } from "./mesh-slice.ts";
import { boardOf, woodAt } from "./wood.ts";

/** The tolerance for a rib's top. */
const TOP_MM = 0.02;
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
        for (const { alongMm, zMm, uMm } of sliceMesh(design, part, cut)) {
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
