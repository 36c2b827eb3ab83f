import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { assert } from "../../../core/foundation/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { arcProfile, box, section, straightProfile } from "./jig-trays.ts";

const THICK = 10;
/** The middle of the foam, which is drawn. */
const MIDDLE = 995;
const END_X = 700;

/** Foam bent over all its length, upright, on ribs across. */
function bent(lie: Project["jig"]["lie"], changes: Partial<Project> = {}): Design {
  const plain = plainProject();
  const foams = plain.materials.foams.map((foam) => ({ ...foam, leastBendRatio: 5 }));
  return designTray(
    plainProject({
      drawnFace: "neutral",
      symmetry: "none",
      skins: { lowerMm: 0.4, upperMm: 0.6 },
      materials: { ...plain.materials, foams },
      profiles: [arcProfile("arc", MIDDLE, END_X, 24)],
      items: [section("s1", 1, box(0, END_X, 0, 300), "arc")],
      stock: [{ id: "xps10", foamId: "xps", thicknessMm: THICK, lengthMm: 2500, widthMm: 1200 }],
      jig: {
        ...plain.jig,
        across: { kind: "typed", atMm: [30, 180, 330, 480, 600] },
        lie: { pushN: 0, runPastMm: 0, ...lie },
      },
      ...changes,
    }),
  );
}

/** What foam with the upper skin on it gives back, by the parallel axes of two layers: of E I of the foam alone. */
function shareOf({ materials, bending }: Project): number {
  const [foam] = materials.foams;
  assert(foam !== undefined, "there is foam");
  const [ef, tf, es, ts] = [foam.modulusMPa, THICK, bending.skinModulusMPa, 0.6];
  const axis = (ef * tf * (tf / 2) + es * ts * (tf + ts / 2)) / (ef * tf + es * ts);
  const own = (e: number, t: number, middle: number) => e * (t ** 3 / 12 + t * (middle - axis) ** 2);
  return (ef * tf ** 3) / 12 / (own(ef, tf, tf / 2) + own(es, ts, tf + ts / 2));
}

const tops = ({ jig }: Design) =>
  jig.ribs.flatMap(({ atMm, heights }) =>
    heights.map(({ stationFaceMm }) => ({ x: atMm, z: stationFaceMm + jig.baseboard.levelZMm })),
  );

/** The lower face of foam with its middle on a circle that lies level at x 0, 5 mm below the drawn z. */
const lowerFace = (middleMm: number, x: number): number => {
  const radius = middleMm + THICK / 2;
  return -THICK / 2 + radius - Math.sqrt(radius ** 2 - x ** 2);
};

describe("ribs that are bent too far", () => {
  const plain = bent({});
  const share = shareOf(plain.project);

  it("are not, as long as nobody wants it, but the number is told", () => {
    for (const { x, z } of tops(plain)) expect(z).toBeCloseTo(lowerFace(MIDDLE, x), 2);
    expect(plain.jig.overBend?.applied).toBe(false);
    expect(plain.jig.overBend?.share).toBeCloseTo(share, 9);
  });

  it("stand on a circle tighter by what is given back, about the rib that keeps its place", () => {
    const design = bent({ overBend: { keepXMm: 0 } });
    expect(design.problems.filter(({ kind }) => kind !== "foam-off-shape")).toEqual([]);
    const found = tops(design);
    expect(found.length).toBeGreaterThan(9);
    for (const { x, z } of found) expect(z).toBeCloseTo(lowerFace(MIDDLE * (1 - share), x), 2);
    const last = design.jig.overBend?.ribs.at(-1);
    const byMm = lowerFace(MIDDLE * (1 - share), 600) - lowerFace(MIDDLE, 600);
    expect(byMm).toBeGreaterThan(20);
    expect(last?.byMm).toBeCloseTo(byMm, 1);
    // What was told before it was applied is what came.
    const before = bent({}).jig.overBend;
    expect(before?.keepXMm).toBe(END_X / 2);
  });

  it("keep the height and the slope of the rib that is chosen, and rise on both sides of it", () => {
    const [before, after] = [bent({}), bent({ overBend: { keepXMm: 330 } })];
    const heights = ({ jig }: Design, x: number) =>
      tops({ jig } as Design).find((top) => top.x === x)?.z ?? 0;
    expect(heights(after, 330)).toBeCloseTo(heights(before, 330), 2);
    for (const x of [30, 180, 480, 600]) expect(heights(after, x)).toBeGreaterThan(heights(before, x) + 0.5);
  });

  it("leave the drawn circle once the share is given back", () => {
    const design = bent({ overBend: { keepXMm: 0 } });
    // The curvature of the tops by three of them, less the share, is the drawn one.
    const at = (x: number) => tops(design).find((top) => top.x === x) ?? { x, z: 0 };
    const [p, q, r] = [at(30), at(330), at(600)];
    const side = (a: typeof p, b: typeof p) => Math.hypot(a.x - b.x, a.z - b.z);
    const area = Math.abs((q.x - p.x) * (r.z - p.z) - (r.x - p.x) * (q.z - p.z)) / 2;
    const radius = (side(p, q) * side(q, r) * side(r, p)) / (4 * area);
    expect((radius - THICK / 2) / (1 - share)).toBeCloseTo(MIDDLE, 0);
  });

  it("hold the foam off that shape by no more than it lies off as drawn", () => {
    const design = bent({ overBend: { keepXMm: 0 } });
    const off = ({ lie }: Design) => Math.abs(lie.worst[0]?.errorMm ?? 0);
    expect(off(design)).toBeLessThan(1.6 * off(plain));
  });

  it("carry foam that runs past on along their own tangent", () => {
    const design = bent({ runPastMm: 90, overBend: { keepXMm: 0 } });
    const rear = design.jig.ribs.find(({ id }) => id === "E2");
    assert(rear !== undefined, "an outboard rib stands");
    const middleMm = MIDDLE * (1 - share);
    const turnRad = (MIDDLE * Math.asin(END_X / MIDDLE)) / middleMm;
    const radius = middleMm + THICK / 2;
    const edge = { x: radius * Math.sin(turnRad), z: -THICK / 2 + radius - radius * Math.cos(turnRad) };
    const [height] = rear.heights;
    const z = (height?.stationFaceMm ?? 0) + design.jig.baseboard.levelZMm;
    expect(rear.atMm).toBeGreaterThan(edge.x + 10);
    expect(z).toBeCloseTo(edge.z + (rear.atMm - edge.x) * Math.tan(turnRad), 1);
  });
});

describe("over-bend that cannot be", () => {
  const whyOf = (changes: Partial<Project>, lie = {}) =>
    bent({ overBend: {}, ...lie }, changes).problems.flatMap((problem) =>
      problem.kind === "no-over-bend" ? [problem.why] : [],
    );
  const { jig } = bent({}).project;

  it("is named beside a cradle, and the ribs stay as drawn", () => {
    const lie = { ...jig.lie, overBend: {} };
    const changes = { jig: { ...jig, lie, making: { cradle: { paddingMm: 4 } } } };
    expect(whyOf(changes)).toEqual(["cradle"]);
    for (const { x, z } of tops(bent({}, changes))) expect(z).toBeCloseTo(lowerFace(MIDDLE, x), 2);
  });

  it("is named where the sheets do not bend alike, and where there is no skin", () => {
    const level = straightProfile("level", [
      [0, 0],
      [END_X, 0],
    ]);
    expect(
      whyOf({
        profiles: [arcProfile("arc", MIDDLE, END_X, 24), level],
        items: [
          section("s1", 1, box(0, END_X, 0, 300), "arc"),
          section("s2", 2, box(0, END_X, 310, 600), "level"),
        ],
      }),
    ).toEqual(["unlike"]);
    expect(whyOf({ skins: { lowerMm: 0.4, upperMm: 0 } })).toEqual(["skin"]);
  });
});
