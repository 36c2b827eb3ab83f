import { describe, expect, it } from "vitest";
import { at } from "../../core/foundation/index.ts";
import { boxNodes, circleNodes, opening, withOpenings } from "../core/openings.ts";
import {
  arcProfile,
  edgeOf,
  partOf,
  rectangle,
  relativeMiss,
  section,
  soundTray,
  straightProfile,
  tray,
} from "../core/trays.ts";

const RELATIVE = 1e-6;
/** Half of 20 mm of foam and a skin of 0.8 mm. */
const NEUTRAL_MM = 10.8;

/** Perimeter of an ellipse by the arithmetic-geometric mean (Gauss; CLOSED FORM): 2π / M × (a² − Σ 2ⁿ⁻¹ cₙ²). */
function ellipsePerimeter(a: number, b: number): number {
  let [x, y, power] = [1, b / a, 0.5];
  let sum = (power * (a * a - b * b)) / (a * a);
  for (let i = 0; i < 8; i++) {
    const c = (x - y) / 2;
    [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
    power *= 2;
    sum += power * c * c;
  }
  return ((2 * Math.PI * a) / x) * (1 - sum);
}

describe("a circle in plan on a plane that leans by τ (CLOSED FORM)", () => {
  it("has for its perimeter the known one of an ellipse", () => {
    // Semi-axes 50 / cos 30° and 50: 338.895880635088 (classical section of a cylinder, CLOSED FORM).
    expect(ellipsePerimeter(50 / Math.cos(Math.PI / 6), 50)).toBeCloseTo(338.895880635088, 9);
  });

  it("is an ellipse with the semi-axes r / cos τ up the slope and r across it", () => {
    for (const tauRad of [0.1, 0.35, 0.6]) {
      const rise = 1000 * Math.tan(tauRad);
      const level = tray({ p: straightProfile(0, 100, 1000, 100 + rise) }, [
        section(1, rectangle(0, 1000, 0, 400)),
      ]);
      const laid = soundTray(withOpenings(level, opening(1, circleNodes(500, 200, 90))));
      const part = partOf(laid, "S1");
      const [long, short] = [90 / Math.cos(tauRad), 90];
      const around = part.edges.filter(({ edgeId }) => edgeId.startsWith("oh1."));
      const space = around.reduce((sum, edge) => sum + edge.spaceLengthMm, 0);
      const flat = around.reduce((sum, edge) => sum + edge.flatLengthMm, 0);
      expect(relativeMiss(space, ellipsePerimeter(long, short))).toBeLessThan(1e-9);
      expect(relativeMiss(flat, ellipsePerimeter(long, short))).toBeLessThan(RELATIVE);
      expect(
        relativeMiss(part.spaceAreaMm2, 400_000 / Math.cos(tauRad) - Math.PI * long * short),
      ).toBeLessThan(1e-9);
      // Its centre lies over that of the circle: the foot is depth × sin τ away.
      const hole = at(part.loops, 1).edges.flatMap(({ points }) => points);
      const centreU = 500 / Math.cos(tauRad) + NEUTRAL_MM * Math.tan(tauRad);
      for (const { u, v } of hole) {
        expect(Math.hypot((u - centreU) / long, (v - 200) / short)).toBeCloseTo(1, 9);
      }
      // Plumb walls are off square by τ uphill and downhill, and square where they run up the slope.
      const bevels = around.flatMap((edge) => edge.bevels.map(({ bevelRad }) => bevelRad));
      expect(Math.max(...bevels)).toBeCloseTo(tauRad, 4);
      expect(Math.min(...bevels)).toBeCloseTo(-tauRad, 4);
    }
  });
});

describe("a plane that cuts a cylinder (CLOSED FORM)", () => {
  it("cuts the pattern along a sine curve as long as the arc of its ellipse", () => {
    // A plumb wall along a straight line in plan, at the angle α to the rulings' square: v = x tan α, x = R sin(u / R).
    const [radiusMm, tan] = [500, Math.tan(Math.PI / 6)];
    for (const drawnFace of ["neutral", "air"] as const) {
      const neutralRadius = drawnFace === "air" ? radiusMm - NEUTRAL_MM : radiusMm;
      const project = tray(
        { p: arcProfile([0, 100], radiusMm, 1, 1) },
        [section(1, rectangle(0, 400, -100, 500))],
        { drawnFace, leastBendRatio: 1 },
      );
      const slanted = boxNodes(50, 350, 100, 500).map((node) =>
        node.kind === "node" && (node.id === "a" || node.id === "b")
          ? { ...node, y: 100 + (node.x - 50) * tan }
          : node,
      );
      const laid = soundTray(withOpenings(project, opening(1, slanted)));
      const part = partOf(laid, "S1");
      const edge = edgeOf(part, "oh1.a");
      const [from, to] = [Math.asin(50 / neutralRadius), Math.asin(350 / neutralRadius)];
      // Simpson's rule on the arc of the ellipse: independent of the program's own.
      const speed = (a: number) => neutralRadius * Math.hypot(1, tan * Math.cos(a));
      const n = 400;
      let sum = 0;
      for (let i = 0; i <= n; i++) {
        const weight = i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2;
        sum += weight * speed(from + ((to - from) * i) / n);
      }
      const expected = (sum * (to - from)) / n / 3;
      expect(relativeMiss(edge.spaceLengthMm, expected)).toBeLessThan(1e-9);
      expect(relativeMiss(edge.flatLengthMm, expected)).toBeLessThan(RELATIVE);
      const line = part.loops.flatMap(({ edges }) => edges).find(({ edgeId }) => edgeId === "oh1.a");
      const [front] = [...(line?.points ?? [])].sort((a, b) => a.u - b.u);
      for (const { u, v } of line?.points ?? []) {
        const x = neutralRadius * Math.sin(u / neutralRadius);
        expect(v - (front?.v ?? 0)).toBeCloseTo((x - 50) * tan, 7);
      }
    }
  });
});
