import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutStrips } from "../../../core/cutting/index.ts";
import type { FlatPoint } from "../../../core/foundation/index.ts";
import { at } from "../../../core/foundation/index.ts";
import { type MarkingTable, markingTables } from "../../../core/marking/index.ts";
import type { FlatLoop } from "../../../core/patterns/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { type Corner, flatPart, loopThrough, rectangle, smoothLoop } from "../cutting/flat-parts.ts";
import { plainProject } from "../cutting/plain-project.ts";

/** A printed table is read to 0.1 mm. */
const TABLE_MM = 0.05;

function tableOf(
  loops: readonly FlatLoop[],
  marking: Project["marking"] = { intervalMm: 100, toleranceMm: 0.5 },
): MarkingTable {
  const project = plainProject({
    marking,
    stock: [{ id: "big", foamId: "xps", thicknessMm: 10, lengthMm: 5000, widthMm: 5000 }],
  });
  return at(markingTables(cutStrips([flatPart(loops)], project).strips, project), 0);
}

/** A strip between v = 0 and a curved upper edge, as dense as patterns are written. */
function stripUnder(lengthMm: number, topAt: (u: number) => number, count = 500): FlatLoop {
  const top = Array.from({ length: count + 1 }, (_, i): FlatPoint => {
    const u = lengthMm * (1 - i / count);
    return { u, v: topAt(u) };
  });
  const corners: FlatPoint[] = [
    { u: 0, v: 0 },
    { u: lengthMm, v: 0 },
  ];
  const edge = (edgeId: string, points: readonly FlatPoint[]) =>
    ({ edgeId, name: edgeId, role: "free", points }) as const;
  return {
    edges: [
      edge("lower", corners),
      edge("rear", [at(corners, 1), at(top, 0)]),
      edge("upper", top),
      edge("front", [at(top, -1), at(corners, 0)]),
    ],
  };
}

const stationsOf = (table: MarkingTable) =>
  table.rows.filter(({ alongMm }) => Math.abs(alongMm % 100) < 1e-9);

describe("the marking-out table", () => {
  // CLOSED FORM: edges on a circular cylinder R 1000, v = 300 + 200 sin(u / 1000) (case D19).
  it("gives the offsets of a sine edge at every 100 mm", () => {
    const expected = [300, 319.966683329, 339.733866159, 359.104041332, 377.883668462, 395.885107721];
    const table = tableOf([stripUnder(500, (u) => 300 + 200 * Math.sin(u / 1000))]);
    const stations = stationsOf(table);
    expect(stations.map(({ alongMm }) => Math.round(alongMm))).toEqual([0, 100, 200, 300, 400, 500]);
    for (const [i, row] of stations.entries()) {
      expect(row.offsetsMm[0]).toBe(0);
      expect(Math.abs((row.offsetsMm[1] ?? 0) - at(expected, i))).toBeLessThan(TABLE_MM);
    }
  });

  // CLOSED FORM: heights h = R − √(R² − x²) over R 1000 at x = 0, 100 … 500 (case G13).
  it("gives the offsets of a circular edge", () => {
    const expected = [0, 5.01256289338, 20.2041028867, 46.0607985831, 83.4848610088, 133.974596216];
    const table = tableOf([stripUnder(500, (u) => 100 + 1000 - Math.sqrt(1e6 - u * u))]);
    for (const [i, row] of stationsOf(table).entries()) {
      expect(Math.abs((row.offsetsMm[1] ?? 0) - 100 - at(expected, i))).toBeLessThan(TABLE_MM);
    }
  });

  // CLOSED FORM: sagitta of a 100 mm chord at R 1000 is 1.250782228091054 mm (case G1).
  it("says how far straight joining misses, and adds no rows while that is inside the tolerance", () => {
    const edge = stripUnder(500, (u) => 100 + 1000 - Math.sqrt(1e6 - (u - 250) ** 2), 4000);
    const coarse = tableOf([edge], { intervalMm: 100, toleranceMm: 2 });
    expect(coarse.rows.map(({ reason }) => reason)).not.toContain("extra");
    // Chords step 100 mm in u; the one nearest the middle (−50 to 50) spans 100 mm, the outer ones a little more.
    const outerChordMm = Math.hypot(100, Math.sqrt(1e6 - 150 ** 2) - Math.sqrt(1e6 - 250 ** 2));
    expect(coarse.straightMissMm).toBeCloseTo(1000 - Math.sqrt(1e6 - outerChordMm ** 2 / 4), 4);
    expect(coarse.battenMissMm).toBeLessThan(coarse.straightMissMm / 2);
    const fine = tableOf([edge], { intervalMm: 100, toleranceMm: 0.5 });
    expect(fine.rows.map(({ reason }) => reason)).toContain("extra");
    expect(fine.straightMissMm).toBeLessThanOrEqual(0.5);
  });

  it("has a row at every corner with all the edges there", () => {
    const table = tableOf([
      loopThrough([
        [0, 0],
        [430, 0],
        [430, 120],
        [215, 180],
        [0, 120],
      ]),
    ]);
    expect(table.rows.map(({ alongMm, offsetsMm, reason }) => [alongMm, reason, ...offsetsMm])).toEqual([
      [0, "corner", 0, 120],
      [100, "station", 0, expect.closeTo(120 + (60 * 100) / 215, 9)],
      [200, "station", 0, expect.closeTo(120 + (60 * 200) / 215, 9)],
      [215, "corner", 0, 180],
      [300, "station", 0, expect.closeTo(180 - (60 * 85) / 215, 9)],
      [400, "station", 0, expect.closeTo(180 - (60 * 185) / 215, 9)],
      [430, "corner", 0, 120],
    ]);
    expect(table.straightMissMm).toBeLessThan(1e-9);
    expect(table.battenMissMm).toBeLessThan(1e-9);
  });

  it("has one row where two would print the same, with all that is marked there", () => {
    const table = tableOf([
      loopThrough([
        [0, 0],
        [300, 0],
        [300, 120],
        [200.04, 150],
        [0, 120],
      ]),
    ]);
    expect(table.rows.map(({ alongMm, reason }) => [alongMm.toFixed(1), reason])).toEqual([
      ["0.0", "corner"],
      ["100.0", "station"],
      ["200.0", "corner"],
      ["300.0", "corner"],
    ]);
    expect(at(table.rows, 2).offsetsMm).toEqual([0, 150]);
  });

  it("lays its datum along a straight edge if there is one, else along the lowest point", () => {
    const bellied: Corner[] = [
      [20, 50],
      [200, 0],
      [420, 50],
      [420, 200],
      [20, 200],
    ];
    expect(tableOf([loopThrough(bellied)]).origin).toEqual({ u: 20, v: 200 });
    const disc = smoothLoop(3600, (turn) => [100 * Math.cos(turn), 100 * Math.sin(turn)]);
    const { origin } = tableOf([disc]);
    expect(origin.u).toBeCloseTo(-100, 9);
    expect(origin.v).toBeCloseTo(-100, 9);
  });

  it("follows an edge that runs nearly across, and a round nose to its tip", () => {
    const disc = smoothLoop(3600, (turn) => [100 * Math.cos(turn), 100 * Math.sin(turn)]);
    const table = tableOf([disc], { intervalMm: 100, toleranceMm: 0.3 });
    expect(table.straightMissMm).toBeLessThanOrEqual(0.3);
    for (const { alongMm, offsetsMm } of table.rows) {
      const half = Math.sqrt(Math.max(0, 100 ** 2 - (alongMm - 100) ** 2));
      expect(Math.abs((offsetsMm[0] ?? 0) - (100 - half))).toBeLessThan(TABLE_MM);
      expect(Math.abs((offsetsMm[offsetsMm.length - 1] ?? 0) - (100 + half))).toBeLessThan(TABLE_MM);
    }
  });

  it("counts the edges of a hole on every row that meets it", () => {
    const hole = loopThrough(
      [
        [150, 50],
        [150, 90],
        [260, 90],
        [260, 50],
      ],
      "h",
    );
    const table = tableOf([rectangle(400, 200), hole]);
    expect(table.rows.find(({ alongMm }) => alongMm === 200)?.offsetsMm).toEqual([0, 50, 90, 200]);
    expect(table.rows.find(({ alongMm }) => alongMm === 150)?.offsetsMm).toEqual([0, 50, 90, 200]);
    expect(table.rows.find(({ alongMm }) => alongMm === 100)?.offsetsMm).toEqual([0, 200]);
  });

  it.each([0, -10, Number.NaN, 1e9, 1e-9])("survives an interval and a tolerance of %d", (odd) => {
    const table = tableOf([stripUnder(500, (u) => 300 + 200 * Math.sin(u / 1000))], {
      intervalMm: odd,
      toleranceMm: odd,
    });
    expect(table.rows.length).toBeGreaterThanOrEqual(2);
    expect(table.rows.length).toBeLessThan(600);
  });
});

describe("outlines that no pencil follows", () => {
  it("a saw-toothed outline of 1,200 corners keeps to 300 rows, and the miss that is printed counts its teeth", () => {
    const teeth = Array.from({ length: 1200 }, (_, i): Corner => {
      const turn = (2 * Math.PI * i) / 1200;
      const reach = 300 + 40 * (i % 2);
      return [reach * Math.cos(turn), reach * Math.sin(turn)];
    });
    const table = tableOf([loopThrough(teeth)]);
    expect(table.rows.length).toBeLessThanOrEqual(300);
    expect(table.straightMissMm).toBeGreaterThan(30);
  });

  it.each([1e9, Number.POSITIVE_INFINITY])("an outline out to %d mm ends with a short table", (far) => {
    const corners: Corner[] = [
      [0, 0],
      [far, 0],
      [far, 200],
      [0, 200],
    ];
    expect(tableOf([loopThrough(corners)]).rows.length).toBeLessThan(400);
  });
});

describe("over random edges", () => {
  const wave = fc.record({
    lengthMm: fc.double({ min: 300, max: 1200, noNaN: true }),
    heightMm: fc.double({ min: 0, max: 60, noNaN: true }),
    waves: fc.double({ min: 0.2, max: 3, noNaN: true }),
    toleranceMm: fc.double({ min: 0.1, max: 2, noNaN: true }),
  });

  it("marks joined straight never miss the true edge by more than the table says, and that is in tolerance", () => {
    fc.assert(
      fc.property(wave, ({ lengthMm, heightMm, waves, toleranceMm }) => {
        const topAt = (u: number) => 200 + heightMm * Math.sin((waves * 2 * Math.PI * u) / lengthMm);
        const table = tableOf([stripUnder(lengthMm, topAt, 1500)], { intervalMm: 100, toleranceMm });
        expect(table.straightMissMm).toBeLessThanOrEqual(toleranceMm);
        for (const [i, row] of table.rows.entries()) {
          const next = table.rows[i + 1];
          if (next === undefined) continue;
          const [a, b] = [at(row.offsetsMm, -1), at(next.offsetsMm, -1)];
          for (let k = 1; k < 10; k++) {
            const alongMm = row.alongMm + ((next.alongMm - row.alongMm) * k) / 10;
            const joined = a + ((b - a) * k) / 10;
            const cosine = (next.alongMm - row.alongMm) / Math.hypot(next.alongMm - row.alongMm, b - a);
            const missMm = Math.abs(joined - topAt(alongMm)) * cosine;
            expect(missMm).toBeLessThanOrEqual(table.straightMissMm + 0.01);
          }
        }
      }),
      { seed: 73, numRuns: 60 },
    );
  });
});

describe("as few rows as a batten needs", () => {
  const forBatten = { intervalMm: 100, toleranceMm: 0.5, rows: "fewest for a batten" } as const;
  const edges: readonly (readonly [string, (u: number) => number])[] = [
    ["an arc of radius 1000", (u) => 300 + Math.sqrt(1000 ** 2 - (u - 400) ** 2) - 900],
    ["a wave", (u) => 300 + 40 * Math.sin(u / 90)],
    ["a ramp that runs out", (u) => 300 + 80 * Math.tanh((u - 400) / 120)],
  ];

  it.each(edges)(
    "along %s: the batten keeps the tolerance, and fewer rows evenly apart would not",
    (_, topAt) => {
      const loop = stripUnder(800, topAt);
      const table = tableOf([loop], forBatten);
      expect(table.joinedBy).toBe("batten");
      expect(table.battenMissMm).toBeLessThanOrEqual(0.5);
      const added = table.rows.filter(({ reason }) => reason === "extra");
      expect(table.rows.length).toBeLessThan(tableOf([loop]).rows.length);
      // Fewer rows at an even step miss: what was found is no more than even rows need.
      for (let count = 1; count < added.length; count += 1) {
        const intervalMm = 800 / (count + 1);
        const even = tableOf([loop], { intervalMm, toleranceMm: 1000 });
        expect(even.battenMissMm).toBeGreaterThan(0.5);
      }
    },
  );

  it("along straight edges only the corners are marked", () => {
    const table = tableOf([rectangle(800, 300)], forBatten);
    expect(table.rows.map(({ alongMm, reason }) => [alongMm, reason])).toEqual([
      [0, "corner"],
      [800, "corner"],
    ]);
    expect(table.straightMissMm).toBe(0);
  });
});
