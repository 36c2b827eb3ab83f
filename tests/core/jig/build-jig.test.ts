import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { signedAreaMm2 } from "../../../core/cutting/index.ts";
import { at, type FlatPoint, levelOf, wordProblem } from "../../../core/foundation/index.ts";
import { buildJig, type Jig, type Rib } from "../../../core/jig/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { arcProfile, box, outlineThrough, section, straightProfile, trayOf } from "./jig-trays.ts";

/** Rib tops lie on the resting face to this. */
const ON_FACE_MM = 0.01;

const { jig: plainJig } = plainProject();
const withJig = (changes: Partial<Project["jig"]>): Pick<Project, "jig"> => ({
  jig: { ...plainJig, ...changes },
});
const bare = { skins: { lowerMm: 0, upperMm: 0 } };

function jigOf(changes: Partial<Project>): Jig {
  const { project, sheets } = trayOf(changes);
  const { jig, problems } = buildJig(sheets, project);
  expect(problems).toEqual([]);
  return jig;
}

const ribOf = (jig: Jig, id: string): Rib => {
  const rib = jig.ribs.find((other) => other.id === id);
  expect(rib?.id, `rib ${id} among ${jig.ribs.map((other) => other.id).join(" ")}`).toBe(id);
  return rib ?? at(jig.ribs, 0);
};

/** The greatest height of an outline over a place along it, by its edges. */
function topAt(outline: readonly FlatPoint[], u: number): number {
  let top = Number.NEGATIVE_INFINITY;
  for (const [i, to] of outline.entries()) {
    const from = at(outline, i - 1);
    const [low, high] = from.u < to.u ? [from, to] : [to, from];
    if (u < low.u || u > high.u || high.u === low.u) continue;
    top = Math.max(top, low.v + ((u - low.u) / (high.u - low.u)) * (high.v - low.v));
  }
  return top;
}

describe("the resting face", () => {
  const ramp = straightProfile("ramp", [
    [0, 100],
    [1000, 200],
  ]);
  const items = [section("floor", 1, box(0, 1000, 0, 300), "ramp")];
  const across = { kind: "typed", atMm: [500] } as const;
  // A ramp of slope 0.1: its normal offset d is d √1.01 higher, over the same plan point.
  const rise = (depthMm: number) => 150 + depthMm * Math.sqrt(1.01);

  it("upright is the lower core face, and height grows with z", () => {
    const { ribs, baseboard } = jigOf({ ...withJig({ across }), profiles: [ramp], items });
    const { stationFaceMm } = at(at(ribs, 0).heights, 0);
    expect(stationFaceMm + baseboard.levelZMm).toBeCloseTo(rise(0.8), 6);
    expect(at(ribs, 0).stationFace).toBe("front");
  });

  it("inverted is the upper core face, the tray lies upside down, and height falls with z", () => {
    const { ribs, baseboard } = jigOf({
      ...withJig({ across, attitude: "inverted" }),
      profiles: [ramp],
      items,
    });
    const { stationFaceMm } = at(at(ribs, 0).heights, 0);
    expect(baseboard.levelZMm - stationFaceMm).toBeCloseTo(rise(10.8), 6);
    expect(stationFaceMm).toBeCloseTo(80, 9);
    expect(at(ribs, 0).stationFace).toBe("rear");
  });
});

describe("where ribs stand", () => {
  const level = straightProfile("level", [
    [0, 100],
    [2000, 100],
  ]);
  const wide = { profiles: [level], items: [section("floor", 1, box(0, 1500, 0, 500), "level")] };

  it("spaced ribs start 25 mm inside the ends, keep the spacing, and stand closer at the ends", () => {
    const { ribs } = jigOf({ ...wide, ...withJig({ across: { kind: "spacing", spacingMm: 300 } }) });
    const atMm = ribs.map((rib) => rib.atMm);
    expect(atMm[0]).toBe(25);
    expect(at(atMm, -1)).toBe(1475);
    const pitches = atMm.slice(1).map((x, i) => x - at(atMm, i));
    const inner = Math.max(...pitches.slice(1, -1));
    expect(inner).toBeLessThanOrEqual(301);
    expect(at(pitches, 0)).toBeLessThanOrEqual(0.8 * inner + 1);
    expect(at(pitches, -1)).toBeLessThanOrEqual(0.8 * inner + 1);
    expect(ribs.map(({ id }) => id)).toEqual(ribs.map((_, i) => `A${i + 1}`));
  });

  it("ribs of one outline are one template", () => {
    const { ribs } = jigOf({ ...wide, ...withJig({ across: { kind: "spacing", spacingMm: 300 } }) });
    expect(new Set(ribs.map(({ sameAs }) => sameAs))).toEqual(new Set(["A1"]));
  });

  it("ribs along are mirrored, and a typed place without a sheet is named", () => {
    const { project, sheets } = trayOf({
      ...wide,
      ...withJig({
        across: { kind: "typed", atMm: [300, 5000] },
        along: { kind: "typed", atMm: [0, 200] },
      }),
    });
    const { jig, problems } = buildJig(sheets, project);
    expect(jig.ribs.map(({ id, atMm }) => [id, atMm])).toEqual([
      ["A1", 300],
      ["L1", 0],
      ["L2R", 200],
      ["L2L", -200],
    ]);
    expect(ribOf(jig, "L2R").stationFace).toBe("left");
    expect(ribOf(jig, "L2L").stationFace).toBe("right");
    expect(problems).toEqual([
      {
        kind: "rib-under-nothing",
        place: { ribId: "A2", setting: "jig.across.atMm" },
        name: "Rib A2",
        atMm: 5000,
      },
    ]);
  });

  it("a rib over an interval without foam is two pieces, one a side", () => {
    const { ribs } = jigOf({
      profiles: [level],
      items: [section("side", 1, box(0, 1500, 200, 500), "level")],
      ...withJig({ across: { kind: "typed", atMm: [700] } }),
    });
    expect(ribs.map(({ id, sameAs }) => [id, sameAs])).toEqual([
      ["A1L", "A1L"],
      ["A1R", "A1L"],
    ]);
    const reach = ribs.map(({ outlineMm }) => outlineMm.map(({ u }) => u));
    expect(Math.min(...at(reach, 1))).toBeCloseTo(200, 3);
    expect(Math.max(...at(reach, 0))).toBeCloseTo(-200, 3);
  });

  it("no ribs and no sheets make an empty jig", () => {
    expect(jigOf({}).ribs).toEqual([]);
    expect(jigOf({ ...wide, ...withJig({ across: { kind: "none" } }) }).ribs).toEqual([]);
  });
});

describe("the outline of a rib", () => {
  const level = straightProfile("level", [
    [0, 100],
    [1500, 100],
  ]);
  const items = [section("floor", 1, box(0, 1500, 0, 500), "level")];

  it("is counter-clockwise, stands on the board, and is as long as the foam", () => {
    const { ribs } = jigOf({
      profiles: [level],
      items,
      ...withJig({ across: { kind: "typed", atMm: [700] } }),
    });
    const { outlineMm } = at(ribs, 0);
    expect(signedAreaMm2(outlineMm)).toBeCloseTo(1000 * 80, 1);
    expect(Math.min(...outlineMm.map(({ v }) => v))).toBe(0);
  });

  it("has half-lap slots that leave exactly the other half at every crossing", () => {
    const { ribs } = jigOf({
      profiles: [level],
      items,
      ...withJig({ across: { kind: "typed", atMm: [700] }, along: { kind: "typed", atMm: [200] } }),
    });
    const [across, right] = [at(ribs, 0), at(ribs, 1)];
    // Two slots from below in the rib across, one from above in each rib along; 12.2 wide, 40 high.
    expect(signedAreaMm2(across.outlineMm)).toBeCloseTo(1000 * 80 - 2 * 12.2 * 40, 1);
    expect(signedAreaMm2(right.outlineMm)).toBeCloseTo(1500 * 80 - 12.2 * 40, 1);
    expect(topAt(right.outlineMm, 706)).toBe(40);
    expect(topAt(across.outlineMm, 206)).toBeCloseTo(80, 9);
    expect(across.straightTop).toBe(false);
  });
});

describe("ribs and one another's boards", () => {
  const level = straightProfile("level", [
    [0, 100],
    [1500, 100],
  ]);
  const wide = {
    symmetry: "none" as const,
    profiles: [level],
    items: [section("floor", 1, box(0, 1500, 0, 300), "level")],
  };

  it.each([
    ["across", { across: { kind: "typed", atMm: [500, 504, 508, 520] } } as const, ["A2 A1", "A3 A2"]],
    ["along", { along: { kind: "typed", atMm: [0, 4, 16] } } as const, ["L2 L1"]],
  ])("closer than a board is thick are named, %s", (_runs, places, named) => {
    const { project, sheets } = trayOf({ ...wide, ...withJig({ across: { kind: "none" }, ...places }) });
    const { problems } = buildJig(sheets, project);
    expect(problems).toMatchObject(
      named.map((pair) => {
        const [id, other] = pair.split(" ");
        return { kind: "ribs-overlap", place: { ribId: id }, otherName: `Rib ${other}`, overlapMm: 8 };
      }),
    );
    expect(problems.map(levelOf)).toEqual(problems.map(() => "look"));
    expect(problems.map(wordProblem).join(" ")).toMatch(/overlap by 8\.0 mm/);
  });

  // Board bodies go 12 mm toward greater x or y here; the tray ends at x = 1500 and y = 300.
  const ends = [286, 289, 291, 293, 295, 297, 299].flatMap((yMm) =>
    [700, 1486, 1489, 1491, 1493.9, 1494.1, 1496, 1499].map((xMm) => [xMm, yMm] as const),
  );

  it.each(ends)("never share a place where one ends in the other: across at %d, along at %d", (xMm, yMm) => {
    const jig = jigOf({
      ...wide,
      ...withJig({ across: { kind: "typed", atMm: [xMm] }, along: { kind: "typed", atMm: [yMm] } }),
    });
    const [across, along] = [ribOf(jig, "A1"), ribOf(jig, "L1")];
    let shared = 0;
    for (let x = xMm + 0.25; x < xMm + 12; x += 0.5)
      for (let y = yMm + 0.25; y < yMm + 12; y += 0.5)
        shared += sharedLength(woodAt(across.outlineMm, y), woodAt(along.outlineMm, x));
    expect(shared).toBeLessThan(1e-6);
    // Neither gives way by more than the other's half thickness, and no edge of an outline runs back on itself.
    expect(topAt(across.outlineMm, Math.min(300, yMm) - 0.5)).toBeGreaterThan(79);
    for (const { outlineMm } of [across, along])
      outlineMm.forEach((point, i) => {
        const [before, next] = [at(outlineMm, i - 1), at(outlineMm, (i + 1) % outlineMm.length)];
        const isSpike =
          Math.abs(before.u - point.u) < 1e-9 &&
          Math.abs(next.u - point.u) < 1e-9 &&
          (before.v - point.v) * (next.v - point.v) > 0;
        expect(isSpike, JSON.stringify(outlineMm)).toBe(false);
      });
  });
});

/** The stretches of wood in a rib over a place along it, by its edges: even-odd. */
function woodAt(outline: readonly FlatPoint[], u: number): (readonly [number, number])[] {
  const levels = outline
    .flatMap((to, i) => {
      const from = at(outline, i - 1);
      if (from.u < u === to.u < u) return [];
      return [from.v + ((u - from.u) / (to.u - from.u)) * (to.v - from.v)];
    })
    .sort((a, b) => a - b);
  return levels.flatMap((low, i) => (i % 2 === 0 ? [[low, at(levels, i + 1)] as const] : []));
}

const sharedLength = (a: readonly (readonly [number, number])[], b: typeof a): number =>
  a.reduce(
    (sum, [low, high]) =>
      sum + b.reduce((part, [from, to]) => part + Math.max(0, Math.min(high, to) - Math.max(low, from)), 0),
    0,
  );

describe("fences in an upright jig", () => {
  const level = straightProfile("level", [
    [0, 150],
    [1500, 150],
  ]);
  const fence = (angle: number, standsFirst: boolean) =>
    ({
      kind: "fence",
      id: "fence",
      number: 1,
      name: "Fence",
      line: {
        closed: false,
        elements: [
          { kind: "node", id: "f1", x: 200, y: 200, next: "line" },
          { kind: "node", id: "f2", x: 1200, y: 200 + angle, next: "line" },
        ],
      },
      lowerEdge: {
        kind: "heights",
        nodes: [
          { kind: "node", id: "h1", x: 100, z: 40, next: "line" },
          { kind: "node", id: "h2", x: 1400, z: 40, next: "line" },
        ],
      },
      seat: "core",
      standsFirst,
    }) as const;
  const tray = (angle: number, attitude: "upright" | "inverted" = "upright", standsFirst = true) =>
    jigOf({
      profiles: [level],
      items: [section("floor", 1, box(0, 1500, 0, 500), "level"), fence(angle, standsFirst)],
      ...withJig({ attitude, across: { kind: "typed", atMm: [100, 700] } }),
    });

  it("hang clear of the baseboard", () => {
    const { baseboard, ribs } = tray(0);
    expect(baseboard.levelZMm).toBeLessThanOrEqual(40 - 10 + 1e-9);
    for (const { heights } of ribs) expect(at(heights, 0).stationFaceMm).toBeGreaterThanOrEqual(80);
  });

  it("pass through notches wide enough for foam, skins and clearance, deeper than the fence", () => {
    const jig = tray(0);
    const rib = ribOf(jig, "A2");
    const widthMm = 10 + 1.6 + 3;
    const bottomMm = 40 - jig.baseboard.levelZMm - 3;
    for (const y of [200 - widthMm / 2 + 0.01, 200, 200 + widthMm / 2 - 0.01]) {
      expect(topAt(rib.outlineMm, y)).toBeLessThanOrEqual(bottomMm + 1e-6);
      expect(topAt(rib.outlineMm, -y)).toBeLessThanOrEqual(bottomMm + 1e-6);
    }
    const topMm = at(rib.heights, 0).stationFaceMm;
    // Its mouth is wider by the fillet, 8 mm, and as deep: 0.1 mm beside the notch the wood stands 0.1 mm over the slope's foot.
    expect(topAt(rib.outlineMm, 200 + widthMm / 2 + 0.1)).toBeCloseTo(topMm - 7.9, 6);
    expect(topAt(rib.outlineMm, 200 + widthMm / 2 + 8.1)).toBeCloseTo(topMm, 6);
    expect(topAt(ribOf(jig, "A1").outlineMm, 200)).toBeCloseTo(topMm, 6);
  });

  it("need wider notches where they cross a rib at a slant", () => {
    const rib = ribOf(tray(250), "A2");
    const slope = 0.25;
    const halfMm = ((10 + 1.6 + 3) / 2) * Math.hypot(1, slope);
    const middle = (x: number) => 200 + slope * (x - 200);
    const body = rib.stationFace === "front" ? [700, 712] : [688, 700];
    const topMm = at(rib.heights, 0).stationFaceMm;
    expect(topAt(rib.outlineMm, middle(at(body, 0)) - halfMm + 0.05)).toBeLessThan(topMm - 50);
    expect(topAt(rib.outlineMm, middle(at(body, 1)) + halfMm - 0.05)).toBeLessThan(topMm - 50);
    expect(topAt(rib.outlineMm, middle(at(body, 0)) - halfMm - 9)).toBeCloseTo(topMm, 6);
    expect(topAt(rib.outlineMm, middle(at(body, 1)) + halfMm + 9)).toBeCloseTo(topMm, 6);
  });

  it("that come after turning need neither notches nor room above the baseboard", () => {
    const { baseboard, ribs } = tray(0, "upright", false);
    // The lower core face lies 0.8 above the drawn one; the least height of a rib is 80.
    expect(baseboard.levelZMm).toBeCloseTo(150 + 0.8 - 80, 9);
    expect(ribs.map(({ straightTop }) => straightTop)).toEqual([true, true]);
  });

  it("need none in an inverted jig, where they come on top", () => {
    expect(tray(0, "inverted").ribs.map(({ straightTop }) => straightTop)).toEqual([true, true]);
  });
});

describe("ribs along", () => {
  it("follow a curved profile with straight stretches that miss by less than 0.02 mm", () => {
    const { ribs, baseboard } = jigOf({
      ...bare,
      profiles: [arcProfile("arc", 700, 500)],
      items: [section("floor", 1, box(0, 500, 0, 300), "arc")],
      ...withJig({ across: { kind: "none" }, along: { kind: "typed", atMm: [150] } }),
    });
    for (const rib of ribs) {
      for (let x = 1; x < 500; x += 3.7) {
        const expected = 700 - Math.sqrt(700 ** 2 - x * x) - baseboard.levelZMm;
        expect(Math.abs(topAt(rib.outlineMm, x) - expected)).toBeLessThan(0.02);
      }
      for (const { atMm, stationFaceMm } of rib.heights) {
        const expected = 700 - Math.sqrt(700 ** 2 - atMm * atMm) - baseboard.levelZMm;
        expect(Math.abs(stationFaceMm - expected)).toBeLessThan(ON_FACE_MM);
      }
    }
  });

  it("near a throat face the way that stands least proud, and are bevelled over the limit only", () => {
    // A valley along the car: the floor falls to x = 500 and rises again; a rib across stands on its flank.
    const valley = straightProfile("valley", [
      [0, 200],
      [500, 100],
      [1000, 200],
    ]);
    const items = [section("floor", 1, box(0, 1000, 0, 300), "valley")];
    const { ribs } = jigOf({
      profiles: [valley],
      items,
      ...withJig({ across: { kind: "typed", atMm: [300, 700] } }),
    });
    expect(ribs.map(({ stationFace }) => stationFace)).toEqual(["rear", "front"]);
    expect(ribs.map(({ mostProudMm }) => mostProudMm)).toEqual([0, 0]);
  });

  it("across a slope that changes sign are named when no square cut keeps within the limit", () => {
    const up = straightProfile("up", [
      [0, 100],
      [1000, 300],
    ]);
    const down = straightProfile("down", [
      [0, 300],
      [1000, 100],
    ]);
    const items = [
      section("left", 1, box(0, 1000, 0, 300), "up"),
      section("right", 2, box(0, 1000, 300, 600), "down"),
    ];
    const { project, sheets } = trayOf({
      symmetry: "none",
      profiles: [up, down],
      items,
      ...withJig({ across: { kind: "typed", atMm: [500] } }),
    });
    const { jig, problems } = buildJig(sheets, project);
    expect(problems.map(({ kind }) => kind)).toEqual(["rib-needs-bevel"]);
    // 12 mm of board on a slope of 0.2 stand 2.4 mm proud, whichever way the body goes.
    expect(at(jig.ribs, 0).mostProudMm).toBeCloseTo(2.4, 6);
    expect(at(jig.ribs, 0).cut).toBe("bevel");
  });
});

describe("a rib in a fold", () => {
  /** Two flat sheets that fold at x = 600, each 10° off level: a valley or a ridge; the face that rests stays low there. */
  const slope = Math.tan((10 * Math.PI) / 180);
  const folded = (sign: 1 | -1) =>
    straightProfile("folded", [
      [-100, 200 + sign * 700 * slope],
      [600, 200],
      [1500, 200 + sign * 900 * slope],
    ]);
  const trayOverFold = (attitude: "upright" | "inverted", atMm: number) => ({
    profiles: [folded(attitude === "upright" ? 1 : -1)],
    items: [section("floor", 1, box(0, 1200, 0, 300), "folded")],
    ...withJig({ attitude, across: { kind: "typed", atMm: [atMm] } }),
  });
  const places = [594, 597, 600, 603, 606].flatMap((atMm) =>
    (["upright", "inverted"] as const).map((attitude) => [atMm, attitude] as const),
  );

  it.each(places)(
    "at %d mm, %s, stands no more proud than it says, anywhere over its thickness",
    (atMm, attitude) => {
      const rib = at(jigOf(trayOverFold(attitude, atMm)).ribs, 0);
      const away = rib.stationFace === "front" ? 1 : -1;
      // Closed form: on both sides the resting face rises from the fold by the slope, in the jig's own attitude.
      const rise = (x: number) => slope * Math.abs(x - 600);
      const across = Array.from({ length: 121 }, (_, i) => rise(atMm + away * i * 0.1));
      const proudMm = Math.max(...across.map((mm) => rise(atMm) - mm));
      expect(rib.cut).toBe("square");
      expect(rib.mostProudMm).toBeGreaterThan(proudMm - ON_FACE_MM);
      expect(rib.mostProudMm).toBeLessThan(proudMm + ON_FACE_MM);
      expect(proudMm).toBeLessThan(1e-9);
    },
  );

  it("that leans over it both ways is told that a bevel does not help", () => {
    // A zigzag: 6 mm to each side of the rib at 600 the foam folds back, so that either way it dips by 1.2 mm.
    const zigzag = straightProfile("zigzag", [
      [-100, 200],
      [588, 200],
      [594, 198.8],
      [600, 200],
      [606, 198.8],
      [612, 200],
      [1500, 200],
    ]);
    const { project, sheets } = trayOf({
      ...bare,
      core: { foamId: "xps", thicknessMm: 0.001 },
      profiles: [zigzag],
      items: [section("floor", 1, box(0, 1200, 0, 300), "zigzag")],
      ...withJig({ across: { kind: "typed", atMm: [600] } }),
    });
    const { jig, problems } = buildJig(sheets, project);
    expect(problems).toMatchObject([{ kind: "rib-needs-bevel", place: { ribId: "A1" } }]);
    const [problem] = problems;
    expect(problem?.kind === "rib-needs-bevel" && problem.foldProudMm).toBeCloseTo(1.2, 2);
    expect(at(jig.ribs, 0).mostProudMm).toBeCloseTo(1.2, 2);
    expect(problem === undefined ? "" : wordProblem(problem)).toMatch(/stands in a fold/);
  });
});

describe("the far face of a rib", () => {
  const ramp = straightProfile("ramp", [
    [0, 100],
    [1000, 200],
  ]);

  it.each([
    ["a slanted edge", 100],
    ["the end of the sheet", 992],
  ])("follows the sheet beyond %s", (_title, atMm) => {
    const slanted = outlineThrough([
      [0, 0],
      [1000, 0],
      [1000, 300],
      [200, 400],
      [0, 200],
    ]);
    const { ribs } = jigOf({
      profiles: [ramp],
      items: [section("floor", 1, slanted, "ramp")],
      ...withJig({ attitude: "inverted", across: { kind: "typed", atMm: [atMm] } }),
    });
    // The sheet is one plane: over 12 mm of board it rises by 1.2 mm everywhere, on foam or beyond it.
    for (const rib of ribs) {
      const rise = rib.stationFace === "rear" ? 1.2 : -1.2;
      for (const { stationFaceMm, farFaceMm } of rib.heights)
        expect(farFaceMm - stationFaceMm).toBeCloseTo(rise, 6);
    }
  });

  it("turns with the sheet at the last row as at its neighbours", () => {
    const long = straightProfile("ramp", [
      [-500, 50],
      [1500, 250],
    ]);
    const floor = { ...section("floor", 1, box(0, 1000, 50, 450), "ramp"), headingRad: 0.1, tiltRad: 0.12 };
    const { ribs } = jigOf({
      profiles: [long],
      items: [floor],
      ...withJig({ across: { kind: "typed", atMm: [400] } }),
    });
    for (const { heights } of ribs) {
      const bevels = heights.map(({ bevelRad }) => bevelRad);
      expect(Math.max(...bevels) - Math.min(...bevels)).toBeLessThan(1e-6);
      expect(Math.abs(at(bevels, 0))).toBeGreaterThan(0.05);
    }
  });
});

describe("over random trays", () => {
  it("a straight line between two heights of the list misses the rib's top by no more than the tolerance", () => {
    const tray = fc.record({
      radiusMm: fc.double({ min: 400, max: 3000, noNaN: true }),
      slantMm: fc.double({ min: 0, max: 200, noNaN: true }),
      attitude: fc.constantFrom("upright" as const, "inverted" as const),
    });
    fc.assert(
      fc.property(tray, ({ radiusMm, slantMm, attitude }) => {
        const { ribs } = jigOf({
          profiles: [arcProfile("arc", radiusMm, 350)],
          items: [
            section(
              "floor",
              1,
              outlineThrough([
                [0, 0],
                [350, 0],
                [350 - slantMm, 400],
                [0, 500],
              ]),
              "arc",
            ),
          ],
          ...withJig({
            attitude,
            across: { kind: "spacing", spacingMm: 200 },
            along: { kind: "typed", atMm: [100] },
          }),
        });
        for (const rib of ribs) {
          const [first, last] = [at(rib.heights, 0), at(rib.heights, -1)];
          expect(first.stationFaceMm).toBeGreaterThanOrEqual(80 - 1e-9);
          expect(Math.min(...rib.outlineMm.map(({ u }) => u))).toBeCloseTo(first.atMm, 6);
          expect(Math.max(...rib.outlineMm.map(({ u }) => u))).toBeCloseTo(last.atMm, 6);
          if (rib.runs === "along") continue;
          for (const [i, height] of rib.heights.entries()) {
            const next = rib.heights[i + 1];
            if (next === undefined || next.atMm === height.atMm) continue;
            const middleMm = (height.atMm + next.atMm) / 2;
            const joined = (height.stationFaceMm + next.stationFaceMm) / 2;
            expect(Math.abs(topAt(rib.outlineMm, middleMm) - joined)).toBeLessThan(0.5 + ON_FACE_MM);
          }
        }
      }),
      { seed: 74, numRuns: 12 },
    );
  });
});
