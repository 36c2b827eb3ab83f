import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { at, wordProblem } from "../../../core/foundation/index.ts";
import type { Jig, Rib } from "../../../core/jig/index.ts";
import type { Fence, Project, TypedMaking } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { METAL, plateOf, rectangle, wing } from "../plates/plates.ts";
import { arcProfile, box, section, straightProfile } from "./jig-trays.ts";
import { woodAt } from "./wood.ts";

const { jig: plainJig, materials } = plainProject();
const level = straightProfile("level", [
  [0, 100],
  [3000, 100],
]);

const fence = (y: number, changes: Partial<Fence> = {}): Fence => ({
  kind: "fence",
  id: "fin",
  number: 1,
  name: "Fin",
  line: {
    closed: false,
    elements: [
      { kind: "node", id: "f1", x: 200, y, next: "line" },
      { kind: "node", id: "f2", x: 1200, y, next: "line" },
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
  standsFirst: false,
  ...changes,
});

/** A plate under the floor; along its rear edge at x 700 a wing of 80 mm is folded down by an angle. */
const hooked = (angleDeg: number, jig: Partial<Project["jig"]>, making: TypedMaking = {}) =>
  jigOf(
    {
      items: [
        section("floor", 1, box(0, 1500, 0, 500), "level"),
        plateOf(
          rectangle(500, 700, 50, 250),
          [wing("r", { angleRad: (-angleDeg * Math.PI) / 180, lengthMm: 80 })],
          { zMm: 98 },
        ),
      ],
      materials: { ...materials, metals: [METAL] },
    },
    { across: { kind: "typed", atMm: [660] }, ...jig },
    making,
  );

function jigOf(changes: Partial<Project>, jig: Partial<Project["jig"]>, making: TypedMaking = {}) {
  const design = designTray(
    plainProject({
      profiles: [level],
      items: [section("floor", 1, box(0, 1500, 0, 500), "level")],
      ...changes,
      jig: { ...plainJig, across: { kind: "typed", atMm: [400, 1000] }, ...jig, making },
    }),
  );
  return { jig: design.jig, problems: design.problems };
}

/** Lifts a fence, told by hand, straight up through a rib: how much wood stands over its lower edge. */
function woodOver(rib: Rib, [from, to]: readonly [number, number], lowMm: number): number {
  let over = Number.NEGATIVE_INFINITY;
  for (let y = from; y <= to; y += 0.5)
    for (const [, top] of woodAt(rib, y)) over = Math.max(over, top - lowMm);
  return over;
}

describe("a cradle", () => {
  const items = [section("floor", 1, box(0, 1500, 0, 500), "level"), fence(200)];
  const made = () =>
    jigOf({ items }, { attitude: "inverted" }, { cradle: { paddingMm: 4 }, foot: "feet" }).jig;
  const cradleOf = (jig: Jig) => {
    expect(jig.cradle).toBeDefined();
    return jig.cradle ?? jig;
  };

  it("carries the air face of a tray from an inverted jig, upright, lower by the padding", () => {
    const { ribs, baseboard } = cradleOf(made());
    expect(ribs.map(({ id, stand, attitude }) => [id, stand, attitude])).toEqual([
      ["CA1", "cradle", "upright"],
      ["CA2", "cradle", "upright"],
    ]);
    // The drawn surface is the air face at z 100, 4 mm of padding under it.
    expect(at(at(ribs, 0).heights, 0).stationFaceMm + baseboard.levelZMm).toBeCloseTo(96, 9);
  });

  it("carries the upper face of a tray from an upright jig, upside down", () => {
    const { jig } = jigOf({}, { attitude: "upright" }, { cradle: { paddingMm: 6 } });
    const { ribs, baseboard } = cradleOf(jig);
    expect(at(ribs, 0).attitude).toBe("inverted");
    // Skin 0.8, core 10, skin 0.8, padding 6 over the air face.
    expect(baseboard.levelZMm - at(at(ribs, 0).heights, 0).stationFaceMm).toBeCloseTo(117.6, 9);
  });

  it("follows a bent skin at the same distance along its normal, so the drawn shape comes back", () => {
    const { jig } = jigOf(
      {
        profiles: [arcProfile("arc", 1000, 560)],
        items: [section("floor", 1, box(0, 560, 0, 300), "arc")],
      },
      { attitude: "inverted", across: { kind: "none" }, along: { kind: "typed", atMm: [0] } },
      { cradle: { paddingMm: 4 } },
    );
    const { ribs, baseboard } = cradleOf(jig);
    for (const { atMm, stationFaceMm } of at(ribs, 0).heights) {
      // Closed form: a circle about (0, 1000), larger by the padding.
      const expected = 1000 - Math.sqrt(1004 ** 2 - atMm ** 2);
      expect(Math.abs(stationFaceMm + baseboard.levelZMm - expected)).toBeLessThan(0.01);
    }
  });

  it("has openings in which every fence hangs free and comes out straight up", () => {
    const { ribs, baseboard, release } = cradleOf(made());
    expect(release.locks).toEqual([]);
    for (const rib of ribs) {
      expect(rib.notches.map(({ fencePartId }) => fencePartId).sort()).toEqual(["F1L", "F1R"]);
      for (const side of [1, -1]) {
        const half = (10 + 1.6) / 2;
        const span = [side * 200 - half, side * 200 + half] as const;
        expect(woodOver(rib, span, 40 - baseboard.levelZMm)).toBeLessThanOrEqual(-2.9);
      }
    }
  });

  it("has no hollows: the tray lies on a cured skin there", () => {
    const halves = [
      section("front", 1, box(0, 700, 0, 400), "level"),
      section("rear", 2, box(700, 1500, 0, 400), "level"),
    ];
    const along = { kind: "typed", atMm: [200] } as const;
    const { jig } = jigOf({ items: halves }, { attitude: "inverted", along }, { cradle: { paddingMm: 4 } });
    const hollows = (ribs: readonly Rib[]) => ribs.flatMap(({ reliefs }) => reliefs).length;
    expect(hollows(jig.ribs)).toBeGreaterThanOrEqual(2);
    expect(hollows(cradleOf(jig).ribs)).toBe(0);
  });

  it("is missing where none is asked for", () => {
    expect(jigOf({}, {}).jig.cradle).toBeUndefined();
  });
});

describe("release", () => {
  it("a plain tray lifts straight up off jig and cradle", () => {
    for (const attitude of ["upright", "inverted"] as const) {
      const { jig, problems } = jigOf(
        {},
        { attitude, along: { kind: "typed", atMm: [0, 250] } },
        { cradle: { paddingMm: 4 } },
      );
      expect(problems.filter(({ kind }) => kind === "shell-locked")).toEqual([]);
      expect([jig.release.locks, jig.cradle?.release.locks]).toEqual([[], []]);
      expect(jig.release.direction).toBe("straight up from the board");
    }
  });

  it("tells the steepest slope of what lies on the ribs", () => {
    const ramp = straightProfile("ramp", [
      [0, 100],
      [1500, 700],
    ]);
    const { jig } = jigOf(
      { profiles: [ramp], items: [section("floor", 1, box(0, 1500, 0, 500), "ramp")] },
      {},
    );
    expect(jig.release.steepestRad).toBeCloseTo(Math.atan(0.4), 6);
  });

  it("a wing that is folded back under a rib locks the shell on its jig, and the plate and the rib are named", () => {
    const { jig, problems } = hooked(150, {});
    expect(jig.release.locks.map(({ ribId, by, partId }) => [ribId, by, partId])).toEqual([
      ["A1", "wing", "P1R"],
      ["A1", "wing", "P1L"],
    ]);
    const [lock] = jig.release.locks;
    // The wing runs forward from x 700 under 30°: over the rib's rear face at x 672 or its front at 660 it is 16 to 25 mm down.
    expect(lock?.overMm).toBeGreaterThan(15);
    expect(lock?.overMm).toBeLessThan(30);
    const told = problems.filter((problem) => problem.kind === "shell-locked");
    expect(told.map(({ name, ribName, by }) => [name, ribName, by])).toEqual([
      ["P1R", "rib A1", "wing"],
      ["P1L", "rib A1", "wing"],
    ]);
    const [words] = told.map(wordProblem);
    expect(words).toContain("The wing of P1R reaches");
    expect(words).toContain("Fit the plate after the shell is off");
  });

  it("the same wing folded out of the rib's way leaves it free, and so does a rib beside it", () => {
    expect(hooked(60, {}).jig.release.locks).toEqual([]);
    expect(hooked(150, { across: { kind: "typed", atMm: [560] } }).jig.release.locks).toEqual([]);
  });

  it("locks it in the cradle too, where that carries the air face", () => {
    const { jig } = hooked(150, { attitude: "inverted" }, { cradle: { paddingMm: 4 } });
    expect(jig.release.locks).toEqual([]);
    expect(jig.cradle?.release.locks.map(({ ribId }) => ribId)).toEqual(["CA1", "CA1"]);
  });
});
