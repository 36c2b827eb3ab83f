import { describe, expect, it } from "vitest";
import { at } from "../../../core/foundation/index.ts";
import { buildJig, type Jig } from "../../../core/jig/index.ts";
import type { Project, TypedMaking } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { box, section, straightProfile, trayOf } from "./jig-trays.ts";
import { boardOf } from "./wood.ts";

const { jig: plainJig } = plainProject();
/** A ramp that rises 1 in 5 rearward. */
const ramp = straightProfile("ramp", [
  [0, 100],
  [3000, 700],
]);

function jigOf(making: TypedMaking, jig: Partial<Project["jig"]> = {}, changes: Partial<Project> = {}): Jig {
  const { project, sheets } = trayOf({
    profiles: [ramp],
    items: [section("floor", 1, box(0, 1500, 0, 500), "ramp")],
    ...changes,
    jig: { ...plainJig, across: { kind: "typed", atMm: [400, 780, 1000] }, ...jig, making },
  });
  return buildJig(sheets, project).jig;
}

describe("the baseboard", () => {
  it("is made of sheets that cover it without overlap, none larger than is sold, no joint under a rib", () => {
    const { baseboard, ribs } = jigOf({ baseLengthMm: 600, baseWidthMm: 450 });
    const [least, most] = baseboard.corners;
    const areas = baseboard.sheets.map(({ corners: [a, b] }) => (b.x - a.x) * (b.y - a.y));
    const whole = (most.x - least.x) * (most.y - least.y);
    expect(areas.reduce((sum, area) => sum + area, 0)).toBeCloseTo(whole, 3);
    for (const { corners } of baseboard.sheets) {
      const [a, b] = corners;
      const [long, short] = [Math.max(b.x - a.x, b.y - a.y), Math.min(b.x - a.x, b.y - a.y)];
      expect(long).toBeLessThanOrEqual(600 + 1e-9);
      expect(short).toBeLessThanOrEqual(450 + 1e-9);
      for (const rib of ribs) {
        const [front, rear] = boardOf(rib);
        expect(b.x <= front || b.x >= rear || b.x === most.x).toBe(true);
      }
      for (const other of baseboard.sheets) {
        if (other.corners === corners) continue;
        const [c, d] = other.corners;
        const overlap = Math.min(b.x, d.x) - Math.max(a.x, c.x);
        const beside = Math.min(b.y, d.y) - Math.max(a.y, c.y);
        expect(Math.min(overlap, beside)).toBeLessThan(1e-9);
      }
    }
  });

  it("has four marks whose two diagonals are equal and as long as is told", () => {
    const { square } = jigOf({}).baseboard;
    const [a, b, c, d] = square.marks;
    for (const [p, q] of [
      [a, c],
      [b, d],
    ] as const)
      expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeCloseTo(square.diagonalMm, 9);
    // x from 400 to 1000 and y from −500 to 500, 50 mm wider all round, marks 20 mm inside.
    expect(square.diagonalMm).toBeCloseTo(Math.hypot(660, 1060), 3);
  });

  it("says which way a rib's body lies from its line", () => {
    const { baseboard, ribs } = jigOf({});
    for (const { ribId, toward, from } of baseboard.lines) {
      const rib = ribs.find(({ id }) => id === ribId);
      expect(rib).toBeDefined();
      if (rib === undefined) continue;
      const [front, rear] = boardOf(rib);
      expect(toward).toBe(front < from.x - 1 ? "front" : "rear");
      expect([front, rear]).toContain(from.x);
    }
  });

  it("has a slot for every tab, at its place and larger by the clearance", () => {
    const { baseboard, ribs } = jigOf({ foot: "tabs", slotClearanceMm: 0.4 });
    expect(baseboard.slots.length).toBe(ribs.reduce((sum, { tabs }) => sum + tabs.length, 0));
    for (const { ribId, corners } of baseboard.slots) {
      const rib = ribs.find(({ id }) => id === ribId);
      if (rib === undefined) continue;
      const [front, rear] = boardOf(rib);
      const [a, b] = corners;
      expect([a.x, b.x]).toEqual([front - 0.2, rear + 0.2]);
      expect(rib.tabs.some(([from, to]) => a.y === from - 0.2 && b.y === to + 0.2)).toBe(true);
    }
  });

  it("that was measured gives the packing of every foot: none at the highest place", () => {
    const boardHeights = [
      { x: 400, y: -500, heightMm: 0 },
      { x: 400, y: 500, heightMm: 0 },
      { x: 1000, y: -500, heightMm: 3 },
      { x: 1000, y: 500, heightMm: 0 },
    ];
    const { baseboard } = jigOf({ foot: "feet", boardHeights });
    expect(Math.min(...baseboard.shims.map(({ packingMm }) => packingMm))).toBe(0);
    for (const { at: p, boardMm, packingMm } of baseboard.shims) {
      // Bilinear by hand.
      const expected = ((p.x - 400) / 600) * 3 * ((500 - p.y) / 1000);
      expect(boardMm).toBeCloseTo(expected, 9);
      const highest = Math.max(...baseboard.shims.map((shim) => shim.boardMm));
      expect(packingMm).toBeCloseTo(highest - expected, 9);
    }
    expect(jigOf({}).baseboard.shims).toEqual([]);
  });
});

describe("posts in place of ribs", () => {
  it.each(["upright", "inverted"] as const)(
    "%s have the height and the slope of the foam over them",
    (attitude) => {
      const { posts, ribs, baseboard } = jigOf({}, { attitude });
      expect(posts.length).toBeGreaterThanOrEqual(ribs.length * 4);
      const sign = attitude === "upright" ? 1 : -1;
      for (const { at: p, heightMm, slopeAlongRad, slopeAcrossRad } of posts) {
        // A ramp of slope 0.2: depth d along its normal is d √1.04 higher over the same plan point.
        const depthMm = attitude === "upright" ? 0.8 : 10.8;
        const z = 100 + 0.2 * p.x + depthMm * Math.sqrt(1.04);
        expect(heightMm).toBeCloseTo(sign * (z - baseboard.levelZMm), 6);
        expect(slopeAlongRad).toBeCloseTo(sign * Math.atan(0.2), 6);
        expect(slopeAcrossRad).toBeCloseTo(0, 6);
      }
    },
  );

  it("stand within the foam and no farther apart than 250 mm", () => {
    const { posts } = jigOf({});
    const ofRib = posts
      .filter(({ ribId }) => ribId === "A1")
      .map(({ at: p }) => Math.round(p.y * 1000) / 1000);
    expect([Math.min(...ofRib), Math.max(...ofRib)]).toEqual([-475, 475]);
    for (const [i, y] of ofRib.entries()) if (i > 0) expect(y - at(ofRib, i - 1)).toBeLessThanOrEqual(250);
  });
});

describe("a fence that stands first", () => {
  const fin = {
    kind: "fence",
    id: "fin",
    number: 1,
    name: "Fin",
    line: {
      closed: false,
      elements: [
        { kind: "node", id: "f1", x: 200, y: 200, next: "line" },
        { kind: "node", id: "f2", x: 1200, y: 200, next: "line" },
      ],
    },
    lowerEdge: {
      kind: "heights",
      nodes: [
        { kind: "node", id: "h1", x: 100, z: 40, next: "line" },
        { kind: "node", id: "h2", x: 1400, z: 170, next: "line" },
      ],
    },
    seat: "core",
    standsFirst: true,
  } as const;
  const items = [section("floor", 1, box(0, 1500, 0, 500), "ramp"), fin];

  it("has heights of both edges over the board, no more than 100 mm apart, on both hands", () => {
    const { fenceStands, baseboard } = jigOf({}, {}, { items });
    expect(fenceStands.map(({ partId }) => partId)).toEqual(["F1R", "F1L"]);
    for (const { stations } of fenceStands) {
      expect(at(stations, -1).alongMm).toBeCloseTo(1000, 3);
      for (const [i, { alongMm, at: p, lowerMm, upperMm }] of stations.entries()) {
        if (i > 0) expect(alongMm - at(stations, i - 1).alongMm).toBeLessThanOrEqual(100 + 1e-6);
        expect(p.x).toBeCloseTo(200 + alongMm, 3);
        // Finished lower edge at z 40 + (x − 100) / 10, its skin of 0.8 outside the foam.
        expect(Math.abs(lowerMm + baseboard.levelZMm - (40 + (p.x - 100) / 10))).toBeLessThan(0.81);
        // Upper edge on the core's lower face, 0.8 behind the drawn ramp.
        expect(
          Math.abs(upperMm + baseboard.levelZMm - (100 + 0.2 * p.x + 0.8 * Math.sqrt(1.04))),
        ).toBeLessThan(0.02);
      }
    }
  });

  it("has none on an inverted jig", () => {
    expect(jigOf({}, { attitude: "inverted" }, { items }).fenceStands).toEqual([]);
  });
});
