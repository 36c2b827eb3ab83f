import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  enclosedAreaMm2,
  findSelfCrossings,
  type Island,
  nearestOnPiece,
  pointOnPiece,
  subtractLoops,
  toCurve,
} from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";
import { node, SEED } from "./drawn-paths.ts";
import {
  circle,
  distanceToPolygon,
  finePolygon,
  type LabelledPiece,
  type Loop,
  loopsOf,
  type Motion,
  moveLoop,
  pathLoop,
  polygonHolds,
  polygonLoop,
  rectangle,
  reversedLoop,
  splineLoop,
} from "./walked-loops.ts";

/** Ends of pieces that meet lie this near each other: within what counts as one place. */
const JOINED_MM = 1e-5;
/** Areas in mm² of figures of some 10⁴ mm² whose crossings are right to 1e-9 mm. */
const AREA_MM2 = 1e-5;

const areaOf = (islands: readonly Island<LabelledPiece>[]): number =>
  loopsOf(islands).reduce((sum, loop) => sum + enclosedAreaMm2(loop), 0);

const ends = ({ piece, reversed }: LabelledPiece): readonly [Vec2, Vec2] =>
  reversed
    ? [pointOnPiece(piece, 1), pointOnPiece(piece, 0)]
    : [pointOnPiece(piece, 0), pointOnPiece(piece, 1)];

/** Loops close, go round the right way, and each piece is a stretch of the drawn one with its label. */
function expectSound(islands: readonly Island<LabelledPiece>[], drawn: readonly Loop[]): void {
  const pieces = drawn.flat();
  for (const { outline, holes } of islands) {
    expect(enclosedAreaMm2(outline)).toBeGreaterThan(0);
    for (const hole of holes) expect(enclosedAreaMm2(hole)).toBeLessThan(0);
    for (const loop of [outline, ...holes]) {
      loop.forEach((walked, i) => {
        const [from] = ends(walked);
        const [, arrived] = ends(loop.at(i - 1) ?? walked);
        expect(Math.hypot(from[0] - arrived[0], from[1] - arrived[1])).toBeLessThan(JOINED_MM);
        const own = pieces.filter(
          ({ label, piece }) => label === walked.label && piece.kind === walked.piece.kind,
        );
        for (const t of [0, 0.3, 0.7, 1]) {
          const point = pointOnPiece(walked.piece, t);
          const offMm = Math.min(...own.map(({ piece }) => nearestOnPiece(piece, point).distanceMm));
          expect(offMm).toBeLessThan(1e-8);
        }
      });
    }
  }
}

/** What is left holds exactly the points of the region that no opening holds, told from fine polygons. */
function expectHolds(
  islands: readonly Island<LabelledPiece>[],
  region: readonly Loop[],
  openings: readonly Loop[],
  clearMm: number,
): void {
  const [regionPolygons, openingPolygons] = [region.map(finePolygon), openings.map(finePolygon)];
  const left = islands.map(({ outline, holes }) => [outline, ...holes].map(finePolygon));
  const all = [...regionPolygons, ...openingPolygons].flat();
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const odd = (polygons: readonly (readonly Vec2[])[], p: Vec2) =>
    polygons.filter((polygon) => polygonHolds(polygon, p)).length % 2 === 1;
  const count = 23;
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const p: Vec2 = [
        x0 + ((x1 - x0) * (i + 0.47)) / count + 0.0137 * j,
        y0 + ((y1 - y0) * (j + 0.53)) / count + 0.0113 * i,
      ];
      const nearMm = Math.min(
        ...[...regionPolygons, ...openingPolygons].map((polygon) => distanceToPolygon(polygon, p)),
      );
      if (nearMm < clearMm) continue;
      const expected = odd(regionPolygons, p) && !openingPolygons.some((polygon) => polygonHolds(polygon, p));
      expect(left.filter((polygons) => odd(polygons, p)).length, `at ${p}`).toBe(expected ? 1 : 0);
    }
  }
}

const STILL: Motion = { angleRad: 0, isMirrored: false, shift: [0, 0] };
const MOTIONS: readonly Motion[] = [
  STILL,
  { angleRad: 0.7, isMirrored: false, shift: [1200.3, -77.7] },
  { angleRad: 2.9, isMirrored: true, shift: [-31.25, 400] },
  { angleRad: -Math.PI / 2, isMirrored: true, shift: [0.1, 0.2] },
];

/** What is left, moved, turned, mirrored and with loops walked the other way: the same each time. */
function leftEveryWay(
  region: readonly Loop[],
  openings: readonly Loop[],
): readonly (readonly Island<LabelledPiece>[])[] {
  return MOTIONS.flatMap((motion) =>
    [false, true].map((isTurned) => {
      const place = (loops: readonly Loop[], turn: boolean) =>
        loops.map((loop) => moveLoop(motion, turn ? reversedLoop(loop) : loop));
      const [moved, cut] = [place(region, motion.isMirrored), place(openings, isTurned)];
      const islands = subtractLoops(moved, cut);
      expectSound(islands, [...moved, ...cut]);
      return islands;
    }),
  );
}

interface Expected {
  readonly islands: number;
  readonly holes: number;
  readonly areaMm2: number;
  readonly labels?: readonly string[];
}

function expectLeft(region: readonly Loop[], openings: readonly Loop[], expected: Expected): void {
  for (const islands of leftEveryWay(region, openings)) {
    expect(islands.length).toBe(expected.islands);
    expect(islands.flatMap(({ holes }) => holes).length).toBe(expected.holes);
    expect(Math.abs(areaOf(islands) - expected.areaMm2)).toBeLessThan(AREA_MM2);
    if (expected.labels) {
      const labels = loopsOf(islands).flatMap((loop) => loop.map(({ label }) => label));
      expect([...new Set(labels)].sort()).toEqual([...expected.labels].sort());
    }
  }
}

const plate = rectangle("plate", [0, 0], [200, 100]);

describe("an opening in a sheet", () => {
  it("wholly inside leaves a hole", () => {
    expectLeft([plate], [rectangle("hatch", [50, 30], [90, 60])], {
      islands: 1,
      holes: 1,
      areaMm2: 20_000 - 1200,
    });
  });

  it("wholly outside takes nothing and leaves the loop as drawn", () => {
    expect(subtractLoops([plate], [rectangle("hatch", [250, 0], [300, 50])])).toEqual([
      { outline: plate, holes: [] },
    ]);
  });

  it("that swallows the sheet leaves nothing", () => {
    expectLeft([plate], [rectangle("hatch", [-10, -10], [210, 110])], { islands: 0, holes: 0, areaMm2: 0 });
  });

  it("of the sheet's own outline leaves nothing", () => {
    expectLeft([plate], [rectangle("hatch", [0, 0], [200, 100])], { islands: 0, holes: 0, areaMm2: 0 });
  });

  it("across an edge bites into it, and the edge keeps its label on both sides of the bite", () => {
    expectLeft([plate], [rectangle("hatch", [50, -20], [90, 60])], {
      islands: 1,
      holes: 0,
      areaMm2: 20_000 - 40 * 60,
      labels: ["plate.0", "plate.1", "plate.2", "plate.3", "hatch.1", "hatch.2", "hatch.3"],
    });
  });

  it("across the whole sheet leaves two", () => {
    expectLeft([plate], [rectangle("slot", [50, -20], [90, 160])], {
      islands: 2,
      holes: 0,
      areaMm2: 20_000 - 4000,
    });
  });

  it("with an edge on the sheet's edge is a bite, from inside, and nothing from outside", () => {
    expectLeft([plate], [rectangle("hatch", [50, 0], [90, 60])], {
      islands: 1,
      holes: 0,
      areaMm2: 20_000 - 2400,
    });
    expectLeft([plate], [rectangle("hatch", [50, -60], [90, 0])], {
      islands: 1,
      holes: 0,
      areaMm2: 20_000,
      labels: ["plate.0", "plate.1", "plate.2", "plate.3"],
    });
  });

  it("in a corner shares two edges and leaves an L", () => {
    expectLeft([plate], [rectangle("hatch", [0, 0], [90, 60])], {
      islands: 1,
      holes: 0,
      areaMm2: 20_000 - 5400,
      labels: ["plate.0", "plate.1", "plate.2", "plate.3", "hatch.1", "hatch.2"],
    });
  });

  it("that meets the sheet in a corner alone takes nothing", () => {
    expectLeft([plate], [rectangle("hatch", [200, 100], [300, 150])], {
      islands: 1,
      holes: 0,
      areaMm2: 20_000,
    });
  });

  it("that touches the edge in a corner from inside is a hole still", () => {
    expectLeft(
      [plate],
      [
        polygonLoop("kite", [
          [100, 0],
          [120, 40],
          [100, 60],
          [80, 40],
        ]),
      ],
      { islands: 1, holes: 1, areaMm2: 20_000 - 1200 },
    );
  });

  it("from edge to edge in two corners leaves two islands", () => {
    expectLeft(
      [plate],
      [
        polygonLoop("kite", [
          [100, 0],
          [120, 50],
          [100, 100],
          [80, 50],
        ]),
      ],
      { islands: 2, holes: 0, areaMm2: 20_000 - 2000 },
    );
  });

  it("round a hole swallows it, and beside a hole shares its edge", () => {
    const frame = [plate, reversedLoop(rectangle("hole", [80, 40], [120, 60]))];
    expectLeft(frame, [rectangle("hatch", [70, 30], [130, 70])], {
      islands: 1,
      holes: 1,
      areaMm2: 20_000 - 2400,
    });
    expectLeft(frame, [rectangle("hatch", [120, 40], [140, 60])], {
      islands: 1,
      holes: 1,
      areaMm2: 20_000 - 1200,
    });
    expectLeft(frame, [rectangle("hatch", [85, 45], [110, 55])], {
      islands: 1,
      holes: 1,
      areaMm2: 20_000 - 800,
      labels: [...[0, 1, 2, 3].map((i) => `plate.${i}`), ...[0, 1, 2, 3].map((i) => `hole.${i}`)],
    });
  });
});

describe("several openings", () => {
  it("that overlap are one hole, whatever their order", () => {
    const [a, b] = [rectangle("a", [50, 30], [90, 60]), rectangle("b", [80, 40], [120, 80])];
    for (const openings of [
      [a, b],
      [b, a],
      [a, a, b],
    ]) {
      expectLeft([plate], openings, { islands: 1, holes: 1, areaMm2: 20_000 - (1200 + 1600 - 200) });
    }
  });

  it("that share an edge are one hole without a web between them", () => {
    expectLeft([plate], [rectangle("a", [50, 30], [90, 60]), rectangle("b", [90, 30], [120, 60])], {
      islands: 1,
      holes: 1,
      areaMm2: 20_000 - 2100,
    });
  });

  it("around a patch leave an island in a hole", () => {
    const openings = [
      rectangle("a", [50, 20], [150, 30]),
      rectangle("b", [140, 20], [150, 80]),
      rectangle("c", [50, 70], [150, 80]),
      rectangle("d", [50, 20], [60, 80]),
    ];
    expectLeft([plate], openings, { islands: 2, holes: 1, areaMm2: 20_000 - 6000 + 80 * 40 });
  });

  it("one in another count once", () => {
    expectLeft([plate], [circle("a", [100, 50], 30), circle("b", [105, 50], 10)], {
      islands: 1,
      holes: 1,
      areaMm2: 20_000 - Math.PI * 900,
    });
  });
});

describe("round openings", () => {
  it("inside leave a round hole, of however many arcs", () => {
    for (const arcs of [1, 2, 3, 4]) {
      expectLeft([plate], [circle("wheel", [100, 50], 30, arcs, 0.3)], {
        islands: 1,
        holes: 1,
        areaMm2: 20_000 - Math.PI * 900,
      });
    }
  });

  it("that touch the edge from inside are holes, from outside nothing", () => {
    for (const startRad of [0, 0.4, -Math.PI / 2]) {
      expectLeft([plate], [circle("wheel", [100, 30], 30, 2, startRad)], {
        islands: 1,
        holes: 1,
        areaMm2: 20_000 - Math.PI * 900,
      });
      expectLeft([plate], [circle("wheel", [100, -30], 30, 2, startRad)], {
        islands: 1,
        holes: 0,
        areaMm2: 20_000,
      });
    }
  });

  it("that touch both edges leave two islands", () => {
    expectLeft([plate], [circle("wheel", [100, 50], 50)], {
      islands: 2,
      holes: 0,
      areaMm2: 20_000 - Math.PI * 2500,
    });
  });

  it("over an edge take a segment of the circle", () => {
    const half = Math.acos(10 / 30);
    expectLeft([plate], [circle("wheel", [100, -10], 30)], {
      islands: 1,
      holes: 0,
      areaMm2: 20_000 - 900 * (half - Math.sin(half) * Math.cos(half)),
    });
  });

  it("that hardly reach over the edge still take their segment", () => {
    for (const depthMm of [1, 1e-1, 1e-2]) {
      const half = Math.acos(1 - depthMm / 30);
      expectLeft([plate], [circle("wheel", [100, depthMm - 30], 30)], {
        islands: 1,
        holes: 0,
        areaMm2: 20_000 - 900 * (half - Math.sin(half) * Math.cos(half)),
      });
    }
  });

  it("that touch each other stay two holes", () => {
    expectLeft([plate], [circle("a", [60, 50], 20), circle("b", [100, 50], 20)], {
      islands: 1,
      holes: 2,
      areaMm2: 20_000 - Math.PI * 800,
    });
  });

  it("that lie on each other, cut into other arcs, are one", () => {
    expectLeft([plate], [circle("a", [60, 50], 20, 2), circle("b", [60, 50], 20, 3, 0.2)], {
      islands: 1,
      holes: 1,
      areaMm2: 20_000 - Math.PI * 400,
    });
  });

  it("in a round sheet touch it from inside in one point", () => {
    expectLeft([circle("disc", [0, 0], 100, 2, 0.2)], [circle("wheel", [60, 0], 40)], {
      islands: 1,
      holes: 1,
      areaMm2: Math.PI * (10_000 - 1600),
    });
  });
});

const grid = fc.integer({ min: 0, max: 6 }).map((n) => n * 20);
const gridPoint: fc.Arbitrary<Vec2> = fc.tuple(grid, grid);

/** Polygons on a coarse grid: they share corners and stretches of edges, touch, and cross themselves. */
const gridLoop = (name: string): fc.Arbitrary<Loop> =>
  fc
    .uniqueArray(gridPoint, { minLength: 3, maxLength: 6, selector: ([x, y]) => `${x},${y}` })
    .map((corners) => polygonLoop(name, corners));

/** Corners around a middle at ascending angles: loops that do not cross themselves. */
const roundLoop = (name: string): fc.Arbitrary<Loop> =>
  fc
    .tuple(
      fc.tuple(fc.integer({ min: 20, max: 100 }), fc.integer({ min: 20, max: 100 })),
      fc.array(fc.integer({ min: 15, max: 70 }), { minLength: 3, maxLength: 7 }),
      fc.constantFrom("spline", "polygon", "rounded", "circle"),
    )
    .map(([[x, y], radii, kind]) => {
      const points = radii.map((radius, i): Vec2 => {
        const angle = (2 * Math.PI * i) / radii.length + 0.1;
        return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
      });
      if (kind === "spline") return splineLoop(name, points);
      if (kind === "circle") return circle(name, [x, y], radii[0] ?? 1, 1 + (radii.length % 4));
      if (kind === "polygon") return polygonLoop(name, points);
      return pathLoop(
        name,
        points.map((point, i) => node(`${i}`, point, i % 2 === 0 ? { radiusMm: 3 } : {})),
      );
    })
    .filter((loop) => loop !== undefined);

const motion: fc.Arbitrary<Motion> = fc.record({
  angleRad: fc.constantFrom(0, Math.PI / 2, 0.3, 2, -1.1),
  isMirrored: fc.boolean(),
  shift: fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 })),
});

/** Few, so that the tests stay quick; many thousands have been run. */
const RUNS = 60;

const crossesItself = (loop: Loop): boolean =>
  findSelfCrossings(
    toCurve(
      loop.map(({ piece }) => piece),
      true,
    ),
  ).length > 0;

/** Both what is left and what is taken, against fine polygons and against each other. */
function judge(region: readonly Loop[], openings: readonly Loop[], clearMm: number): void {
  const islands = subtractLoops(region, openings);
  expectSound(islands, [...region, ...openings]);
  expectHolds(islands, region, openings, clearMm);
  const [opening] = openings;
  if (openings.length !== 1 || !opening || region.some(crossesItself)) return;
  const whole = region.reduce((sum, loop) => sum + Math.abs(enclosedAreaMm2(loop)), 0);
  // What lies outside the opening, taken away as one frame with the opening for its hole, leaves what is inside it.
  const frame = [...rectangle("frame", [-3000, -3000], [3000, 3000]), ...opening];
  const taken = areaOf(subtractLoops(region, [frame]));
  expect(Math.abs(whole - taken - areaOf(islands))).toBeLessThan(0.02);
}

describe("any openings", () => {
  it("on a grid, sharing corners and edges", () => {
    fc.assert(
      fc.property(
        gridLoop("r"),
        fc.array(gridLoop("o"), { minLength: 1, maxLength: 3 }),
        motion,
        (region, openings, move) => {
          judge(
            [moveLoop(move, region)],
            openings.map((loop) => moveLoop(move, loop)),
            1e-3,
          );
        },
      ),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it("of lines, arcs and splines", () => {
    fc.assert(
      fc.property(
        roundLoop("r"),
        fc.array(roundLoop("o"), { minLength: 1, maxLength: 3 }),
        motion,
        (region, openings, move) => {
          judge(
            [moveLoop(move, region)],
            openings.map((loop) => moveLoop(move, reversedLoop(loop))),
            0.1,
          );
        },
      ),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it("of the same shape a little beside itself", () => {
    fc.assert(
      fc.property(
        roundLoop("r"),
        motion,
        fc.constantFrom(0, 1e-9, 1e-7, 3e-7, 1e-6, 2e-6, 1e-5, 1e-4, 1e-3, 0.1),
        fc.double({ min: 0, max: 6.3, noNaN: true }),
        (loop, move, byMm, angleRad) => {
          const region = moveLoop(move, loop);
          const shift: Vec2 = [byMm * Math.cos(angleRad), byMm * Math.sin(angleRad)];
          const opening = moveLoop({ angleRad: 0, isMirrored: false, shift }, region);
          const islands = subtractLoops([region], [opening]);
          expectSound(islands, [region, opening]);
          const lengthMm = 1000;
          expect(areaOf(islands)).toBeLessThanOrEqual(lengthMm * byMm + 1e-9);
        },
      ),
      { seed: SEED, numRuns: RUNS },
    );
  });
});
