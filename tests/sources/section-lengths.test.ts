import { describe, expect, it } from "vitest";
import type { Part } from "../../core/patterns/index.ts";
import type { PlanNode, SideNode } from "../../core/project/index.ts";
import {
  arcProfile,
  edgeOf,
  partOf,
  planNode,
  rectangle,
  relativeMiss,
  section,
  sideNode,
  soundTray,
  type TraySettings,
  tray,
} from "../core/trays.ts";

/** Lengths and areas of a pattern as written, and of curves by quadrature. */
const PATTERN_RELATIVE = 1e-6;
/** A spline fitted through points of another curve, dense enough for this. */
const FITTED_RELATIVE = 2e-6;

const RADIANS_PER_DEGREE = Math.PI / 180;
/** Bent tighter than foam can: these shapes are for checking, not for building, and this foam takes them whole. */
const BENT_WHOLE = 1;

function layOne(
  profile: readonly SideNode[],
  outline: readonly PlanNode[],
  settings: TraySettings = {},
): Part {
  const project = tray({ p: profile }, [section(1, outline)], {
    drawnFace: "neutral",
    thicknessMm: 2,
    skinMm: 0,
    leastBendRatio: BENT_WHOLE,
    ...settings,
  });
  return partOf(soundTray(project), "S1");
}

/** All three lengths of an edge, which are three computations, against one figure. */
function expectLengths(part: Part, edgeId: string, lengthMm: number, relative = PATTERN_RELATIVE): void {
  const edge = edgeOf(part, edgeId);
  expect(relativeMiss(edge.drawnLengthMm, lengthMm)).toBeLessThan(relative);
  expect(relativeMiss(edge.spaceLengthMm, lengthMm)).toBeLessThan(relative);
  expect(relativeMiss(edge.flatLengthMm, lengthMm)).toBeLessThan(relative);
}

function expectAreas(part: Part, areaMm2: number, relative = PATTERN_RELATIVE): void {
  expect(relativeMiss(part.spaceAreaMm2, areaMm2)).toBeLessThan(relative);
  expect(relativeMiss(part.flatAreaMm2, areaMm2)).toBeLessThan(relative);
}

const flatPoints = (part: Part, edgeId: string) =>
  part.loops
    .flatMap(({ edges }) => edges)
    .filter((edge) => edge.edgeId === edgeId)
    .flatMap(({ points }) => points);

describe("a half cylinder cut by a plane, D12", () => {
  // D12. CLOSED FORM ("section of a cylinder unrolls to a sine curve"; from memory: Hilbert & Cohn-Vossen).
  // R = 50, plane at 30°: v = R tan 30° cos(s/R); half of the edge 338.895880635088, half of the stretchout 314.159265358979.
  const radiusMm = 50;
  const slope = Math.tan(30 * RADIANS_PER_DEGREE);
  const profile = [
    sideNode("a", -50, 50),
    sideNode("b", -50, 0, { radiusMm }),
    sideNode("c", 50, 0, { radiusMm }),
    sideNode("d", 50, 50),
  ];
  // Drawn clockwise, which changes nothing.
  const outline = [
    planNode("straight", -50, 100),
    planNode("rear", 50, 100),
    planNode("slanted", 50, 50 * slope),
    planNode("front", -50, -50 * slope),
  ];

  const part = layOne(profile, outline);

  it("has the length of half an ellipse on its slanted edge", () => {
    expectLengths(part, "slanted", 338.895880635088 / 2);
  });

  it("has half the circumference on its straight edge", () => {
    expectLengths(part, "straight", 314.159265358979 / 2);
  });

  it("has a cosine for its slanted edge", () => {
    const points = flatPoints(part, "slanted");
    expect(points.length).toBeGreaterThan(20);
    for (const { u, v } of points) {
      // y = x tan 30° with x = -R cos(s/R), s from the front vertical tangent.
      const expected = -radiusMm * slope * Math.cos(u / radiusMm);
      expect(Math.abs(v - expected)).toBeLessThan(1e-6);
    }
  });

  it("has the area under a cosine that is as often above as below", () => {
    expectAreas(part, 100 * (314.159265358979 / 2));
  });
});

describe("a panel of a cylinder with one slanted edge, D19", () => {
  // D19. CLOSED FORM. R = 1000, f 0 to 0.5 rad, edge y = 300 + 0.2 x; confirmed by a brute-force triangle strip.
  const endX = 1000 * Math.sin(0.5);
  const part = layOne(arcProfile([0, 0], 1000, 0.5, 1), [
    planNode("inner", 0, 0),
    planNode("rear", endX, 0),
    planNode("outer", endX, 300 + 0.2 * endX),
    planNode("front", 0, 300),
  ]);

  it("has both edges and the area of the closed form", () => {
    expectLengths(part, "inner", 500);
    expectLengths(part, "outer", 509.123649403456);
    expectAreas(part, 174483.487621925);
  });

  it("has the flat diagonals of the closed form", () => {
    const corner = (edgeId: string) => flatPoints(part, edgeId)[0] ?? { u: Number.NaN, v: Number.NaN };
    const [a0, a1, b1, b0] = ["inner", "rear", "outer", "front"].map(corner);
    if (!a0 || !a1 || !b0 || !b1) throw new Error("four corners");
    expect(Math.hypot(b1.u - a0.u, b1.v - a0.v)).toBeCloseTo(637.749965515594, 5);
    expect(Math.hypot(b0.u - a1.u, b0.v - a1.v)).toBeCloseTo(583.09518948453, 5);
  });
});

describe("panels of general cylinders, D20 and A2, A8", () => {
  // D20 and A2. CLOSED FORM / METHOD: a parabola of span 1000 and rise 100, width 300. A cubic carries it exactly:
  // one curve between two nodes with both tangents typed and the knot spacing of the Bézier that it is.
  it("a parabola", () => {
    const slope = Math.atan(0.4);
    // z = 0.4 x − 0.0004 x²; over t = x/1000 its end slopes are (1000, ±400): a knot spacing of |(1000, 400)|.
    const knotSpacingMm = Math.hypot(1000, 400);
    const part = layOne(
      [
        sideNode("a", 0, 0, { next: "curve", tangentOutRad: slope, knotSpacingMm }),
        sideNode("b", 1000, 0, { tangentInRad: -slope }),
      ],
      rectangle(0, 1000, 0, 300),
    );
    expectLengths(part, "inner", 1026.0606304268445);
    expectLengths(part, "outer", 1026.0606304268445);
    expectAreas(part, 307818.189128053);
  });

  // A8. CLOSED FORM: the smoothstep ramp L = 600, h = 120, the cubic Bézier (0,0)(200,0)(400,120)(600,120).
  it("a smoothstep ramp", () => {
    const part = layOne(
      [
        sideNode("a", 0, 0, { next: "curve", tangentOutRad: 0, knotSpacingMm: 600 }),
        sideNode("b", 600, 120, { tangentInRad: 0 }),
      ],
      rectangle(0, 600, 0, 200),
    );
    expectLengths(part, "inner", 614.1620287839099);
    expectAreas(part, 200 * 614.1620287839099);
  });

  // D20. CLOSED FORM: a quarter ellipse 400 × 100, width 250, from a vertical tangent to a level one. Splines are no
  // ellipse: 40 nodes, close where it bends most, keep the length to 2e-6.
  it("a quarter ellipse, as closely as a spline through 40 points goes", () => {
    const count = 40;
    const nodes = Array.from({ length: count + 1 }, (_, i) => {
      const angle = (Math.PI / 2) * (i / count);
      return sideNode(`n${i}`, -400 * Math.cos(angle), -100 * Math.sin(angle), {
        next: i === count ? "line" : "curve",
        ...(i === 0 && { tangentOutRad: -Math.PI / 2 }),
        ...(i === count && { tangentInRad: 0 }),
      });
    });
    const part = layOne(nodes, rectangle(-400, 0, 0, 250), { thicknessMm: 1 });
    expectLengths(part, "inner", 428.9210887578417, FITTED_RELATIVE);
    expectAreas(part, 107230.27218946, FITTED_RELATIVE);
  });
});

describe("the neutral fibre of a sandwich arc, O3 and O4", () => {
  // O3, O4. CLOSED FORM (beam theory): inside radius, sweep, t = 20: inner, middle, outer length and outer-fibre strain.
  it.each([
    {
      insideMm: 500,
      degrees: 60,
      inner: 523.5987755982989,
      middle: 534.070751110265,
      strain: 0.0196078431372549,
    },
    {
      insideMm: 300,
      degrees: 90,
      inner: 471.238898038469,
      middle: 486.946861306418,
      strain: 0.03225806451612903,
    },
  ])("of inside radius $insideMm over $degrees°", ({ insideMm, degrees, inner, middle, strain }) => {
    const sweep = degrees * RADIANS_PER_DEGREE;
    const drawn = (drawnFace: "air" | "neutral", radiusMm: number, turns: 1 | -1) => {
      const width = radiusMm * Math.sin(sweep);
      return layOne(arcProfile([0, 0], radiusMm, sweep, turns), rectangle(0, width, 0, 200), {
        drawnFace,
        thicknessMm: 20,
      });
    };
    const neutral = drawn("neutral", insideMm + 10, 1);
    expectLengths(neutral, "inner", middle);
    expectAreas(neutral, 200 * middle);
    expect(relativeMiss(neutral.maxStrain, strain)).toBeLessThan(1e-9);
    expect(relativeMiss(neutral.minRadiusMm ?? 0, insideMm + 10)).toBeLessThan(1e-9);

    // The same arc drawn as its air face, which is inside when the centre lies on the air side.
    const air = drawn("air", insideMm, -1);
    expect(relativeMiss(edgeOf(air, "inner").drawnLengthMm, inner)).toBeLessThan(PATTERN_RELATIVE);
    expect(relativeMiss(edgeOf(air, "inner").spaceLengthMm, middle)).toBeLessThan(PATTERN_RELATIVE);
    expect(relativeMiss(edgeOf(air, "inner").flatLengthMm, middle)).toBeLessThan(PATTERN_RELATIVE);
    expect(relativeMiss(air.maxStrain, strain)).toBeLessThan(1e-9);
  });
});

describe("the right surface", () => {
  // CLOSED FORM: an air-side arc R 500 over 60°, skin 0.8, foam 20: the mid-plane lies 10.8 mm inward.
  const sweep = 60 * RADIANS_PER_DEGREE;
  const drawnMm = 500 * sweep;
  const half = 0.0005;
  const nodes = rectangle(0, 500 * Math.sin(sweep), 50, 250);

  it.each([
    { side: "core", turns: 1, cutMm: 512.289 },
    { side: "air", turns: -1, cutMm: 534.909 },
  ] as const)("is cut $cutMm long when the centre lies on the $side side", ({ turns, cutMm }) => {
    const project = (symmetry: "none" | "mirrored") =>
      tray({ p: arcProfile([0, 600], 500, sweep, turns) }, [section(1, nodes)], {
        symmetry,
        leastBendRatio: BENT_WHOLE,
      });
    const whole = soundTray(project("none"));
    const pair = soundTray(project("mirrored"));
    for (const part of [partOf(whole, "S1"), partOf(pair, "S1R"), partOf(pair, "S1L")]) {
      for (const edgeId of ["inner", "outer"]) {
        const edge = edgeOf(part, edgeId);
        expect(relativeMiss(edge.drawnLengthMm, drawnMm)).toBeLessThan(PATTERN_RELATIVE);
        expect(Math.abs(edge.spaceLengthMm - cutMm)).toBeLessThan(half);
        expect(Math.abs(edge.flatLengthMm - cutMm)).toBeLessThan(half);
      }
      expect(edgeOf(part, "rear").flatLengthMm).toBeCloseTo(200, 9);
      expect(relativeMiss(part.flatAreaMm2, 200 * cutMm)).toBeLessThan(1e-6);
    }
  });
});
