import { describe, expect, it } from "vitest";
import { at, type FlatPoint } from "../../core/foundation/index.ts";
import type { Joint } from "../../core/joints/index.ts";
import type { Part } from "../../core/patterns/index.ts";
import { freeEdge, layTray, transition, tray } from "../core/trays.ts";

const DEGREE = Math.PI / 180;

/**
 * Hoppers: n flat sides, each leaning out by S from upright, joined at their ends. A side is a transition between a
 * lower and an upper free edge; its ends are joined to its neighbours' by the builder.
 *
 * With the mitre off square atan(sin S tan(180°/n)) in the side's own plane and the bevel off square
 * asin(cos S sin(180°/n)), half of the fold between two sides.
 *
 * M1, M2. PUBLISHED (owner's manuals of mitre saws, MS-1065LZ pp. 24-25 and Makita LS1017 p. 14): sprung moulding at 38° and 45°: 31.62 / 33.86 and 35.3 / 30.
 * M3. PUBLISHED (DeWalt DCS361 manual, chart): a four-sided box, sides at 26° from level: 42, 18.
 * M4. PUBLISHED (Popular Woodworking 119, December 2000, p. 46): sides at 30° from level: 49.1074 from the blade line; the
 * bevel follows from tan b = cos(mitre) tan S. CLOSED FORM: 20.70481105.
 * M5. CLOSED FORM (the same trigonometry): mitre / bevel / inside angle between sides.
 * M12. MEMORY (standard): angles between the faces of the regular solids, acos(1/3), acos(−1/3), acos(−√5/3),
 * acos(−1/√5), as hoppers of the faces that meet in a corner, or round one.
 */
interface Hopper {
  readonly id: string;
  readonly sides: number;
  readonly leanDegrees: number;
  readonly mitre: number;
  readonly bevel: number;
  /** Half a unit of the last printed place, or the digits of the closed form, degrees. */
  readonly within: number;
}

const HOPPERS: readonly Hopper[] = [
  { id: "M1", sides: 4, leanDegrees: 38, mitre: 31.62, bevel: 33.86, within: 0.015 },
  { id: "M2", sides: 4, leanDegrees: 45, mitre: 35.3, bevel: 30, within: 0.05 },
  { id: "M3", sides: 4, leanDegrees: 64, mitre: 42, bevel: 18, within: 0.5 },
  { id: "M4", sides: 4, leanDegrees: 60, mitre: 90 - 49.1074, bevel: 20.70481105, within: 0.001 },
  { id: "M5", sides: 4, leanDegrees: 10, mitre: 9.8510761, bevel: 44.136029, within: 1e-6 },
  { id: "M5", sides: 4, leanDegrees: 15, mitre: 14.510819, bevel: 43.079517, within: 1e-6 },
  { id: "M5", sides: 4, leanDegrees: 30, mitre: 26.565051, bevel: 37.761244, within: 1e-6 },
  { id: "M5", sides: 5, leanDegrees: 20, mitre: 13.954905, bevel: 33.527521, within: 1e-6 },
  { id: "M5", sides: 6, leanDegrees: 15, mitre: 8.4987807, bevel: 28.879094, within: 1e-6 },
  { id: "M5", sides: 6, leanDegrees: 30, mitre: 16.102114, bevel: 25.658906, within: 1e-6 },
  { id: "M5", sides: 8, leanDegrees: 15, mitre: 6.1191006, bevel: 21.693652, within: 1e-6 },
  { id: "M5", sides: 8, leanDegrees: 30, mitre: 11.70092, bevel: 19.354596, within: 1e-6 },
];

const SOLIDS = [
  { name: "tetrahedron", sides: 3, leanDegrees: Math.asin(1 / 3) / DEGREE, inside: 70.52877937 },
  { name: "octahedron", sides: 4, leanDegrees: Math.asin(1 / Math.sqrt(3)) / DEGREE, inside: 109.4712206 },
  { name: "icosahedron", sides: 5, leanDegrees: 52.62263187, inside: 138.1896851 },
  { name: "dodecahedron", sides: 3, leanDegrees: 52.62263187, inside: 116.5650512 },
];

const INSIDE_MM = 300;
const HIGH_MM = 200;

function layHopper({ sides, leanDegrees }: Pick<Hopper, "sides" | "leanDegrees">) {
  const corner = (k: number, insideMm: number, z: number) => {
    const angle = ((2 * k + 1) * Math.PI) / sides;
    const radius = insideMm / Math.cos(Math.PI / sides);
    return [radius * Math.cos(angle), radius * Math.sin(angle), z] as const;
  };
  const widerMm = INSIDE_MM + HIGH_MM * Math.tan(leanDegrees * DEGREE);
  const items = Array.from({ length: sides }, (_, k) =>
    transition(
      k + 1,
      freeEdge(corner(k, INSIDE_MM, 0), corner(k + 1, INSIDE_MM, 0)),
      freeEdge(corner(k, widerMm, HIGH_MM), corner(k + 1, widerMm, HIGH_MM)),
    ),
  );
  const project = tray({}, items, { thicknessMm: 10, gapLimitMm: 0 });
  const joined = items.map(({ id }, k) => ({
    first: { itemId: id, edgeId: "end" },
    second: { itemId: at(items, (k + 1) % sides).id, edgeId: "start" },
  }));
  return layTray({ ...project, joints: { ...project.joints, joined } });
}

/** The angle of the side's end off square, on the flat pattern as it is written. */
function mitreOf(part: Part): number {
  const edge = (edgeId: string) => {
    const points = part.loops
      .flatMap(({ edges }) => edges.filter((one) => one.edgeId === edgeId))
      .flatMap((one) => one.points);
    return [at(points, 0), at(points, -1)] as const;
  };
  const direction = ([a, b]: readonly [FlatPoint, FlatPoint]) => Math.atan2(b.v - a.v, b.u - a.u);
  const between = Math.abs(direction(edge("end")) - direction(edge("first"))) % Math.PI;
  return Math.abs(between - Math.PI / 2) / DEGREE;
}

describe.each(HOPPERS)("$id: a hopper of $sides sides that lean out by $leanDegrees°", (hopper) => {
  const laid = layHopper(hopper);

  it("has no problem, and a joint at every corner", () => {
    expect(laid.problems).toEqual([]);
    expect(laid.joints).toHaveLength(hopper.sides);
  });

  it("has its ends mitred off square as the trade says", () => {
    for (const part of laid.parts) expect(Math.abs(mitreOf(part) - hopper.mitre)).toBeLessThan(hopper.within);
  });

  it("has them bevelled off square, half of the fold on each", () => {
    for (const { foldRad, bevelRad, cut } of laid.joints as readonly Joint[]) {
      expect(cut).toBe("mitre");
      for (const bevel of bevelRad)
        expect(Math.abs(bevel / DEGREE - hopper.bevel)).toBeLessThan(hopper.within);
      expect(foldRad[0] / DEGREE / 2).toBeCloseTo(at(bevelRad, 0) / DEGREE, 9);
    }
  });
});

describe.each(SOLIDS)("M12: the faces of a $name", (solid) => {
  it("meet at its angle", () => {
    for (const { foldRad } of layHopper(solid).joints)
      expect(Math.abs(180 - foldRad[0] / DEGREE - solid.inside)).toBeLessThan(1e-6);
  });
});
