import { describe, expect, it } from "vitest";
import {
  areaOfRuled,
  developRuled,
  lengthOnRuled,
  pairEdges,
  pointOnRuled,
  type RuledSurface,
  rulingAt,
} from "../../../core/rulings/index.ts";
import { edgeOf, pairEqualFractions } from "./edges-of.ts";
import { distance, flatArea, flatLength } from "./flat-figures.ts";

const FOAM = { thicknessMm: 10, leastRadiusMm: 600 };
const RELATIVE = 1e-7;
const RAD = 1e-6;

/** A sheet that is warped by several degrees, and one that is bent only. */
const warped = pairEdges(
  edgeOf((t) => [1400 * t, 20 * Math.sin(2 * t), 10 * t]),
  edgeOf((t) => [1300 * t + 40, 300 + 30 * t, 60 * t + 120 * t ** 3]),
  FOAM,
);
const bent = pairEdges(
  edgeOf((t) => [900 * Math.sin(t), 0, 900 * (1 - Math.cos(t))]),
  edgeOf((t) => [900 * Math.sin(t), 300 + 50 * t, 900 * (1 - Math.cos(t))]),
  FOAM,
);

const angle = (ax: number, ay: number, bx: number, by: number): number =>
  Math.atan2(ax * by - ay * bx, ax * bx + ay * by);

/** Angle between the first edge and the ruling, in space and in the flat, at one s, by differences along the edge. */
function edgeAngles(sheet: RuledSurface, sMm: number): readonly [space: number, flat: number] {
  const h = 1e-3;
  const flat = developRuled(sheet, 0);
  const [a, b] = [-h, h].map((d) => pointOnRuled(sheet, { sMm: sMm + d, t: 0 }, 0));
  const [p, q] = [-h, h].map((d) => flat.flatAt({ sMm: sMm + d, t: 0 }));
  if (!a || !b || !p || !q) throw new Error("two points");
  const { direction } = rulingAt(sheet, sMm);
  const v = [b.x - a.x, b.y - a.y, b.z - a.z];
  const dot = v.reduce((sum, value, k) => sum + value * ([direction.x, direction.y, direction.z][k] ?? 0), 0);
  const space = Math.acos(dot / Math.hypot(...v));
  const ruling = flat.rulingAngleAt(sMm);
  return [space, Math.abs(angle(q.u - p.u, q.v - p.v, Math.cos(ruling), Math.sin(ruling)))];
}

describe("a ruled sheet laid flat", () => {
  it("keeps every ruling's length and the angle between ruling and edge, twisted or not", () => {
    for (const sheet of [warped, bent]) {
      const flat = developRuled(sheet, 0);
      for (const share of [0.1, 0.37, 0.6, 0.93]) {
        const sMm = share * sheet.lengthSMm;
        const { lengthMm } = rulingAt(sheet, sMm);
        const [from, to] = [flat.flatAt({ sMm, t: 0 }), flat.flatAt({ sMm, t: 1 })];
        expect(Math.abs(distance(from, to) / lengthMm - 1)).toBeLessThan(RELATIVE);
        const [space, laid] = edgeAngles(sheet, sMm);
        expect(Math.abs(space - laid)).toBeLessThan(RAD);
      }
    }
  });

  it("lies with its middle line along +u from its forward end, and counter-clockwise as seen from above", () => {
    for (const sheet of [warped, bent]) {
      const flat = developRuled(sheet, 5);
      const [front, rear] = [flat.flatAt({ sMm: 0, t: 0.5 }), flat.flatAt({ sMm: sheet.lengthSMm, t: 0.5 })];
      expect(Math.hypot(front.u, front.v)).toBeLessThan(1e-9);
      expect(rear.u).toBeGreaterThan(500);
      expect(Math.abs(rear.v)).toBeLessThan(1e-9);
      // The second edge is the right one; u rearward and v to the right.
      expect(flat.flatAt({ sMm: sheet.lengthSMm / 2, t: 1 }).v).toBeGreaterThan(0);
      expect(flatArea(sheet, flat)).toBeGreaterThan(0);
    }
  });

  it("at a depth is shorter inside of a bend by depth times turn", () => {
    // A quarter-ish of a cylinder of radius 900 that curves up: its inward normal is on the inside.
    const turn = 1;
    const [drawn, deep] = [0, 12].map((depthMm) => flatLength(bent, developRuled(bent, depthMm), 0));
    expect(Math.abs((drawn ?? 0) - (deep ?? 0) - 12 * turn)).toBeLessThan(1e-6);
    expect(
      Math.abs(flatLength(bent, developRuled(bent, 12), 1) / lengthOnRuled(bent, 12, 1) - 1),
    ).toBeLessThan(RELATIVE);
  });

  it("at a depth opens a fan's apex into an arc of that radius", () => {
    const fan = pairEdges(
      edgeOf((t) => [400 + 200 * t, 0, 0]),
      edgeOf((t) => [1000 * t, 300, 160 * t * t]),
      FOAM,
    );
    for (const depthMm of [4, 12])
      for (const t of [0, 1]) {
        const ratio = flatLength(fan, developRuled(fan, depthMm), t) / lengthOnRuled(fan, depthMm, t);
        expect(Math.abs(ratio - 1)).toBeLessThan(1e-6);
      }
  });

  it("divided along constant t gives strips whose edges have the length they have in space", () => {
    const depthMm = 5;
    for (const [from, to] of [
      [0, 1 / 3],
      [1 / 3, 2 / 3],
      [2 / 3, 1],
    ] as const) {
      const strip = developRuled(warped, depthMm, [from, to]);
      for (const t of [from, to])
        expect(Math.abs(flatLength(warped, strip, t) / lengthOnRuled(warped, depthMm, t) - 1)).toBeLessThan(
          RELATIVE,
        );
      const area = flatArea(warped, strip, [from, to]);
      const space = areaOfRuled(warped, depthMm, [from, to]);
      const whole = Math.abs(
        flatArea(warped, developRuled(warped, depthMm)) / areaOfRuled(warped, depthMm) - 1,
      );
      // A third of the width has a ninth of the twist's effect on the area; its strips differ a little among each other.
      expect(Math.abs(area / space - 1)).toBeLessThan(whole / 4);
    }
  });

  it("goes on flat beyond its ends and straight beyond its edges", () => {
    const flat = developRuled(bent, 3);
    const [inside, beyond] = [bent.lengthSMm, bent.lengthSMm + 40].map((sMm) => ({ sMm, t: 0.2 }));
    if (!inside || !beyond) throw new Error("two places");
    const [p, q] = [pointOnRuled(bent, inside, 3), pointOnRuled(bent, beyond, 3)];
    expect(Math.hypot(q.x - p.x, q.y - p.y, q.z - p.z)).toBeCloseTo(40, 9);
    expect(distance(flat.flatAt(inside), flat.flatAt(beyond))).toBeCloseTo(40, 9);
    const { lengthMm } = rulingAt(bent, 200);
    const over = distance(flat.flatAt({ sMm: 200, t: 1 }), flat.flatAt({ sMm: 200, t: 1.1 }));
    expect(over).toBeCloseTo(0.1 * lengthMm, 8);
  });

  it("turns a crease into an arc about it, on the neutral fibre", () => {
    const bentLine = (y: number) =>
      edgeOf(
        (t) => [500 * t, y, 0],
        (t) => [500 + 500 * t, y, 100 * t],
      );
    const sheet = pairEdges(bentLine(0), bentLine(300), FOAM);
    const legs = 500 + Math.hypot(500, 100);
    // The core lies inside of the fold: less by depth times angle.
    expect(lengthOnRuled(sheet, 6, 0)).toBeCloseTo(legs - 6 * Math.atan(0.2), 8);
    const flat = developRuled(sheet, 6);
    const ends = [0, sheet.lengthSMm].map((sMm) => flat.flatAt({ sMm, t: 0 }));
    expect(distance(ends[0] ?? { u: 0, v: 0 }, ends[1] ?? { u: 0, v: 0 })).toBeCloseTo(
      legs - 6 * Math.atan(0.2),
      8,
    );
  });
});

describe("figures in space of a ruled sheet", () => {
  it("its area is that of many small triangles between its points", () => {
    const sheet = pairEqualFractions(
      edgeOf((t) => [1000 * t, 0, 50 * t * t]),
      edgeOf((t) => [900 * t, 300, 150 * t]),
    );
    const areaBy = (n: number) => {
      let sum = 0;
      for (let i = 0; i < n; i++)
        for (let j = 0; j < 48; j++) {
          const at = (k: number, m: number) =>
            pointOnRuled(sheet, { sMm: ((i + k) / n) * sheet.lengthSMm, t: (j + m) / 48 }, 5);
          const [a, b, c, d] = [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
          const half = (p: typeof a, q: typeof a, r: typeof a) => {
            const [x, y, z] = [q.x - p.x, q.y - p.y, q.z - p.z];
            const [u, v, w] = [r.x - p.x, r.y - p.y, r.z - p.z];
            return Math.hypot(y * w - z * v, z * u - x * w, x * v - y * u) / 2;
          };
          sum += half(a, b, c) + half(a, c, d);
        }
      return sum;
    };
    expect(Math.abs(areaOfRuled(sheet, 5) / areaBy(120) - 1)).toBeLessThan(2e-6);
  });
});
