import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at, distanceSpace, type PlanPoint, type SpacePoint } from "../../../core/foundation/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { Item, Opening, PlanElement, SideNode } from "../../../core/project/index.ts";
import { placeUnder, pointOnRuled, type RuledSurface } from "../../../core/rulings/index.ts";
import {
  faceHeightAt,
  spotOnEdge,
  type TransitionSheet,
  transitionAreaInSpace,
} from "../../../core/surfaces/index.ts";
import { boxNodes, circleNodes, opening, withOpenings } from "../openings.ts";
import {
  edgeOf,
  freeEdge,
  type LaidTray,
  layTray,
  partOf,
  rectangle,
  relativeMiss,
  section,
  sideNode,
  stretchOf,
  transition,
  tray,
} from "../trays.ts";

const RELATIVE = 1e-6;
const CLOSED_MM = 1e-6;
const MEET_MM = 0.01;

const FLOOR = [sideNode("a", -100, 60), sideNode("b", 2000, 60)];
const RISING = [sideNode("a", -100, 100), sideNode("b", 2000, 100)];
const RAMP = [
  sideNode("a", 0, 60),
  sideNode("b", 900, 60, { next: "curve", meets: "smooth" }),
  sideNode("c", 1800, 120, { tangentInRad: Math.atan(120 / 900) }),
];
const STEEP = [
  sideNode("a", 0, 90),
  sideNode("b", 1000, 90, { next: "curve", meets: "smooth" }),
  sideNode("c", 1800, 190, { tangentInRad: Math.atan(200 / 800) }),
];
const inner = section(1, rectangle(0, 1800, 0, 300));
const outer = section(2, rectangle(0, 1800, 480, 700), { profileId: "q" });
const bridge = transition(1, stretchOf("s1", "outer", "front"), stretchOf("s2", "inner", "rear"));

const lay = (
  openings: readonly Opening[],
  items: readonly Item[] = [inner, outer, bridge],
  profiles: Readonly<Record<string, readonly SideNode[]>> = { p: RAMP, q: STEEP },
  settings = {},
) =>
  layTray(
    withOpenings(tray(profiles, items, { thicknessMm: 10, leastBendRatio: 20, ...settings }), ...openings),
  );
const level = { p: FLOOR, q: RISING };

const sheetOf = (laid: LaidTray, id: string): TransitionSheet => {
  const sheet = laid.sheets.find((one) => one.id === id);
  if (sheet?.kind !== "transition") throw new Error(`no transition ${id}`);
  return sheet;
};

function expectClosed(part: Part): void {
  for (const { edges } of part.loops)
    edges.forEach(({ points }, i) => {
      const [a, b] = [at(at(edges, i - 1).points, -1), at(points, 0)];
      expect(Math.hypot(b.u - a.u, b.v - a.v), part.id).toBeLessThan(CLOSED_MM);
    });
}

/** Flat and space agree: all of them to 1e-6 where the sheet is developable, within its twist elsewhere. */
function expectFigures(part: Part): void {
  expectClosed(part);
  const twist = part.twist?.maxTwistRad ?? 0;
  const tolerance = Math.max(RELATIVE, (twist * twist) / 10);
  expect(relativeMiss(part.flatAreaMm2, part.spaceAreaMm2), part.id).toBeLessThan(tolerance);
  for (const edge of part.edges)
    expect(relativeMiss(edge.flatLengthMm, edge.spaceLengthMm), edge.edgeId).toBeLessThan(
      edge.opening ? Math.max(RELATIVE, twist * twist) : RELATIVE,
    );
}

/** The area of a surface at a depth where `isLeft` says so of its plan points, by small triangles. */
function bruteArea(
  surface: RuledSurface,
  depthMm: number,
  isLeft: (p: PlanPoint) => boolean,
  [across, along] = [400, 1600],
): number {
  const triangle = (a: SpacePoint, b: SpacePoint, c: SpacePoint) => {
    const [u, v] = [
      { x: b.x - a.x, y: b.y - a.y, z: b.z - a.z },
      { x: c.x - a.x, y: c.y - a.y, z: c.z - a.z },
    ];
    return Math.hypot(u.y * v.z - u.z * v.y, u.z * v.x - u.x * v.z, u.x * v.y - u.y * v.x) / 2;
  };
  let sum = 0;
  const row = (i: number) => {
    const sMm = (surface.lengthSMm * i) / along;
    const [a, b] = [
      pointOnRuled(surface, { sMm, t: 0 }, depthMm),
      pointOnRuled(surface, { sMm, t: 1 }, depthMm),
    ];
    return Array.from({ length: across + 1 }, (_, k): SpacePoint => {
      const t = k / across;
      return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t, z: a.z + (b.z - a.z) * t };
    });
  };
  let before = row(0);
  for (let i = 1; i <= along; i++) {
    const after = row(i);
    for (let k = 0; k < across; k++) {
      const [a, b, c, d] = [at(before, k), at(before, k + 1), at(after, k + 1), at(after, k)];
      if (isLeft({ x: (a.x + c.x) / 2, y: (a.y + c.y) / 2 })) sum += triangle(a, b, c) + triangle(a, c, d);
    }
    before = after;
  }
  return sum;
}

/** Length of a circle's wall on the face at a depth: fine chords between points found under the circle. */
function bruteCircle(
  surface: RuledSurface,
  [x, y, r]: readonly [number, number, number],
  depthMm: number,
): number {
  const find = placeUnder(surface, depthMm, "endless");
  const points = Array.from({ length: 721 }, (_, i): SpacePoint => {
    const a = (2 * Math.PI * i) / 720;
    const place = find({ x: x + r * Math.cos(a), y: y + r * Math.sin(a) }) ?? { sMm: 0, t: 0 };
    return pointOnRuled(surface, place, depthMm);
  });
  const chords = (step: number) =>
    points.reduce(
      (sum, b, i) => (i >= step && i % step === 0 ? sum + distanceSpace(at(points, i - step), b) : sum),
      0,
    );
  return chords(1) + (chords(1) - chords(2)) / 3;
}

const around = (part: Part) => part.edges.filter(({ opening: own }) => own !== undefined);
const openingKinds = ({ problems }: LaidTray) =>
  problems.map(({ kind }) => kind).filter((kind) => kind.startsWith("opening"));

describe("an opening in a flat transition", () => {
  it("is what it is in the section that has the same plane", () => {
    const tilt = Math.atan(40 / 180);
    const one = section(1, rectangle(0, 1800, 300, 480), { tiltRad: tilt, pivotYMm: 300 });
    const shape = [circleNodes(700, 390, 60), boxNodes(1000, 1200, 350, 600)] as const;
    const openings = shape.map((nodes, i) => opening(i + 1, nodes));
    const likeSection = partOf(lay(openings, [one], level), "S1");
    const laid = lay(openings, undefined, level);
    const part = partOf(laid, "T1");
    expect(openingKinds(laid)).toEqual([]);
    expectFigures(part);
    expect(relativeMiss(part.spaceAreaMm2, likeSection.spaceAreaMm2)).toBeLessThan(0.05);
    for (const edge of around(likeSection)) {
      const own = edgeOf(part, edge.edgeId);
      if (edge.edgeId === "oh2.b" || edge.edgeId === "oh2.d") continue;
      expect(relativeMiss(own.spaceLengthMm, edge.spaceLengthMm), edge.edgeId).toBeLessThan(1e-8);
      expect(relativeMiss(own.drawnLengthMm, edge.drawnLengthMm), edge.edgeId).toBeLessThan(1e-8);
      const extremes = ({ bevels }: typeof edge) =>
        [Math.max, Math.min].map((of) => of(...bevels.map((b) => b.bevelRad)));
      if (edge.bevels.length > 0)
        extremes(own).forEach((rad, i) => {
          expect(Math.abs(rad - at(extremes(edge), i))).toBeLessThan(1e-6);
        });
    }
  });

  it("is an ellipse that its plan circle stretches to, and its bevel the slope where it runs along the sheet", () => {
    const part = partOf(lay([opening(1, circleNodes(700, 390, 60))], undefined, level), "T1");
    const whole = partOf(lay([], undefined, level), "T1");
    const slope = Math.atan(40 / 180);
    expect(
      relativeMiss(whole.spaceAreaMm2 - part.spaceAreaMm2, (Math.PI * 3600) / Math.cos(slope)),
    ).toBeLessThan(1e-6);
    const bevels = around(part).flatMap((edge) => edge.bevels.map(({ bevelRad }) => bevelRad));
    expect(Math.max(...bevels)).toBeCloseTo(slope, 3);
    expect(Math.min(...bevels)).toBeCloseTo(-slope, 3);
    expect(part.loops).toHaveLength(2);
  });

  it("across a side is a bite, and leaves the rest of the side joined", () => {
    const laid = lay([opening(1, boxNodes(600, 900, 250, 400))], undefined, level);
    const part = partOf(laid, "T1");
    expectFigures(part);
    expect(part.loops).toHaveLength(1);
    expect(edgeOf(part, "first").drawnLengthMm).toBeCloseTo(1500, 6);
    expect(edgeOf(part, "second").drawnLengthMm).toBeCloseTo(1800, 6);
    expect(partOf(laid, "S1").edges.some(({ edgeId }) => edgeId === "oh1.a")).toBe(true);
    const joined = laid.joints.filter(({ partIds }) => partIds.includes("S1"));
    expect(joined.reduce((sum, { lengthMm }) => sum + lengthMm, 0)).toBeCloseTo(1500, 3);
  });

  it("across both sides cuts it in two, front before rear", () => {
    const laid = lay([opening(1, boxNodes(600, 900, 250, 600))], undefined, level);
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1", "S2", "T1.1", "T1.2"]);
    for (const id of ["T1.1", "T1.2"]) expectFigures(partOf(laid, id));
    const slope = Math.cos(Math.atan(40 / 180));
    expect(relativeMiss(partOf(laid, "T1.1").spaceAreaMm2, (600 * 180) / slope)).toBeLessThan(1e-6);
    expect(relativeMiss(partOf(laid, "T1.2").spaceAreaMm2, (900 * 180) / slope)).toBeLessThan(1e-6);
    expect(faceHeightAt(sheetOf(laid, "T1.1"), 5, { x: 300, y: 390 })).toBeDefined();
    expect(faceHeightAt(sheetOf(laid, "T1.2"), 5, { x: 300, y: 390 })).toBeUndefined();
    expect(faceHeightAt(sheetOf(laid, "T1.1"), 5, { x: 700, y: 390 })).toBeUndefined();
  });

  it("over a closing edge shortens the sheet there", () => {
    const laid = lay([opening(1, boxNodes(-50, 100, 350, 400))], undefined, level);
    const part = partOf(laid, "T1");
    expectFigures(part);
    const whole = Math.hypot(180, 40);
    // The wall is plumb: on the neutral fibre both of its sides are where they are on top.
    expect(edgeOf(part, "end").spaceLengthMm).toBeCloseTo(whole - 50 / Math.cos(Math.atan(40 / 180)), 6);
  });

  it("that takes all of it leaves none, and names it", () => {
    const laid = lay([opening(1, boxNodes(-50, 1900, 200, 600))], undefined, level);
    expect(openingKinds(laid)).toContain("opening-leaves-nothing");
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1", "S2"]);
  });

  it("is square where it is said to be, by the foot on top", () => {
    const laid = lay(
      [opening(1, circleNodes(700, 390, 60), { cut: "square", itemId: "t1" })],
      undefined,
      level,
    );
    const part = partOf(laid, "T1");
    expectFigures(part);
    for (const edge of around(part)) expect(edge.bevels).toEqual([]);
    expect(part.loops).toHaveLength(2);
  });
});

describe("an opening in a transition between two ramps", () => {
  const circle = [1200, 390, 70] as const;
  const laid = lay([opening(1, circleNodes(...circle))]);
  const part = partOf(laid, "T1");
  const { chart, depths } = sheetOf(laid, "T1");

  it("is as long around, drawn and on the neutral fibre, as its curve in space", () => {
    const sum = (key: "drawnLengthMm" | "spaceLengthMm") =>
      around(part).reduce((total, edge) => total + edge[key], 0);
    expect(relativeMiss(sum("drawnLengthMm"), bruteCircle(chart.surface, circle, 0))).toBeLessThan(1e-8);
    expect(
      relativeMiss(sum("spaceLengthMm"), bruteCircle(chart.surface, circle, depths.neutralMm)),
    ).toBeLessThan(1e-8);
    expectFigures(part);
  });

  it("takes away what stands over it", () => {
    const [x, y, r] = circle;
    const brute = bruteArea(chart.surface, depths.neutralMm, (p) => Math.hypot(p.x - x, p.y - y) > r);
    expect(relativeMiss(transitionAreaInSpace(sheetOf(laid, "T1")), brute)).toBeLessThan(1e-4);
  });

  it("that takes nothing has the area of the whole by either reckoning", () => {
    const without = partOf(lay([]), "T1");
    const tiny = partOf(lay([opening(1, boxNodes(900, 902, 390, 392))]), "T1");
    expect(relativeMiss(without.spaceAreaMm2 - tiny.spaceAreaMm2, 4)).toBeLessThan(0.05);
  });

  it("that lies on the joint cuts both sheets, and their walls meet at every depth", () => {
    const over = lay([opening(1, circleNodes(1200, 300, 60))]);
    const sheets = over.sheets.filter(({ id }) => id === "S1" || id === "T1");
    for (const depthMm of [0, 3, 6, 10]) {
      for (const sheet of sheets) {
        if (sheet.kind === "fence") continue;
        for (let i = 0; i < 64; i++) {
          const a = (2 * Math.PI * (i + 0.5)) / 64;
          const spotAt = (r: number) => ({ x: 1200 + r * Math.cos(a), y: 300 + r * Math.sin(a) });
          if (sheet.kind === "section" ? a < Math.PI : a > Math.PI) continue;
          if (Math.abs(Math.sin(a)) * 60 < 15) continue;
          expect(faceHeightAt(sheet, depthMm, spotAt(60 - 0.03))).toBeUndefined();
          expect(faceHeightAt(sheet, depthMm, spotAt(60 + 0.03))).toBeDefined();
        }
      }
    }
    expectFigures(partOf(over, "T1"));
    for (const sheet of sheets) {
      if (sheet.kind === "fence") continue;
      for (const edge of sheet.loops.flatMap(({ edges }) => edges)) {
        if (edge.openingId === undefined) continue;
        for (const share of [0, 0.3, 0.7, 1]) {
          const { x, y } = spotOnEdge(sheet, edge, share).point;
          expect(Math.abs(Math.hypot(x - 1200, y - 300) - 60)).toBeLessThan(MEET_MM);
        }
      }
    }
  });
});

describe("an opening in a twisted transition", () => {
  const twisted = (openings: readonly Opening[]) =>
    lay(
      openings,
      [inner, transition(1, stretchOf("s1", "outer", "front"), freeEdge([0, 900, 60], [1800, 900, 300]))],
      level,
      { leastBendRatio: 10, thicknessMm: 10 },
    );

  it("is cut into every strip that it crosses", () => {
    const laid = twisted([opening(1, circleNodes(900, 600, 100))]);
    const sheet = sheetOf(laid, "T1");
    const part = partOf(laid, "T1");
    expect(openingKinds(laid)).toEqual([]);
    expectFigures(part);
    expect(sheet.strips.length).toBeGreaterThan(1);
    const brute = bruteArea(
      sheet.chart.surface,
      sheet.depths.neutralMm,
      (p) => Math.hypot(p.x - 900, p.y - 600) > 100,
    );
    expect(relativeMiss(transitionAreaInSpace(sheet), brute)).toBeLessThan(1e-4);
  });

  it("from edge to edge makes two sheets of every strip", () => {
    const laid = twisted([opening(1, boxNodes(700, 900, 250, 950))]);
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1", "T1.1", "T1.2"]);
    for (const id of ["T1.1", "T1.2"]) {
      expectFigures(partOf(laid, id));
      expect(sheetOf(laid, id).loops.length).toBe(sheetOf(laid, id).strips.length);
    }
  });
});

describe("openings of a mirrored tray with transitions", () => {
  it("cut both hands, and a transition across the centre line twice", () => {
    const mirrored = { symmetry: "mirrored" } as const;
    const both = lay([opening(1, circleNodes(900, 390, 60))], undefined, level, mirrored);
    for (const id of ["T1R", "T1L"]) expect(partOf(both, id).loops).toHaveLength(2);
    const off = section(1, rectangle(0, 1800, 200, 500));
    const across = transition(1, stretchOf("s1", "inner", "rear"), stretchOf("s1", "inner", "rear", "left"));
    const whole = lay([opening(1, circleNodes(900, 100, 60))], [off, across], level, mirrored);
    expect(partOf(whole, "T1").loops).toHaveLength(3);
    expectFigures(partOf(whole, "T1"));
    expect(edgeOf(partOf(whole, "T1"), "oh1.c0.left").name).toBe("Hatch 1, left");
  });
});

describe("an opening over a transition that stands upright", () => {
  it("is named, since plan does not show where to cut it", () => {
    const wall = transition(1, stretchOf("s1", "outer", "front"), freeEdge([0, 300, 160], [1800, 300, 160]));
    const laid = lay([opening(1, circleNodes(900, 300, 60))], [inner, wall], level);
    expect(openingKinds(laid)).toEqual(["opening-not-on-pattern"]);
  });
});

describe("any opening over any transition", () => {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  it("leaves an outline that closes, and the area that its plan says", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number(420, 700), number(0, 300)), { minLength: 2, maxLength: 4 }),
        fc.tuple(number(100, 1700), number(250, 700), number(20, 160)),
        fc.boolean(),
        (heights, [x, y, r], isBox) => {
          const nodes = heights.map(([ey, z], i) => ({
            id: `e${i}`,
            x: (1800 * i) / (heights.length - 1),
            y: ey,
            z,
            next: "line" as const,
          }));
          const elements: readonly PlanElement[] = isBox
            ? boxNodes(x - r, x + r, y - r, y + r)
            : circleNodes(x, y, r);
          const items = [inner, transition(1, stretchOf("s1", "outer", "front"), { kind: "free", nodes })];
          const laid = lay([opening(1, elements)], items);
          const sheets = laid.sheets.filter((sheet) => sheet.kind === "transition");
          const parts = laid.parts.filter(({ kind }) => kind === "transition");
          const [sheet] = sheets;
          if (!sheet) return;
          for (const part of parts) expectClosed(part);
          const taken = (p: PlanPoint) =>
            isBox ? Math.max(Math.abs(p.x - x), Math.abs(p.y - y)) < r : Math.hypot(p.x - x, p.y - y) < r;
          const brute = bruteArea(sheet.chart.surface, sheet.depths.neutralMm, (p) => !taken(p), [120, 500]);
          const total = sheets.reduce((sum, one) => sum + transitionAreaInSpace(one), 0);
          if (laid.problems.some(({ kind }) => kind === "transition-creased")) return;
          expect(relativeMiss(total, brute)).toBeLessThan(1e-3);
        },
      ),
      { numRuns: 8, seed: 5 },
    );
  });
});
