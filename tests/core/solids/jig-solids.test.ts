import { describe, expect, it } from "vitest";
import { signedAreaMm2 } from "../../../core/cutting/index.ts";
import { designTray } from "../../../core/design.ts";
import { allRibs } from "../../../core/jig/index.ts";
import { jigSolids, type Solid } from "../../../core/solids/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { arcProfile, box, section } from "../jig/jig-trays.ts";

const { jig: plainJig } = plainProject();
const { jig } = designTray(
  plainProject({
    profiles: [arcProfile("arc", 1000, 560)],
    items: [section("floor", 1, box(0, 560, 0, 300), "arc")],
    jig: {
      ...plainJig,
      attitude: "inverted",
      across: { kind: "typed", atMm: [100, 400] },
      along: { kind: "typed", atMm: [150] },
      making: { cradle: { paddingMm: 4 }, foot: "tabs", holeMm: 30 },
    },
  }),
);
const solids = jigSolids(jig);

/** Volume by the divergence theorem, positive where the triangles look outward; and whether every side has its other. */
function measured({ positions, triangles }: Solid): { readonly volume: number; readonly isClosed: boolean } {
  const point = (i: number) => [0, 1, 2].map((k) => positions[3 * (triangles[i] ?? 0) + k] ?? 0);
  const sides = new Map<string, number>();
  let volume = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a = [], b = [], c = []] = [point(i), point(i + 1), point(i + 2)];
    const det = (p: readonly number[], q: readonly number[], r: readonly number[]) =>
      (p[0] ?? 0) * ((q[1] ?? 0) * (r[2] ?? 0) - (q[2] ?? 0) * (r[1] ?? 0)) -
      (p[1] ?? 0) * ((q[0] ?? 0) * (r[2] ?? 0) - (q[2] ?? 0) * (r[0] ?? 0)) +
      (p[2] ?? 0) * ((q[0] ?? 0) * (r[1] ?? 0) - (q[1] ?? 0) * (r[0] ?? 0));
    volume += det(a, b, c) / 6;
    const corners = [triangles[i], triangles[i + 1], triangles[i + 2]];
    corners.forEach((from, k) => {
      const to = corners[(k + 1) % 3];
      const [key, turn] = (from ?? 0) < (to ?? 0) ? [`${from} ${to}`, 1] : [`${to} ${from}`, -1];
      sides.set(key, (sides.get(key) ?? 0) + turn);
    });
  }
  return { volume, isClosed: [...sides.values()].every((sum) => sum === 0) };
}

describe("ribs and boards in space", () => {
  it("are closed bodies as large as their outlines times their thickness", () => {
    for (const rib of allRibs(jig)) {
      const solid = solids.find(({ id }) => id === rib.id);
      expect(solid, rib.id).toBeDefined();
      if (solid === undefined) continue;
      const areaMm2 = [rib.outlineMm, ...rib.holesMm].reduce((sum, loop) => sum + signedAreaMm2(loop), 0);
      const { volume, isClosed } = measured(solid);
      expect(isClosed).toBe(true);
      expect(Math.abs(volume / (areaMm2 * rib.thicknessMm) - 1)).toBeLessThan(1e-4);
    }
  });

  it("stand over the tray that lies upside down on them, and under it in the cradle", () => {
    const heights = (stand: "jig" | "cradle") =>
      solids
        .filter((solid) => solid.stand === stand)
        .flatMap(({ positions }) => [...positions].filter((_, i) => i % 3 === 2));
    // The arc rises from 0 to 170 mm over its length.
    expect(Math.min(...heights("jig"))).toBeGreaterThan(10);
    expect(Math.max(...heights("jig"))).toBeGreaterThan(200);
    expect(Math.min(...heights("cradle"))).toBeLessThan(-60);
  });
});
