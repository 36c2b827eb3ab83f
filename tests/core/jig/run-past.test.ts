import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { assert, at } from "../../../core/foundation/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { arcProfile, box, section } from "./jig-trays.ts";
import { stripOffCurve } from "./strip-off-curve.ts";

const RADIUS = 1000;
/** The lower face rests on the ribs: it is the one of R 1000, 5 mm outside the middle of the foam that is drawn. */
const DRAWN = RADIUS - 5;
/** The sheet ends after 0.9 rad of its arc, or 900 mm of it on the face that rests on the ribs. */
const END_RAD = 0.9;

const stock = (lengthMm: number): Project["stock"] => [
  { id: "xps10", foamId: "xps", thicknessMm: 10, lengthMm, widthMm: 900 },
];

/** Foam of next to no weight, soft enough to be held by weights, bent over all its length, on ribs typed by their arc. */
function bent(
  lie: Project["jig"]["lie"],
  changes: Partial<Project> = {},
  arcsMm = [1, 300, 600, 875],
): Design {
  const plain = plainProject();
  const toMm = DRAWN * Math.sin(END_RAD);
  const foams = plain.materials.foams.map((foam) => ({
    ...foam,
    densityKgPerM3: 5,
    modulusMPa: 100,
    leastBendRatio: 5,
  }));
  return designTray(
    plainProject({
      drawnFace: "neutral",
      symmetry: "none",
      skins: { lowerMm: 0, upperMm: 0 },
      materials: { ...plain.materials, foams },
      profiles: [arcProfile("arc", DRAWN, toMm, 24)],
      items: [section("s1", 1, box(0, toMm, 0, 300), "arc")],
      stock: stock(2500),
      jig: {
        ...plain.jig,
        across: { kind: "typed", atMm: arcsMm.map((mm) => RADIUS * Math.sin(mm / RADIUS)) },
        lie: { wetKgPerM2: 0, pushN: 0, ...lie },
      },
      ...changes,
    }),
  );
}

const ribOf = ({ jig }: Design, id: string) => {
  const rib = jig.ribs.find((one) => one.id === id);
  assert(rib !== undefined, `rib ${id} stands`);
  return rib;
};

describe("foam of R 1000 that runs past its free edges", () => {
  it("does so by a third of a span, over one rib more at either end", () => {
    const { jig, strips, problems, lie } = bent({});
    expect(problems).toEqual([]);
    expect(jig.ribs.filter(({ isOutboard }) => isOutboard).map(({ id, name }) => [id, name])).toEqual([
      ["E1", "Outboard rib E1"],
      ["E2", "Outboard rib E2"],
    ]);
    const spares = strips.flatMap(({ loops }) =>
      loops.flatMap(({ edges }) => edges.flatMap(({ name, spare }) => (spare ? [[name, spare.for]] : []))),
    );
    expect(spares.map(([, reason]) => reason)).toEqual(["hold", "hold"]);
    // The widest span between typed ribs, in plan: from 0 to 300 of the arc.
    const spanMm = RADIUS * (Math.sin(0.3) - Math.sin(0.001));
    expect(lie.pasts.map(({ lengthMm }) => lengthMm)).toEqual([
      Math.round(spanMm / 3),
      Math.round(spanMm / 3),
    ]);
  });

  it("is cut longer by that at both ends, and by nothing else", () => {
    const lengthMm = 80;
    const [strip] = bent({ runPastMm: lengthMm }).strips;
    assert(strip !== undefined, "it is cut");
    const reach = (line: readonly { readonly u: number; readonly v: number }[]) => {
      const [us, vs] = [line.map(({ u }) => u), line.map(({ v }) => v)];
      return [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)];
    };
    const [net, gross] = [reach(strip.outlineMm), reach(at(strip.cutLinesMm, 0))];
    expect(gross.map((mm, i) => mm - at(net, i))).toEqual(
      [-lengthMm, lengthMm, 0, 0].map((mm) => expect.closeTo(mm, 6)),
    );
    // As long as the middle of the foam, which is drawn.
    expect(at(net, 1) - at(net, 0)).toBeCloseTo(DRAWN * END_RAD, 1);
  });

  it("lies on outboard ribs whose tops go on along the tangent", () => {
    const design = bent({ runPastMm: 100 });
    const [front, rear] = [ribOf(design, "E1"), ribOf(design, "E2")];
    const levelMm = design.jig.baseboard.levelZMm;
    // In front the arc begins level, at 5 mm under the drawn z 0.
    expect(front.atMm).toBe(-75);
    for (const { stationFaceMm } of front.heights) expect(stationFaceMm + levelMm).toBeCloseTo(-5, 3);
    const edge = { x: RADIUS * Math.sin(END_RAD), z: DRAWN - RADIUS * Math.cos(END_RAD) };
    // 25 mm inside the end of the foam, along it, on whole millimetres.
    expect(rear.atMm).toBe(Math.floor(DRAWN * Math.sin(END_RAD) + 75 * Math.cos(END_RAD)));
    const zMm = edge.z + (rear.atMm - edge.x) * Math.tan(END_RAD);
    expect(rear.heights.length).toBeGreaterThan(1);
    for (const { stationFaceMm } of rear.heights) expect(stationFaceMm + levelMm).toBeCloseTo(zMm, 2);
  });

  it("stands off by less than 2 mm, by a beam of the test's own, where with free ends it is several", () => {
    const lengthMm = 100;
    const design = bent({ runPastMm: lengthMm }, {}, [1, 300, 600, 899]);
    const line = at(design.lie.lines, 1);
    const offs = line.stations.map(({ alongMm, errorMm }) => [alongMm - lengthMm, errorMm] as const);
    const rear = ribOf(design, "E2");
    const outMm = (rear.atMm - RADIUS * Math.sin(END_RAD)) / Math.cos(END_RAD);
    const ribs = [-75, 0, 300, 600, 900, 900 + outMm];
    // Half of it where the bend begins and ends.
    const bends = (mm: number) => (1 + Math.sign(mm) * Math.sign(900 - mm)) / 2 / RADIUS;
    const own = stripOffCurve(ribs, -lengthMm, 900 + lengthMm, bends);
    const most = (from: readonly (readonly [number, number])[], a: number, b: number) =>
      Math.max(...from.flatMap(([along, off]) => (along >= a && along <= b ? [Math.abs(off)] : [])));
    expect(most(offs, 600, 905)).toBeCloseTo(most(own, 600, 900), 1);
    expect(most(offs, 600, 905)).toBeLessThan(2);
    const [, last] = design.lie.pasts;
    expect(Math.abs(last?.withMm ?? 0)).toBeCloseTo(most(own, 600, 900), 1);
    // Without: the same ribs but the outboard ones, and foam that ends at the trim lines.
    const free = stripOffCurve([0, 300, 600, 900], 0, 900, () => 1 / RADIUS);
    expect(Math.abs(last?.withoutMm ?? 0)).toBeCloseTo(most(free, 600, 900), 1);
    expect(most(free, 600, 900)).toBeGreaterThan(4);
    expect(last?.ribId).toBe("E2");
  });

  it("is judged to the trim line only", () => {
    const design = bent({ runPastMm: 100 });
    for (const { stations, past } of design.lie.lines) {
      for (const { at: spot } of stations) {
        expect(spot.x).toBeGreaterThan(-0.1);
        expect(spot.x).toBeLessThan(RADIUS * Math.sin(END_RAD) + 0.1);
      }
      expect(past.length).toBeGreaterThan(4);
    }
    for (const { ribId } of design.lie.checks) expect(ribId.startsWith("E")).toBe(false);
  });

  it("runs past nothing where the builder wants that, and where ribs along carry the bend", () => {
    const plain = plainProject();
    for (const design of [
      bent({ runPastMm: 0 }),
      bent(
        {},
        { jig: { ...plain.jig, across: { kind: "none" }, along: { kind: "typed", atMm: [50, 250] } } },
      ),
    ]) {
      expect(design.jig.ribs.some(({ isOutboard }) => isOutboard)).toBe(false);
      expect(
        design.strips.every(
          ({ cutLinesMm, outlineMm }) =>
            cutLinesMm[0] === outlineMm || cutLinesMm[0]?.length === outlineMm.length,
        ),
      ).toBe(true);
      expect(design.lie.pasts).toEqual([]);
    }
  });

  it("is left at its size and named where no stock is so long", () => {
    const short = bent({ runPastMm: 100 }, { stock: stock(1000) });
    expect(short.problems.filter(({ kind }) => kind === "no-run-past")).toMatchObject([
      { why: "stock", lengthMm: 100 },
    ]);
    expect(short.jig.ribs.some(({ isOutboard }) => isOutboard)).toBe(false);
  });

  it("is named where another part is in the way", () => {
    const toMm = DRAWN * Math.sin(END_RAD);
    const design = bent(
      { runPastMm: 100 },
      {
        profiles: [
          arcProfile("arc", DRAWN, toMm, 24),
          {
            id: "level",
            name: "level",
            nodes: [
              { kind: "node", id: "q1", x: toMm + 20, z: 300, next: "line" },
              { kind: "node", id: "q2", x: toMm + 400, z: 300, next: "line" },
            ],
          },
        ],
        items: [
          section("s1", 1, box(0, toMm, 0, 300), "arc"),
          section("s2", 2, box(toMm + 20, toMm + 400, 0, 300), "level"),
        ],
      },
    );
    expect(design.problems.filter(({ kind }) => kind === "no-run-past")).toMatchObject([{ why: "part" }]);
    expect(design.lie.pasts.map(({ ribId }) => ribId)).toEqual(["E1"]);
  });

  it("holds the end by one rib in place of the one inside it where ribs stand automatically", () => {
    const plain = plainProject();
    const lie = { wetKgPerM2: 0, pushN: 0, toleranceMm: 1, runPastMm: 100 };
    const design = bent({}, { jig: { ...plain.jig, across: { kind: "automatic" }, lie } });
    expect(design.problems).toEqual([]);
    expect(Math.abs(design.lie.worst[0]?.errorMm ?? 9)).toBeLessThanOrEqual(1);
    const free = bent(
      {},
      { jig: { ...plain.jig, across: { kind: "automatic" }, lie: { ...lie, runPastMm: 0 } } },
    );
    expect(design.jig.ribs.length).toBeLessThanOrEqual(free.jig.ribs.length);
  });
});
