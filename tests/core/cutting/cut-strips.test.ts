import { polygonArea } from "d3-polygon";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { BendZone } from "../../../core/bending/index.ts";
import { boundsOfPoints, cutStrips, type Strip } from "../../../core/cutting/index.ts";
import { wordProblem } from "../../../core/foundation/index.ts";
import { emptyProject } from "../../../core/project/index.ts";
import { type Corner, flatPart, loopThrough, rectangle, smoothLoop } from "./flat-parts.ts";
import { plainProject } from "./plain-project.ts";

const RUNS = { seed: 71, numRuns: 60 };

/** Areas by another library: the outline less its holes. */
function netAreaMm2(strip: Pick<Strip, "outlineMm" | "holesMm">): number {
  const area = (points: Strip["outlineMm"]) => Math.abs(polygonArea(points.map(({ u, v }) => [u, v])));
  return area(strip.outlineMm) - strip.holesMm.reduce((sum, hole) => sum + area(hole), 0);
}

function fits(strip: Strip, longMm: number, shortMm: number): boolean {
  const { leastUMm, mostUMm, leastVMm, mostVMm } = boundsOfPoints(strip.cutLinesMm);
  const sides = [mostUMm - leastUMm, mostVMm - leastVMm];
  return Math.max(...sides) <= longMm + 1e-6 && Math.min(...sides) <= shortMm + 1e-6;
}

const project = plainProject();
const { cutting } = project;

describe("a part that fits the stock", () => {
  it("stays one strip with the part's own id and edges", () => {
    const { strips, seams, problems } = cutStrips([flatPart([rectangle(1250, 600)])], project);
    expect(strips.map(({ id }) => id)).toEqual(["S1R"]);
    expect(strips[0]?.stockId).toBe("xps10");
    expect(strips[0]?.edges.map(({ flatLengthMm }) => flatLengthMm)).toEqual([1250, 600, 1250, 600]);
    expect(seams).toEqual([]);
    expect(problems).toEqual([]);
  });

  it("may lie the other way on the sheet", () => {
    expect(cutStrips([flatPart([rectangle(600, 1250)])], project).strips).toHaveLength(1);
  });

  it("comes from the smallest sheet that takes it", () => {
    const stock = [
      ...project.stock,
      { id: "half", foamId: "xps", thicknessMm: 10, lengthMm: 620, widthMm: 600 },
    ];
    const { strips } = cutStrips([flatPart([rectangle(600, 600)])], plainProject({ stock }));
    expect(strips[0]?.stockId).toBe("half");
  });

  it("needs room for kerf, trim and the untrue edges of the sheet", () => {
    const half = { ...cutting, kerfMm: 1, bladeSide: "middle" } as const;
    const count = (changes: Partial<typeof cutting>, lengthMm: number) =>
      cutStrips([flatPart([rectangle(lengthMm, 300)])], plainProject({ cutting: { ...half, ...changes } }))
        .strips.length;
    expect(count({}, 1249)).toBe(1);
    expect(count({}, 1249.1)).toBe(2);
    expect(count({ trimMm: 10 }, 1229)).toBe(1);
    expect(count({ trimMm: 10 }, 1229.1)).toBe(2);
    expect(count({ stockEdgeMm: 5 }, 1239)).toBe(1);
    expect(count({ stockEdgeMm: 5 }, 1239.1)).toBe(2);
  });
});

describe("a part longer than the stock", () => {
  it("is cut once along a ruling, in the middle, and the seam is named on both strips", () => {
    const { strips, seams } = cutStrips([flatPart([rectangle(2000, 500)])], project);
    expect(strips.map(({ id }) => id)).toEqual(["S1R-a", "S1R-b"]);
    expect(seams).toEqual([
      {
        id: "S1R-a/S1R-b",
        partId: "S1R",
        stripIds: ["S1R-a", "S1R-b"],
        runs: "along ruling",
        atMm: 1000,
        lengthMm: 500,
      },
    ]);
    for (const strip of strips) {
      const seamEdges = strip.edges.filter(({ role }) => role === "seam");
      expect(seamEdges.map(({ edgeId, flatLengthMm }) => [edgeId, flatLengthMm])).toEqual([
        ["seam:S1R-a/S1R-b", 500],
      ]);
    }
  });

  it("is cut in its flat stretch, not in its bend", () => {
    const zones: BendZone[] = [
      { fromUMm: 0, toUMm: 800, verdict: "flat", strain: 0 },
      { fromUMm: 800, toUMm: 2000, verdict: "bend cold", leastRadiusMm: 1000, strain: 0.005 },
    ];
    const { seams } = cutStrips([flatPart([rectangle(2000, 500)], { zones })], project);
    expect(seams).toHaveLength(1);
    expect(seams[0]?.atMm).toBeLessThanOrEqual(800);
    expect(seams[0]?.atMm).toBeGreaterThanOrEqual(750);
  });

  it("is cut where its bend is least when there is no flat stretch in reach", () => {
    const zones: BendZone[] = [
      { fromUMm: 0, toUMm: 1100, verdict: "bend cold", leastRadiusMm: 700, strain: 0.007 },
      { fromUMm: 1100, toUMm: 1200, verdict: "bend cold", leastRadiusMm: 5000, strain: 0.001 },
      { fromUMm: 1200, toUMm: 2000, verdict: "bend cold", leastRadiusMm: 700, strain: 0.007 },
    ];
    const { seams } = cutStrips([flatPart([rectangle(2000, 500)], { zones })], project);
    expect(seams[0]?.atMm).toBeGreaterThanOrEqual(1100);
    expect(seams[0]?.atMm).toBeLessThanOrEqual(1200);
  });

  it("is cut at its waist when that takes no more strips", () => {
    const waisted = loopThrough([
      [0, 0],
      [900, 100],
      [1800, 0],
      [1800, 500],
      [900, 400],
      [0, 500],
    ]);
    const { seams } = cutStrips([flatPart([waisted])], project);
    expect(seams).toHaveLength(1);
    expect(Math.abs((seams[0]?.atMm ?? 0) - 900)).toBeLessThan(30);
  });

  it("shares an edge's drawn and space lengths out by flat length", () => {
    const part = flatPart([rectangle(2000, 500)]);
    const bevels = [
      { alongMm: 0, bevelRad: 0 },
      { alongMm: 2000, bevelRad: 0.2 },
    ];
    const edges = part.edges.map((edge) => ({
      ...edge,
      drawnLengthMm: 3000,
      bevelRad: [0, 0.2] as const,
      bevels,
    }));
    const { strips } = cutStrips([{ ...part, edges }], project);
    const front = strips[0]?.edges.find(({ edgeId }) => edgeId === "e0");
    expect(front?.drawnLengthMm).toBeCloseTo((3000 * 1000) / 2000, 9);
    expect(front?.bevelRad[1]).toBeCloseTo(0.1, 9);
  });
});

describe("a part wider than the stock", () => {
  const large = plainProject({
    stock: [{ id: "large", foamId: "xps", thicknessMm: 10, lengthMm: 1250, widthMm: 1000 }],
  });
  const crossSeams = (lengthMm: number, settings = large) =>
    cutStrips([flatPart([rectangle(lengthMm, 1900)])], settings)
      .seams.filter(({ runs }) => runs === "along ruling")
      .map(({ atMm }) => atMm);

  it("is cut along rulings only while a ruling is no longer than the stock", () => {
    const { seams } = cutStrips([flatPart([rectangle(2300, 1100)])], project);
    expect(seams.map(({ runs }) => runs)).toEqual(["along ruling", "along ruling", "along ruling"]);
  });

  it("is cut on the centre line first when it is whole", () => {
    const corners: Corner[] = [
      [0, -950],
      [1200, -950],
      [1200, 950],
      [0, 950],
    ];
    const whole = flatPart([loopThrough(corners)], { id: "S1", hand: "whole" });
    const { strips, seams } = cutStrips([whole], large);
    expect(strips).toHaveLength(2);
    expect(seams[0]).toMatchObject({ runs: "across rulings", atMm: 0, lengthMm: 1200 });
  });

  it("has its cross seams staggered, and each seam names the two strips it joins", () => {
    const { strips, seams } = cutStrips([flatPart([rectangle(2000, 1900)])], large);
    expect(strips.map(({ id }) => id)).toEqual(["S1R-a", "S1R-b", "S1R-c", "S1R-d"]);
    const [first, second] = crossSeams(2000);
    expect(Math.abs((first ?? 0) - (second ?? 0))).toBeGreaterThanOrEqual(100);
    const rows = seams.filter(({ runs }) => runs === "across rulings");
    expect(rows.reduce((sum, { lengthMm }) => sum + lengthMm, 0)).toBeCloseTo(2000, 9);
    expect(rows).toHaveLength(3);
  });

  it("uses both ends of a narrow window to stagger when the middle would not do", () => {
    const [first, second] = crossSeams(2390);
    expect(Math.abs((first ?? 0) - (second ?? 0))).toBeGreaterThanOrEqual(100);
  });

  it("gives the stagger up where the stock leaves no room for it, rather than take more strips", () => {
    const [first, second] = crossSeams(2470);
    expect(Math.abs((first ?? 0) - (second ?? 0))).toBeLessThan(100);
  });

  it("staggers whenever the window where seams may lie is as wide as the stagger", () => {
    fc.assert(
      fc.property(fc.double({ min: 1300, max: 2395, noNaN: true }), (lengthMm) => {
        const { strips, seams } = cutStrips([flatPart([rectangle(lengthMm, 1900)])], large);
        expect(strips).toHaveLength(4);
        const ends = ["along ruling", "across rulings"].map((way) =>
          [...new Set(seams.filter((seam) => seam.runs === way).map(({ atMm }) => atMm))].sort(
            (a, b) => a - b,
          ),
        );
        const staggered = ends.find((places) => places.length === 2) ?? [];
        expect((staggered[1] ?? 0) - (staggered[0] ?? 0)).toBeGreaterThanOrEqual(100 - 1e-6);
      }),
      RUNS,
    );
  });
});

describe("concave outlines and holes", () => {
  it("makes a strip of every island that a cut leaves", () => {
    const fork = loopThrough([
      [0, 0],
      [1500, 0],
      [1500, 150],
      [700, 150],
      [700, 350],
      [1500, 350],
      [1500, 500],
      [0, 500],
    ]);
    const { strips } = cutStrips([flatPart([fork])], project);
    expect(strips.length).toBeGreaterThanOrEqual(2);
    const areaMm2 = strips.reduce((sum, strip) => sum + netAreaMm2(strip), 0);
    expect(areaMm2).toBeCloseTo(1500 * 500 - 800 * 200, 6);
  });

  it("keeps a hole whole in one strip, or open on both sides of the seam", () => {
    const hole = smoothLoop(720, (turn) => [1000 + 80 * Math.cos(turn), 250 + 80 * Math.sin(turn)], "hole");
    const { strips } = cutStrips([flatPart([rectangle(2000, 500), hole])], project);
    const holeMm2 = (720 / 2) * 80 * 80 * Math.sin((2 * Math.PI) / 720);
    const areaMm2 = strips.reduce((sum, strip) => sum + netAreaMm2(strip), 0);
    expect(areaMm2 / (2000 * 500 - holeMm2)).toBeCloseTo(1, 12);
  });

  it("makes separate strips of a part that is in two islands already", () => {
    const far = loopThrough(
      [
        [700, 0],
        [900, 0],
        [900, 300],
        [700, 300],
      ],
      "f",
    );
    const { strips, seams } = cutStrips([flatPart([rectangle(500, 300), far])], project);
    expect(strips.map(({ id }) => id)).toEqual(["S1R-a", "S1R-b"]);
    expect(seams).toEqual([]);
  });
});

describe("hands", () => {
  it("divides the left part as the mirror image of the right one", () => {
    const right: Corner[] = [
      [0, 0],
      [2100, 0],
      [2000, 700],
      [300, 900],
    ];
    const left = right.map(([u, v]): Corner => [u, -v]).reverse();
    const { strips } = cutStrips(
      [flatPart([loopThrough(right)]), flatPart([loopThrough(left)], { id: "S1L", hand: "left" })],
      project,
    );
    const rights = strips.filter(({ partId }) => partId === "S1R");
    const lefts = strips.filter(({ partId }) => partId === "S1L");
    expect(lefts).toHaveLength(rights.length);
    for (const [i, strip] of rights.entries()) {
      const a = boundsOfPoints([strip.outlineMm]);
      const b = boundsOfPoints([lefts[i]?.outlineMm ?? []]);
      expect([b.leastUMm, b.mostUMm, -b.mostVMm, -b.leastVMm]).toEqual([
        a.leastUMm,
        a.mostUMm,
        a.leastVMm,
        a.mostVMm,
      ]);
    }
  });
});

describe("a hot wire", () => {
  const { materials } = emptyProject({ id: "p", title: "", issuedOn: "2026-11-30" });
  const withWire = (foamId: string) => {
    const part = flatPart([rectangle(300, 200)], { foamId });
    const settings = plainProject({ materials, cutting: { ...cutting, tool: "hot-wire", kerfMm: 1 } });
    return cutStrips([part, part], settings).problems.filter(({ kind }) => kind === "foam-not-for-hot-wire");
  };

  it("is refused once for a foam whose fumes poison, with what to do", () => {
    const refused = withWire("pvc-80");
    expect(refused).toHaveLength(1);
    const words = refused.map(wordProblem).join();
    expect(words).toContain("Cross-linked PVC 80 is not to be cut with a hot wire");
    expect(words).toContain("knife, saw or router");
  });

  it("cuts polystyrene, and a saw cuts anything", () => {
    expect(withWire("xps")).toEqual([]);
    const part = flatPart([rectangle(300, 200)], { foamId: "pvc-80" });
    const settings = plainProject({ materials, cutting: { ...cutting, tool: "saw", kerfMm: 1 } });
    const kinds = cutStrips([part], settings).problems.map(({ kind }) => kind);
    expect(kinds).not.toContain("foam-not-for-hot-wire");
  });
});

describe("stock that does not serve", () => {
  it("names a part whose thickness is not in stock and still delivers it", () => {
    const { strips, problems } = cutStrips([flatPart([rectangle(300, 200)], { thicknessMm: 20 })], project);
    expect(problems.map(({ kind }) => kind)).toEqual(["no-stock-for-part"]);
    expect(strips.map(({ id, stockId }) => [id, stockId])).toEqual([["S1R", undefined]]);
  });

  it.each([
    ["tiny sheets", { lengthMm: 3, widthMm: 2 }],
    ["sheets smaller than the allowance", { lengthMm: 15, widthMm: 15 }],
  ])("names a part that fits no division of %s", (_, size) => {
    const stock = [{ id: "tiny", foamId: "xps", thicknessMm: 10, ...size }];
    const settings = plainProject({ stock, cutting: { ...cutting, trimMm: 10 } });
    const { strips, problems } = cutStrips([flatPart([rectangle(900, 500)])], settings);
    expect(problems.map(({ kind }) => kind)).toEqual(["part-does-not-fit-stock"]);
    expect(strips).toHaveLength(1);
  });

  it.each([0, -5, Number.NaN, 1e9])("survives stock and allowances of %d", (odd) => {
    const stock = [{ id: "odd", foamId: "xps", thicknessMm: 10, lengthMm: odd, widthMm: odd }];
    const settings = plainProject({
      stock,
      cutting: { ...cutting, kerfMm: odd, trimMm: odd, stockEdgeMm: odd, seamStaggerMm: odd },
    });
    expect(cutStrips([flatPart([rectangle(900, 500)])], settings).strips).toHaveLength(1);
  });
});

describe("over random parts", () => {
  /** A wavy-edged part, up to 3 m by 2 m, sometimes with a round hole. */
  const wavyPart = fc
    .record({
      lengthMm: fc.double({ min: 200, max: 3000, noNaN: true }),
      widthMm: fc.double({ min: 150, max: 2000, noNaN: true }),
      waves: fc.integer({ min: 2, max: 5 }),
      depth: fc.double({ min: 0, max: 0.4, noNaN: true }),
      hasHole: fc.boolean(),
    })
    .map(({ lengthMm, widthMm, waves, depth, hasHole }) => {
      const outline = smoothLoop(900, (turn) => {
        const reach = (1 + depth * Math.cos(waves * turn)) / (1 + depth);
        return [(reach * lengthMm * Math.cos(turn)) / 2, (reach * widthMm * Math.sin(turn)) / 2];
      });
      const holeMm = Math.min(lengthMm, widthMm) / 12;
      const hole = smoothLoop(180, (turn) => [holeMm * Math.cos(turn), holeMm * Math.sin(turn)], "hole");
      return flatPart(hasHole ? [outline, hole] : [outline]);
    });
  const settings = plainProject({
    cutting: { ...cutting, kerfMm: 1, bladeSide: "part", trimMm: 5, stockEdgeMm: 5 },
  });

  it("the strips add up to the part", () => {
    fc.assert(
      fc.property(wavyPart, (part) => {
        const [outline, ...holes] = part.loops.map((loop) => loop.edges.flatMap(({ points }) => points));
        const wholeMm2 = netAreaMm2({ outlineMm: outline ?? [], holesMm: holes });
        const { strips } = cutStrips([part], settings);
        const sumMm2 = strips.reduce((sum, strip) => sum + netAreaMm2(strip), 0);
        expect(Math.abs(sumMm2 / wholeMm2 - 1)).toBeLessThan(1e-9);
        const listedMm2 = strips.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
        expect(Math.abs(listedMm2 / wholeMm2 - 1)).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it("every strip fits the stock with its allowances, and none is a sliver", () => {
    fc.assert(
      fc.property(wavyPart, (part) => {
        const { strips, problems } = cutStrips([part], settings);
        expect(problems).toEqual([]);
        for (const strip of strips) {
          expect(fits(strip, 1240, 590)).toBe(true);
          expect(strip.stockId).toBe("xps10");
          const { leastUMm, mostUMm, leastVMm, mostVMm } = boundsOfPoints([strip.outlineMm]);
          expect(Math.min(mostUMm - leastUMm, mostVMm - leastVMm)).toBeGreaterThan(0.99);
        }
      }),
      RUNS,
    );
  });

  it("every seam edge belongs to one seam and appears on exactly its two strips", () => {
    fc.assert(
      fc.property(wavyPart, (part) => {
        const { strips, seams } = cutStrips([part], settings);
        for (const seam of seams) {
          const sides = strips.flatMap((strip) =>
            strip.edges
              .filter(({ edgeId }) => edgeId === `seam:${seam.id}`)
              .map(({ flatLengthMm }) => ({ stripId: strip.id, flatLengthMm })),
          );
          expect([...new Set(sides.map(({ stripId }) => stripId))].sort()).toEqual([...seam.stripIds].sort());
          const bothMm = sides.reduce((sum, { flatLengthMm }) => sum + flatLengthMm, 0);
          expect(Math.abs(bothMm - 2 * seam.lengthMm)).toBeLessThan(2);
        }
      }),
      RUNS,
    );
  });
});

describe("the builder's own cuts", () => {
  const cutAt = (ownCuts: NonNullable<typeof cutting.ownCuts>, part = flatPart([rectangle(1250, 600)])) =>
    cutStrips([part], plainProject({ cutting: { ...cutting, ownCuts } }));

  it("divide a part that would fit whole, where they are wanted", () => {
    const { strips, seams, problems } = cutAt([{ sheetId: "S1", axis: "u", atMm: 400 }]);
    expect(problems).toEqual([]);
    expect(strips.map(({ id, areaMm2 }) => [id, areaMm2])).toEqual([
      ["S1R-a", 400 * 600],
      ["S1R-b", 850 * 600],
    ]);
    expect(seams).toMatchObject([{ runs: "along ruling", atMm: 400, lengthMm: 600 }]);
  });

  it("go before the division that the stock asks for, which goes on with what is left", () => {
    const { strips, problems } = cutAt(
      [{ sheetId: "S1", axis: "v", atMm: 250 }],
      flatPart([rectangle(2000, 600)]),
    );
    expect(problems).toEqual([]);
    expect(strips).toHaveLength(4);
    expect(strips.every((strip) => fits(strip, 1250, 600))).toBe(true);
    const total = strips.reduce((sum, strip) => sum + netAreaMm2(strip), 0);
    expect(total).toBeCloseTo(2000 * 600, 6);
  });

  it("of the left part are the images of the right one's", () => {
    const [right, left] = [
      flatPart([rectangle(900, 400)]),
      flatPart(
        [
          loopThrough([
            [0, 0],
            [0, -400],
            [900, -400],
            [900, 0],
          ]),
        ],
        { id: "S1L", hand: "left" },
      ),
    ];
    const ownCuts = [{ sheetId: "S1", axis: "v" as const, atMm: 100 }];
    const { seams } = cutStrips([right, left], plainProject({ cutting: { ...cutting, ownCuts } }));
    expect(seams.map(({ partId, atMm }) => [partId, atMm])).toEqual([
      ["S1R", 100],
      ["S1L", -100],
    ]);
  });

  it("that divide nothing, of another sheet, or at no number leave the part whole; the first is named", () => {
    const { strips, problems } = cutAt([
      { sheetId: "S1", axis: "u", atMm: 3000 },
      { sheetId: "S2", axis: "u", atMm: 400 },
      { sheetId: "S1", axis: "u", atMm: Number.NaN },
    ]);
    expect(strips).toHaveLength(1);
    expect(problems.map(({ kind }) => kind)).toEqual(["own-cut-cuts-nothing"]);
    expect(problems.map(wordProblem).join()).toContain("at u 3000.0 mm");
  });
});
