import { describe, expect, it } from "vitest";
import type { Fence, Section } from "../../../core/project/index.ts";
import {
  edgeOf,
  fence,
  followEdge,
  layTray,
  partOf,
  planNode,
  rectangle,
  section,
  sideNode,
  soundTray,
  straightProfile,
  tray,
} from "../trays.ts";

const FLAT = { p: straightProfile(0, 60, 1000, 60) };
const LENGTH_MM = 0.01;

/** A flat section from y 0 to 300, and one beside it to y 600 that follows its outer edge and leans by `tiltRad`. */
function pair(tiltRad: number): readonly Section[] {
  const inner = section(1, rectangle(0, 1000, 0, 300));
  const outer = section(
    2,
    [
      followEdge("shared", { itemId: "s1", fromNodeId: "outer", toNodeId: "front" }, "against"),
      planNode("c", 1000, 600),
      planNode("d", 0, 600),
    ],
    { tiltRad, pivotYMm: 300 },
  );
  return [inner, outer];
}

const across = (changes: Partial<Fence> = {}) =>
  fence(1, [planNode("a", 100, 100), planNode("b", 900, 500)], changes);

describe("a fence that crosses from one section to the next", () => {
  it.each([-0.3, -0.1, -0.02, 0.1])(
    "has one continuous core seat where the next section leans by %d",
    (tiltRad) => {
      const laid = soundTray(tray(FLAT, [...pair(tiltRad), across({ seat: "core" })], { gapLimitMm: 0 }));
      const part = partOf(laid, "F1");
      const points = part.loops.flatMap(({ edges }) => edges.flatMap((edge) => edge.points));
      expect(points.every(({ u, v }) => Number.isFinite(u) && Number.isFinite(v))).toBe(true);
      expect(points.length).toBeLessThan(100);
      // The core's lower face lies 0.8 mm above the air side, square to it; at the joint it turns without a step.
      const heights = part.seat.map(({ alongMm, midZMm }) => [alongMm, midZMm] as const);
      for (const [i, [alongMm, z]] of heights.entries()) {
        const y = 100 + (400 * alongMm) / Math.hypot(800, 400);
        const flat = 60.8;
        const leaning = 60 + Math.tan(tiltRad) * (y - 300) + 0.8 * Math.hypot(1, Math.tan(tiltRad));
        const expected = tiltRad < 0 ? Math.min(flat, leaning) : y <= 300 ? flat : leaning;
        expect(Math.abs(z - expected), `station ${i} at y ${y}`).toBeLessThan(LENGTH_MM);
      }
    },
  );

  it("is glued to both, over its whole length", () => {
    const laid = soundTray(tray(FLAT, [...pair(0), across({ seat: "skin" })]));
    const seats = laid.joints.filter(({ kind }) => kind === "fence seat");
    expect(seats.map(({ id }) => id)).toEqual(["F1/S1", "F1/S2"]);
    const lengthMm = seats.reduce((sum, joint) => sum + joint.lengthMm, 0);
    expect(Math.abs(lengthMm - Math.hypot(800, 400))).toBeLessThan(LENGTH_MM);
  });
});

describe("a fence under a sheet that leans across it", () => {
  it("has its upper edge bevelled by the slope, with the heights at both foam faces", () => {
    const items = [
      section(1, rectangle(0, 1000, 0, 300), { tiltRad: 0.3, pivotYMm: 0 }),
      fence(1, [planNode("a", 100, 150), planNode("b", 900, 150)], { seat: "core" }),
    ];
    const laid = soundTray(tray(FLAT, items, { thicknessMm: 10 }));
    const part = partOf(laid, "F1");
    for (const bevelRad of edgeOf(part, "upper").bevelRad) expect(bevelRad).toBeCloseTo(0.3, 9);
    for (const { leftZMm, midZMm, rightZMm } of part.seat) {
      expect(leftZMm - midZMm).toBeCloseTo(5 * Math.tan(0.3), 9);
      expect(midZMm - rightZMm).toBeCloseTo(5 * Math.tan(0.3), 9);
    }
    const [seat] = laid.joints;
    expect(seat).toMatchObject({ kind: "fence seat", cut: "butt" });
    expect(seat?.bevelRad[0]).toBeCloseTo(0.3, 9);
  });

  it("tells its seat at least every hundred millimetres", () => {
    const part = partOf(soundTray(tray(FLAT, [...pair(0), across()])), "F1");
    const places = part.seat.map(({ alongMm }) => alongMm);
    expect(Math.max(...places.slice(1).map((s, i) => s - (places[i] ?? 0)))).toBeLessThanOrEqual(100 + 1e-9);
  });
});

describe("a fence that ends on the outline of its section", () => {
  it("is glued over its whole length", () => {
    const items = [
      section(1, rectangle(200, 800, 100, 400)),
      fence(1, [planNode("a", 300, 250), planNode("b", 700, 400)]),
    ];
    const [seat] = soundTray(tray(FLAT, items)).joints;
    expect(Math.abs((seat?.lengthMm ?? 0) - Math.hypot(400, 150))).toBeLessThan(1);
  });
});

describe("a fence that cannot be made is named", () => {
  const problemsOf = (
    changes: Partial<Fence>,
    elements = [planNode("a", 100, 150), planNode("b", 900, 150)],
  ) => layTray(tray(FLAT, [section(1, rectangle(0, 1000, 0, 300)), fence(1, elements, changes)])).problems;

  it("where its lower edge rises above the sheet between two ends that do not", () => {
    const nodes = [sideNode("f", 100, 20), sideNode("m", 500, 90), sideNode("r", 900, 20)];
    const problems = problemsOf({ lowerEdge: { kind: "heights", nodes } });
    expect(problems).toMatchObject([{ kind: "fence-has-no-depth", atMm: 400, place: { itemId: "f1" } }]);
  });

  it("where its line turns in one place", () => {
    const problems = problemsOf({}, [
      planNode("a", 100, 100),
      planNode("b", 400, 100),
      planNode("c", 600, 250),
    ]);
    expect(problems).toMatchObject([{ kind: "fence-turns-sharply", place: { itemId: "f1", nodeId: "b" } }]);
    expect(problems[0]).toMatchObject({ turnRad: expect.closeTo(Math.atan2(150, 200), 9) });
  });

  it("where it spans a gap between two sections that is narrower than a finger", () => {
    const items = [
      section(1, rectangle(0, 501, 0, 300)),
      section(2, rectangle(503, 1000, 0, 300)),
      fence(1, [planNode("a", 100, 150), planNode("b", 900, 150)]),
    ];
    const problems = layTray(tray(FLAT, items)).problems;
    expect(problems).toMatchObject([
      { kind: "fence-without-sheet", place: { itemId: "f1" } },
      { kind: "edges-nearly-meet", gapMm: expect.closeTo(2, 6) },
    ]);
  });
});
