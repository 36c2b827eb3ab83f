import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { signedAreaMm2 } from "../../../core/cutting/index.ts";
import { at, type FlatPoint } from "../../../core/foundation/index.ts";
import { buildJig, type Jig, type Rib } from "../../../core/jig/index.ts";
import type { Project, TypedMaking } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { arcProfile, box, section, straightProfile, trayOf } from "./jig-trays.ts";
import { boardOf, deepestCollision, spansAt, woodAt } from "./wood.ts";

const { jig: plainJig, materials } = plainProject();
const level = straightProfile("level", [
  [0, 100],
  [3000, 100],
]);

/** A jig of a tray with ribs as they are to be made. */
function made(
  making: TypedMaking,
  changes: Partial<Project> = {},
  jig: Partial<Project["jig"]> = {},
): ReturnType<typeof buildJig> {
  const { project, sheets } = trayOf({
    profiles: [level],
    items: [section("floor", 1, box(0, 1500, 0, 500), "level")],
    ...changes,
    jig: { ...plainJig, across: { kind: "typed", atMm: [400, 1000] }, ...jig, making },
  });
  return buildJig(sheets, project);
}

const ribOf = ({ ribs }: Pick<Jig, "ribs">, id: string): Rib => {
  const found = ribs.find((rib) => rib.id === id);
  expect(found, `${id} among ${ribs.map((rib) => rib.id).join(" ")}`).toBeDefined();
  return found ?? at(ribs, 0);
};

const spanOf = (points: readonly FlatPoint[], axis: "u" | "v"): readonly [number, number] => {
  const values = points.map((p) => p[axis]);
  return [Math.min(...values), Math.max(...values)];
};

describe("an egg crate of ribs across and along", () => {
  const crate = fc.record({
    radiusMm: fc.integer({ min: 600, max: 4000 }),
    across: fc.uniqueArray(fc.integer({ min: 40, max: 460 }), {
      minLength: 1,
      maxLength: 3,
      comparator: (a, b) => Math.abs(a - b) < 40,
    }),
    along: fc.uniqueArray(fc.integer({ min: 0, max: 290 }), {
      minLength: 1,
      maxLength: 3,
      comparator: (a, b) => Math.abs(a - b) < 40,
    }),
    clearanceMm: fc.double({ min: 0, max: 1, noNaN: true }),
    attitude: fc.constantFrom("upright" as const, "inverted" as const),
  });

  it("is set up without a collision, each rib straight down in the order that is told", () => {
    fc.assert(
      fc.property(crate, ({ radiusMm, across, along, clearanceMm, attitude }) => {
        const { jig, problems } = made(
          { slotClearanceMm: clearanceMm },
          {
            profiles: [arcProfile("arc", radiusMm, 500)],
            items: [section("floor", 1, box(0, 500, 0, 300), "arc")],
          },
          { attitude, across: { kind: "typed", atMm: across }, along: { kind: "typed", atMm: along } },
        );
        expect(problems.filter(({ kind }) => kind === "rib-locked-out")).toEqual([]);
        const standing: Rib[] = [];
        for (const { ribId, lockedBy } of jig.assembly) {
          expect(lockedBy).toEqual([]);
          const rib = ribOf(jig, ribId);
          for (const other of standing) {
            if (other.runs === rib.runs) continue;
            const [over, under] = rib.runs === "across" ? [rib, other] : [other, rib];
            for (const liftMm of [0, 1, 10, 40, 90, 200]) {
              const lift = rib.runs === "across" ? liftMm : -liftMm;
              expect(deepestCollision(over, under, lift)).toBeLessThan(1e-6);
            }
          }
          standing.push(rib);
        }
        expect(standing.length).toBe(jig.ribs.length);
      }),
      { numRuns: 40, seed: 61 },
    );
  });

  it("has slots as much wider than the board as the clearance says, and both halves of a lap meet", () => {
    const { jig } = made({ slotClearanceMm: 0.6 }, {}, { along: { kind: "typed", atMm: [200] } });
    const [across, along] = [ribOf(jig, "A1"), ribOf(jig, "L1R")];
    const [inAcross, inAlong] = [at(across.laps, 1), at(along.laps, 0)];
    expect(inAcross.toMm - inAcross.fromMm).toBeCloseTo(12.6, 9);
    expect([inAcross.from, inAlong.from]).toEqual(["below", "top"]);
    expect(inAcross.levelMm).toBeCloseTo(inAlong.levelMm, 9);
    // Wood over the slot of the one, and under that of the other.
    const middle = (at(boardOf(along), 0) + at(boardOf(along), 1)) / 2;
    expect(at(woodAt(across, middle), 0)[0]).toBeCloseTo(40, 6);
    expect(at(woodAt(along, at(boardOf(across), 0) + 6), 0)[1]).toBeCloseTo(40, 6);
  });

  it("is set up ribs along first, then those across over them", () => {
    const { jig } = made({ slotClearanceMm: 0 }, {}, { along: { kind: "typed", atMm: [200] } });
    expect(jig.assembly.flatMap(({ lockedBy }) => lockedBy)).toEqual([]);
    expect(jig.assembly.map(({ ribId }) => ribId)).toEqual(["L1R", "L1L", "A1", "A2"]);
    expect(at(jig.assembly, 2).over).toEqual(["L1R", "L1L"]);
  });
});

describe("feet and tabs", () => {
  it("feet touch the board at both ends and at most 450 mm apart, and nothing else does", () => {
    const { jig } = made({ foot: "feet" });
    const rib = ribOf(jig, "A1");
    expect(rib.standsOn.length).toBe(4);
    const isOnFoot = (u: number) => rib.standsOn.some(([from, to]) => u > from && u < to);
    for (let u = -499.5; u < 500; u += 1) expect(at(at(woodAt(rib, u), 0), 0)).toBe(isOnFoot(u) ? 0 : 6);
  });

  it("tabs go through the board and keep clear of slots", () => {
    const { jig } = made(
      { foot: "tabs", baseThicknessMm: 15 },
      {},
      { along: { kind: "typed", atMm: [0, 480] } },
    );
    const rib = ribOf(jig, "A1");
    expect(rib.tabs.length).toBeGreaterThan(1);
    for (const [from, to] of rib.tabs) {
      expect(at(at(woodAt(rib, (from + to) / 2), 0), 0)).toBe(-15);
      for (const lap of rib.laps) expect(lap.toMm + 14.9 < from || lap.fromMm - 14.9 > to).toBe(true);
    }
    expect(Math.min(...rib.outlineMm.map(({ v }) => v))).toBe(-15);
  });

  it("a board that was measured high or low has the foot follow it, and the top stays", () => {
    const boardHeights = [-600, 600].flatMap((y) =>
      [0, 1500].map((x) => ({ x, y, heightMm: x === 0 ? 2 : -1 })),
    );
    const plain = ribOf(made({}).jig, "A1");
    const rib = ribOf(made({ boardHeights }).jig, "A1");
    // At x 400 of 1500 mm, from 2 down to −1: 2 − 3 × 400 / 1500.
    for (const u of [-480, 0, 333]) {
      expect(at(at(woodAt(rib, u), 0), 0)).toBeCloseTo(1.2, 9);
      expect(at(at(woodAt(rib, u), 0), 1)).toBeCloseTo(at(at(woodAt(plain, u), 0), 1), 9);
    }
  });
});

describe("holes to reach through", () => {
  it("keep 25 mm of wood all round and stay clear of slots and tabs", () => {
    const { jig, problems } = made(
      { holeMm: 60 },
      {},
      { leastHeightMm: 140, along: { kind: "typed", atMm: [0] } },
    );
    expect(problems).toEqual([]);
    const rib = ribOf(jig, "A1");
    expect(rib.holesMm.length).toBeGreaterThan(6);
    for (const hole of rib.holesMm) {
      expect(signedAreaMm2(hole)).toBeLessThan(0);
      const [[left, right], [low, high]] = [spanOf(hole, "u"), spanOf(hole, "v")];
      expect(right - left).toBeCloseTo(60, 6);
      expect(low).toBeGreaterThanOrEqual(25 - 1e-6);
      for (let u = left; u <= right; u += 2) {
        const top = at(at(spansAt([rib.outlineMm], u + 1e-4), 0), 1);
        expect(top - high).toBeGreaterThanOrEqual(25 - 1e-6);
      }
      for (const lap of rib.laps) expect(lap.toMm + 25 <= left || lap.fromMm - 25 >= right).toBe(true);
    }
  });

  it("larger than the rib are named, and the rib is made without", () => {
    const { jig, problems } = made({ holeMm: 200 });
    expect(problems.map(({ kind, name }) => [kind, name])).toEqual([
      ["rib-hole-does-not-fit", "Ribs A1, A2"],
    ]);
    expect(ribOf(jig, "A1").holesMm).toEqual([]);
  });
});

describe("a rib longer than its board", () => {
  const board = (lengthMm: number) => ({
    materials: {
      ...materials,
      boards: materials.boards.map((each) => ({ ...each, lengthMm, widthMm: 400 })),
    },
  });

  it.each(["plate", "dovetail"] as const)(
    "is spliced by a %s: pieces that fit the board and each other",
    (spliceBy) => {
      const { jig, problems } = made({ spliceBy, slotClearanceMm: 0.2 }, board(620), {
        along: { kind: "typed", atMm: [0, 160] },
      });
      expect(problems).toEqual([]);
      for (const rib of jig.ribs) {
        const [from, to] = spanOf(rib.outlineMm, "u");
        expect(rib.pieces.length).toBeGreaterThanOrEqual(Math.ceil((to - from) / 620));
        const areas = rib.pieces.map(({ outlineMm }) => signedAreaMm2(outlineMm));
        const whole = signedAreaMm2(rib.outlineMm);
        const lost = whole - areas.reduce((sum, area) => sum + area, 0);
        const socketLost = rib.splices.map(
          ({ tailMm, socketMm }) =>
            Math.abs(signedAreaMm2(socketMm ?? [])) - Math.abs(signedAreaMm2(tailMm ?? [])),
        );
        expect(lost).toBeCloseTo(
          socketLost.reduce((sum, one) => sum + one, 0),
          6,
        );
        for (const { id, outlineMm } of rib.pieces) {
          expect(id.startsWith(`${rib.id}-`)).toBe(true);
          const [left, right] = spanOf(outlineMm, "u");
          expect(right - left).toBeLessThanOrEqual(620 + 1e-9);
        }
        for (const { atMm } of rib.splices)
          for (const lap of rib.laps) expect(atMm + 60 <= lap.fromMm || atMm - 60 >= lap.toMm).toBe(true);
      }
    },
  );

  it("a tail lies inside its socket, and is wider at its end than at its neck", () => {
    const { jig } = made({ spliceBy: "dovetail", slotClearanceMm: 0.4 }, board(620));
    const [splice] = ribOf(jig, "A1").splices;
    const [a, b, c, d] = splice?.tailMm ?? [];
    expect((c?.v ?? 0) - (b?.v ?? 0)).toBeGreaterThan((d?.v ?? 0) - (a?.v ?? 0) + 10);
    for (const [i, { u, v }] of (splice?.tailMm ?? []).entries()) {
      const socket = at(splice?.socketMm ?? [], i);
      expect(Math.abs(socket.v - v)).toBeGreaterThan(0.19);
      expect(socket.u - u).toBeCloseTo(i === 1 || i === 2 ? 0.4 : 0, 9);
    }
  });

  it("a plate stays below the top and above the foot, and is sawn from board as well", () => {
    const { jig } = made({ spliceBy: "plate" }, board(620));
    const rib = ribOf(jig, "A1");
    const plate = at(rib.splices, 0).plate?.outlineMm ?? [];
    const [low, high] = spanOf(plate, "v");
    expect([low, 80 - high]).toEqual([12, 12]);
    expect(spanOf(plate, "u")[1] - spanOf(plate, "u")[0]).toBe(200);
  });

  it("between whose slots no splice finds room is named", () => {
    const atMm = Array.from({ length: 9 }, (_, i) => i * 60);
    const { problems } = made({}, board(620), { along: { kind: "typed", atMm } });
    expect(problems.map(({ kind }) => kind)).toContain("rib-not-spliced");
  });
});

describe("a joint on a rib", () => {
  const halves = {
    profiles: [level],
    items: [
      section("front", 1, box(0, 700, 0, 400), "level"),
      section("rear", 2, box(700, 1500, 0, 400), "level"),
    ],
  };

  it("has a hollow under it, half as deep as it is wide; heights beside it stay", () => {
    const { jig } = made({ reliefMm: 14 }, halves, {
      across: { kind: "none" },
      along: { kind: "typed", atMm: [200] },
    });
    const rib = ribOf(jig, "L1R");
    expect(rib.reliefs.map(({ atMm, between }) => [Math.round(atMm * 100) / 100, between])).toEqual([
      [700, ["S1", "S2"]],
    ]);
    const topAt = (u: number) => at(at(woodAt(rib, u), 0), 1);
    expect(topAt(700.001)).toBeCloseTo(80 - 7, 1);
    expect(topAt(700 - 3.5)).toBeCloseTo(80 - 3.5, 1);
    expect(topAt(700 - 7.1)).toBeCloseTo(80, 6);
    expect(topAt(700 + 7.1)).toBeCloseTo(80, 6);
  });

  it("has none where none is wanted", () => {
    const { jig } = made({ reliefMm: 0 }, halves, {
      across: { kind: "none" },
      along: { kind: "typed", atMm: [200] },
    });
    expect(ribOf(jig, "L1R").reliefs).toEqual([]);
  });
});

describe("a fence that stands in an upright jig", () => {
  const fence = (id: string, number: number, y: number) =>
    ({
      kind: "fence",
      id,
      number,
      name: id,
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
      standsFirst: true,
    }) as const;
  const items = [section("floor", 1, box(0, 1500, 0, 500), "level"), fence("fin", 1, 200)];

  it("carries the sheet itself: a typed rib along in its line is left out and named", () => {
    const { jig, problems } = made({}, { items }, { along: { kind: "typed", atMm: [0, 202] } });
    expect(jig.ribs.map(({ id }) => id)).toEqual(["A1", "A2", "L1"]);
    expect(problems.map(({ kind, name }) => [kind, name])).toEqual([
      ["rib-in-fence", "Rib L2R"],
      ["rib-in-fence", "Rib L2L"],
    ]);
  });

  it("has a notch with room for its fillet in every rib across", () => {
    const { jig } = made({ filletMm: 10 }, { items });
    const rib = ribOf(jig, "A1");
    expect(rib.notches.map(({ fencePartId }) => fencePartId).sort()).toEqual(["F1L", "F1R"]);
    const topAt = (u: number) => at(at(woodAt(rib, u), 0), 1);
    const top = at(rib.heights, 0).stationFaceMm;
    const sideMm = 200 + (10 + 1.6 + 3) / 2;
    // Over a fillet of radius 10 beside the fence the wood stands clear by more than the fillet is high.
    for (const beside of [0.5, 3, 6, 9]) {
      const filletMm = 10 - Math.sqrt(100 - (10 - beside) ** 2);
      expect(top - topAt(sideMm + beside)).toBeGreaterThanOrEqual(filletMm - 1e-6);
    }
    expect(topAt(sideMm + 10.1)).toBeCloseTo(top, 6);
  });
});
