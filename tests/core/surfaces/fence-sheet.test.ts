import { describe, expect, it } from "vitest";
import type { Fence, PlanElement, SideNode } from "../../../core/project/index.ts";
import type { FenceSheet } from "../../../core/surfaces/index.ts";
import {
  arcProfile,
  edgeOf,
  fence,
  followEdge,
  type LaidTray,
  layTray,
  partOf,
  planNode,
  rectangle,
  section,
  sideNode,
  soundTray,
  straightProfile,
  type TraySettings,
  tray,
} from "../trays.ts";

const SKIN_MM = 0.8;
const THICKNESS_MM = 20;

/** A plane that rises rearward and outward: z = 100 + 0.14 x + 0.09 y, 600 × 400 mm. */
const RISE_X = 0.14;
const RISE_Y = 0.09;
const heightAt = (x: number, y: number) => 100 + RISE_X * x + RISE_Y * y;
const planeProfile = straightProfile(-100, 100 - 100 * RISE_X, 900, 100 + 900 * RISE_X);
const plane = section(1, rectangle(0, 600, 0, 400), { tiltRad: Math.atan(RISE_Y), pivotYMm: 0 });

const underPlane = (
  elements: readonly PlanElement[],
  changes: Partial<Fence> = {},
  settings: TraySettings = {},
) => tray({ p: planeProfile }, [plane, fence(1, elements, changes)], settings);

const fenceOf = (laid: LaidTray): FenceSheet => {
  const sheet = laid.sheets.find((one) => one.kind === "fence");
  if (sheet?.kind !== "fence") throw new Error("a fence");
  return sheet;
};

const OBLIQUE = [planNode("a", 100, 100), planNode("b", 500, 250)];
const level = (z: number, fromX = 0, toX = 600): Fence["lowerEdge"] => ({
  kind: "heights",
  nodes: [sideNode("l", fromX, z), sideNode("r", toX, z)],
});

describe("a straight fence under an inclined plane", () => {
  const length = Math.hypot(400, 150);
  const [dx, dy] = [400 / length, 150 / length];

  it.each([
    { seat: "core", aboveMm: SKIN_MM * Math.hypot(1, RISE_X, RISE_Y) },
    { seat: "skin", aboveMm: 0 },
  ] as const)(
    "on the $seat stands under that face, at its middle and at both foam faces",
    ({ seat, aboveMm }) => {
      const sheet = fenceOf(soundTray(underPlane(OBLIQUE, { seat })));
      expect(sheet.seat.length).toBeGreaterThan(1);
      const across = (THICKNESS_MM / 2) * (-dy * RISE_X + dx * RISE_Y);
      for (const station of sheet.seat) {
        const [x, y] = [100 + station.alongMm * dx, 100 + station.alongMm * dy];
        expect(station.at.x).toBeCloseTo(x, 8);
        expect(station.at.y).toBeCloseTo(y, 8);
        expect(station.midZMm).toBeCloseTo(heightAt(x, y) + aboveMm, 8);
        expect(station.leftZMm).toBeCloseTo(heightAt(x, y) + aboveMm + across, 8);
        expect(station.rightZMm).toBeCloseTo(heightAt(x, y) + aboveMm - across, 8);
        expect(station.bevelRad).toBeCloseTo(Math.atan2(2 * across, THICKNESS_MM), 9);
      }
      expect(sheet.seat[0]?.alongMm).toBe(0);
      expect(sheet.seat.at(-1)?.alongMm).toBeCloseTo(length, 9);
    },
  );

  it("has an upper edge as long as the plane's slope along it, and a lower edge as drawn less its skin", () => {
    const part = partOf(soundTray(underPlane(OBLIQUE, { lowerEdge: level(60) })), "F1");
    const rise = 400 * RISE_X + 150 * RISE_Y;
    expect(edgeOf(part, "upper").flatLengthMm).toBeCloseTo(Math.hypot(length, rise), 8);
    expect(edgeOf(part, "upper").spaceLengthMm).toBeCloseTo(Math.hypot(length, rise), 6);
    expect(edgeOf(part, "lower").flatLengthMm).toBeCloseTo(length, 8);
    const depths = [heightAt(100, 100), heightAt(500, 250)].map(
      (z) => z + SKIN_MM * Math.hypot(1, RISE_X, RISE_Y) - 60 - SKIN_MM,
    );
    expect(edgeOf(part, "front").flatLengthMm).toBeCloseTo(depths[0] ?? 0, 8);
    expect(edgeOf(part, "rear").flatLengthMm).toBeCloseTo(depths[1] ?? 0, 8);
    const area = (length * ((depths[0] ?? 0) + (depths[1] ?? 0))) / 2;
    expect(part.flatAreaMm2 / area).toBeCloseTo(1, 9);
    expect(part.spaceAreaMm2 / area).toBeCloseTo(1, 7);
  });

  it("given by depths is as deep below the air side as typed", () => {
    const nodes = [
      { id: "d1", alongMm: 0, depthMm: 30 },
      { id: "d2", alongMm: length, depthMm: 70 },
    ];
    const part = partOf(
      soundTray(underPlane(OBLIQUE, { seat: "skin", lowerEdge: { kind: "depths", nodes } })),
      "F1",
    );
    expect(edgeOf(part, "front").flatLengthMm).toBeCloseTo(30 - SKIN_MM, 6);
    expect(edgeOf(part, "rear").flatLengthMm).toBeCloseTo(70 - SKIN_MM, 6);
  });

  it("is the same drawn from the rear to the front", () => {
    const forward = soundTray(underPlane(OBLIQUE, { lowerEdge: level(60) }));
    const backward = soundTray(underPlane(OBLIQUE.toReversed(), { lowerEdge: level(60) }));
    const [a, b] = [partOf(forward, "F1"), partOf(backward, "F1")];
    expect(b.flatAreaMm2).toBeCloseTo(a.flatAreaMm2, 6);
    const numbers = (laid: LaidTray) =>
      fenceOf(laid).seat.map(({ alongMm, midZMm, leftZMm }) =>
        [alongMm, midZMm, leftZMm].map((n) => n.toFixed(6)),
      );
    expect(numbers(backward)).toEqual(numbers(forward));
  });

  it("on the left is the image of the right, its faces exchanged", () => {
    const laid = soundTray(underPlane(OBLIQUE, { lowerEdge: level(60) }, { symmetry: "mirrored" }), []);
    const [right, left] = [partOf(laid, "F1R"), partOf(laid, "F1L")];
    expect(left.flatAreaMm2).toBe(right.flatAreaMm2);
    right.seat.forEach((station, i) => {
      expect(left.seat[i]).toMatchObject({
        leftZMm: station.rightZMm,
        rightZMm: station.leftZMm,
        bevelRad: -station.bevelRad,
      });
      expect(left.seat[i]?.at.y).toBe(-station.at.y);
    });
  });
});

describe("a fence under an arc", () => {
  it("has a seat on the circle of the foam's face", () => {
    const radiusMm = 1000;
    const project = tray({ p: arcProfile([0, 100], radiusMm, 0.6, 1) }, [
      section(1, rectangle(0, 500, 0, 300)),
      fence(1, [planNode("a", 50, 150), planNode("b", 450, 150)]),
    ]);
    const sheet = fenceOf(soundTray(project, ["bend-too-tight"]));
    expect(sheet.seat.length).toBeGreaterThan(10);
    for (const { at, midZMm, bevelRad } of sheet.seat) {
      expect(midZMm).toBeCloseTo(100 + radiusMm - Math.sqrt((radiusMm - SKIN_MM) ** 2 - at.x ** 2), 8);
      expect(bevelRad).toBeCloseTo(0, 9);
    }
    const arc =
      (radiusMm - SKIN_MM) * (Math.asin(450 / (radiusMm - SKIN_MM)) - Math.asin(50 / (radiusMm - SKIN_MM)));
    expect(
      edgeOf(partOf(soundTray(project, ["bend-too-tight"]), "F1"), "upper").flatLengthMm / arc,
    ).toBeCloseTo(1, 6);
  });
});

describe("a fence along a curved line", () => {
  // A quarter turn of radius 100 between two straights: tangents of 100 give way to an arc of 50 π.
  const elements = [
    planNode("a", 100, 50),
    planNode("b", 400, 50, { radiusMm: 100 }),
    planNode("c", 400, 350),
  ];

  it("is as long as its mid-line, and bends to that radius", () => {
    const lengthMm = 200 + 200 + 50 * Math.PI;
    const project = tray(
      { p: straightProfile(0, 100, 600, 100) },
      [section(1, rectangle(0, 600, 0, 400)), fence(1, elements, { lowerEdge: level(40) })],
      { thicknessMm: 10, leastBendRatio: 10 },
    );
    const part = partOf(soundTray(project), "F1");
    expect(edgeOf(part, "lower").flatLengthMm).toBeCloseTo(lengthMm, 8);
    expect(edgeOf(part, "lower").spaceLengthMm / lengthMm).toBeCloseTo(1, 6);
    expect(part.minRadiusMm).toBeCloseTo(100, 6);
    expect(part.maxStrain).toBeCloseTo(0.05, 8);
  });

  it("has a bevel that turns with it under a plane", () => {
    const sheet = fenceOf(soundTray(underPlane(elements), ["bend-too-tight"]));
    const [first, last] = [sheet.seat[0], sheet.seat.at(-1)];
    // Rearward its left face is the outer one; outward its left face is the front one.
    expect(first?.bevelRad).toBeCloseTo(Math.atan(RISE_Y), 9);
    expect(last?.bevelRad).toBeCloseTo(-Math.atan(RISE_X), 9);
  });
});

describe("a fence that passes from one sheet to the next", () => {
  it("takes its seat from both, with a joint to each, and no gap at the border", () => {
    const outer = section(
      2,
      [
        followEdge("shared", { itemId: "s1", fromNodeId: "outer", toNodeId: "front" }, "against"),
        planNode("far", 600, 700),
        planNode("off", 0, 700),
      ],
      { tiltRad: Math.atan(0.2) },
    );
    const first = section(1, rectangle(0, 600, 0, 400));
    const project = tray({ p: straightProfile(0, 100, 600, 100) }, [
      first,
      outer,
      fence(1, [planNode("a", 100, 300), planNode("b", 500, 500)]),
    ]);
    const laid = soundTray(project);
    const sheet = fenceOf(laid);
    expect([...new Set(sheet.seat.map(({ sheetId }) => sheetId))]).toEqual(["S1", "S2"]);
    expect(laid.joints.filter(({ kind }) => kind === "fence seat").map(({ id }) => id)).toEqual([
      "F1/S1",
      "F1/S2",
    ]);
    const onSkin = soundTray({
      ...project,
      items: project.items.map((item) => (item.kind === "fence" ? { ...item, seat: "skin" as const } : item)),
    });
    for (const { at, midZMm } of fenceOf(onSkin).seat)
      expect(midZMm).toBeCloseTo(100 + 0.2 * Math.max(0, at.y - 400), 5);
  });
});

describe("a fence on the centre line", () => {
  it("is one whole part under a joined section", () => {
    const project = tray(
      { p: straightProfile(0, 100, 600, 100) },
      [section(1, rectangle(0, 600, 0, 400)), fence(1, [planNode("a", 100, 0), planNode("b", 500, 0)])],
      { symmetry: "mirrored" },
    );
    expect(soundTray(project).parts.map(({ id }) => id)).toEqual(["S1", "F1"]);
  });

  it("is one whole part where two halves meet in a fold, and stands under both", () => {
    const project = tray(
      { p: straightProfile(0, 100, 600, 100) },
      [
        section(1, rectangle(0, 600, 0, 400), { tiltRad: 0.05 }),
        fence(1, [planNode("a", 100, 0), planNode("b", 500, 0)]),
      ],
      { symmetry: "mirrored" },
    );
    const laid = soundTray(project);
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1R", "S1L", "F1"]);
  });
});

describe("a fence that cannot be made is named", () => {
  const problemOf = (elements: readonly PlanElement[], changes: Partial<Fence> = {}) => {
    const laid = layTray(underPlane(elements, changes));
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1"]);
    expect(laid.problems).toHaveLength(1);
    expect(laid.problems[0]?.place.itemId).toBe("f1");
    return laid.problems[0];
  };

  /** The stretch without a sheet is told to this. */
  const STRETCH_MM = 0.1;

  it.each([
    { name: "rear", fromX: 100, toX: 800, stretch: [500, 700] },
    { name: "front", fromX: -150, toX: 500, stretch: [0, 150] },
  ])("with the stretch at the $name that has no sheet above", ({ fromX, toX, stretch }) => {
    const problem = problemOf([planNode("a", fromX, 200), planNode("b", toX, 200)], { seat: "skin" });
    if (problem?.kind !== "fence-without-sheet") throw new Error(problem?.kind);
    expect(Math.abs(problem.fromMm - (stretch[0] ?? 0))).toBeLessThan(STRETCH_MM);
    expect(Math.abs(problem.toMm - (stretch[1] ?? 0))).toBeLessThan(STRETCH_MM);
  });

  it("with the place where its lower edge is above the sheet", () => {
    // The plane falls under 130 mm in front of x = (130 − 100 − 0.09 · 200) / 0.14 = 85.7: 35.7 mm along.
    const problem = problemOf([planNode("a", 50, 200), planNode("b", 500, 200)], { lowerEdge: level(130) });
    expect(problem?.kind).toBe("fence-has-no-depth");
  });

  it("with what its lower edge lacks at either end", () => {
    const problem = problemOf(OBLIQUE, { lowerEdge: level(60, 120, 450) });
    expect(problem).toMatchObject({ kind: "fence-edge-too-short", missingFrontMm: 20, missingRearMm: 50 });
  });
});

describe("a profile that cannot carry a sheet is named", () => {
  const profiles: readonly {
    readonly name: string;
    readonly nodes: readonly SideNode[];
    readonly kind: string;
  }[] = [
    {
      name: "an upright step",
      nodes: [sideNode("a", 0, 0), sideNode("b", 300, 0), sideNode("c", 300, 40), sideNode("d", 600, 40)],
      kind: "profile-falls-back",
    },
    {
      name: "an upright rest beside a radius",
      nodes: [sideNode("a", 0, 200), sideNode("b", 0, 0, { radiusMm: 150 }), sideNode("c", 600, 0)],
      kind: "profile-falls-back",
    },
    { name: "ends before the outline", nodes: straightProfile(0, 0, 580, 0), kind: "profile-too-short" },
    {
      name: "a radius tighter than the foam is thick",
      nodes: [sideNode("a", 0, 0), sideNode("b", 300, 0, { radiusMm: 15 }), sideNode("c", 600, 200)],
      kind: "offset-exceeds-radius",
    },
  ];

  it.each(profiles)("$name", ({ nodes, kind }) => {
    const laid = layTray(tray({ p: nodes }, [section(1, rectangle(0, 600, 0, 300))]));
    expect(laid.problems.map((problem) => problem.kind)).toEqual([kind]);
    expect(laid.parts).toEqual([]);
  });

  it("but the same radius bends away from the foam: its air face is the inner one", () => {
    const nodes = [sideNode("a", 0, 300), sideNode("b", 300, 300, { radiusMm: 15 }), sideNode("c", 600, 100)];
    const laid = layTray(tray({ p: nodes }, [section(1, rectangle(0, 600, 0, 300))]));
    expect(laid.problems.map(({ kind }) => kind)).toEqual(["bend-too-tight"]);
    expect(laid.parts[0]?.minRadiusMm).toBeCloseTo(25.8, 9);
  });
});
