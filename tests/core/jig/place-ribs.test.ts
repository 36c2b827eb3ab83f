import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { at } from "../../../core/foundation/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { box, outlineThrough, section, straightProfile } from "./jig-trays.ts";

/** What a lie may ask for and still be allowed; whole millimetres of places cost a little. */
const ALLOWED = 1 + 1e-9;

function trayOn(across: Project["jig"]["across"], changes: Partial<Project> = {}, lie = {}): Design {
  const plain = plainProject();
  return designTray(
    plainProject({
      profiles: [
        straightProfile("p", [
          [0, 100],
          [700, 100],
        ]),
      ],
      items: [section("s1", 1, box(0, 700, 0, 300), "p")],
      stock: [{ id: "xps10", foamId: "xps", thicknessMm: 10, lengthMm: 2500, widthMm: 1200 }],
      ...changes,
      jig: { ...plain.jig, across, lie },
    }),
  );
}

const mostAsked = ({ lie }: Design): number => Math.max(...lie.limits.map(({ share }) => share));
const placesOf = ({ jig }: Design): readonly number[] =>
  [...new Set(jig.ribs.map(({ atMm }) => atMm))].sort((a, b) => a - b);

/** A bend of R 900 in the middle of 900 mm. */
const bent: Partial<Project> = {
  profiles: [
    {
      id: "p",
      name: "Bend",
      nodes: [
        { kind: "node", id: "p1", x: 0, z: 100, next: "line" },
        { kind: "node", id: "p2", x: 450, z: 100, radiusMm: 900, next: "line" },
        { kind: "node", id: "p3", x: 900, z: 190, next: "line" },
      ],
    },
  ],
  items: [section("s1", 1, box(0, 900, 0, 300), "p")],
};

/** All choices of so many from a list. */
function* choices(from: readonly number[], count: number, start = 0): Generator<readonly number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let i = start; i <= from.length - count; i++)
    for (const rest of choices(from, count - 1, i + 1)) yield [at(from, i), ...rest];
}

describe("ribs placed automatically", () => {
  const cases = [
    { name: "level foam, a light hand", changes: {}, lie: { pushN: 5 }, stepMm: 50 },
    { name: "level foam nobody leans on", changes: {}, lie: { pushN: 0, toleranceMm: 0.3 }, stepMm: 50 },
    { name: "a bend nobody leans on", changes: bent, lie: { pushN: 0, toleranceMm: 1 }, stepMm: 50 },
    {
      name: "a bend to a quarter of a millimetre",
      changes: bent,
      lie: { pushN: 0, toleranceMm: 0.4 },
      stepMm: 85,
    },
  ];

  it.each(cases)(
    "are as few as a search through all places finds: $name",
    { timeout: 120_000 },
    ({ changes, lie, stepMm }) => {
      const placed = trayOn({ kind: "automatic" }, changes, lie);
      const places = placesOf(placed);
      expect(mostAsked(placed)).toBeLessThanOrEqual(ALLOWED);
      expect(placed.problems).toEqual([]);
      // The search keeps both end ribs, and tries one rib fewer than were placed in every way on a grid between them.
      const [first, last] = [at(places, 0), at(places, -1)];
      const grid = Array.from(
        { length: Math.floor((last - first) / stepMm) },
        (_, i) => first + (i + 1) * stepMm,
      );
      const fewer = places.length - 3;
      if (fewer < 0) return;
      const least = Math.min(
        ...[
          ...choices(
            grid.filter((mm) => mm < last - 20),
            fewer,
          ),
        ].map((inner) => mostAsked(trayOn({ kind: "typed", atMm: [first, ...inner, last] }, changes, lie))),
      );
      expect(least).toBeGreaterThan(1);
    },
  );

  it("stand on both sides of a splice", () => {
    const stock = [{ id: "xps10", foamId: "xps", thicknessMm: 10, lengthMm: 500, widthMm: 700 }];
    const design = trayOn({ kind: "automatic" }, { stock }, { pushN: 0 });
    const seams = design.seams.filter(({ runs }) => runs === "along ruling");
    expect(seams.length).toBeGreaterThan(0);
    for (const { atMm } of seams) {
      const near = placesOf(design).map((mm) => mm - atMm);
      expect(near.some((mm) => mm < 0 && mm >= -30)).toBe(true);
      expect(near.some((mm) => mm > 0 && mm <= 30)).toBe(true);
    }
  });

  it("do not stand closer than a hand needs, however little is allowed, and what is off is named", () => {
    const design = trayOn({ kind: "automatic" }, bent, { pushN: 300, toleranceMm: 0.05 });
    const places = placesOf(design);
    for (const [i, mm] of places.slice(1).entries()) expect(mm - at(places, i)).toBeGreaterThanOrEqual(20);
    expect(places.length).toBeLessThan(60);
  });

  it("need no rib where nothing is drawn", () => {
    const design = trayOn({ kind: "automatic" }, { items: [], profiles: [] });
    expect(design.jig.ribs).toEqual([]);
  });
});

describe("ribs beside an opening", () => {
  const hole = (fromX: number, toX: number): Project["openings"][number] => ({
    id: "hole",
    number: 1,
    name: "Hole",
    cut: "upright",
    outline: outlineThrough([
      [fromX, 100],
      [toX, 100],
      [toX, 180],
      [fromX, 180],
    ]),
  });
  const lie = { pushN: 5 };
  const whole = placesOf(trayOn({ kind: "automatic" }, {}, lie));
  /** The board of a rib reaches so far to either side of its station plane, mm. */
  const BOARD_MM = 12;

  it("are shifted clear of it where that costs no rib", () => {
    const inner = at(whole, 1);
    const openings = [hole(inner - 15, inner + 15)];
    const design = trayOn({ kind: "automatic" }, { openings }, lie);
    const places = placesOf(design);
    expect(places.length).toBeLessThanOrEqual(whole.length);
    for (const mm of places) expect(Math.abs(mm - inner)).toBeGreaterThanOrEqual(15 + BOARD_MM);
    expect(design.lie.inOpenings).toEqual([]);
    expect(mostAsked(design)).toBeLessThanOrEqual(ALLOWED);
  });

  it("stand in it where it is too long to stand clear of, and are told", () => {
    const openings = [hole(120, 580)];
    const design = trayOn({ kind: "automatic" }, { openings }, lie);
    const told = design.jig.ribs.filter(({ atMm }) => atMm > 120 && atMm < 580).map(({ id }) => id);
    expect(told.length).toBeGreaterThan(0);
    for (const id of told) expect(design.lie.inOpenings).toContain(id);
  });
});
