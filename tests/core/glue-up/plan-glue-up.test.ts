import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../core/foundation/index.ts";
import type { Item, PlanLine } from "../../../core/project/index.ts";
import { box, boxBeside, section, straightProfile } from "../jig/jig-trays.ts";
import { freeEdge, stretchOf, transition } from "../trays.ts";
import { addsOf, centre, fence, materials, outer, plainGlue, planOf, tray, withJig } from "./glue-trays.ts";

describe("the glue-up order", () => {
  it("lays the centre sheet first and the right and left sheets against it together", () => {
    const { steps, problems } = tray([outer, centre]);
    expect(problems).toEqual([]);
    expect(addsOf(steps)).toEqual(["S1", "S2R+S2L"]);
    expect(at(steps, 0).joins).toEqual([]);
    expect([...at(steps, 1).joins].sort()).toEqual(["S2L/S1", "S2R/S1"]);
    expect(at(steps, 1).standing).toEqual(["S1"]);
    expect(steps.map(({ step }) => step)).toEqual([2, 3]);
  });

  it("stands a fence in an upright jig before the sheet that it carries, and glues it when that comes", () => {
    const { steps, problems } = tray([centre, outer, fence("core", true)]);
    expect(problems).toEqual([]);
    expect(addsOf(steps)).toEqual(["F1R+F1L", "S1", "S2R+S2L"]);
    expect(at(steps, 0)).toMatchObject({ joins: [], pins: 0, waitHours: 0, glueMassKg: 0 });
    expect([...at(steps, 2).joins].sort()).toEqual(["F1L/S2L", "F1R/S2R", "S2L/S1", "S2R/S1"]);
  });

  it("puts fences on top of an inverted tray after the sheets", () => {
    const { steps, problems } = tray([centre, outer, fence("core", true)], withJig({ attitude: "inverted" }));
    expect(problems).toEqual([]);
    expect(addsOf(steps)).toEqual(["S1", "S2R+S2L", "F1R+F1L"]);
  });

  it("leaves fences that sit on the skin for the very end, with the caution that the skin has cured", () => {
    for (const attitude of ["upright", "inverted"] as const) {
      const { steps } = tray([fence("skin", true), centre, outer], withJig({ attitude }));
      expect(addsOf(steps)).toEqual(["S1", "S2R+S2L", "F1R+F1L"]);
      expect(at(steps, 2).cautions.join(" ")).toContain("skin has cured");
    }
  });

  it("builds on from what stands, even over a part without ribs, rather than leave a gap to close", () => {
    const front = section("front", 1, box(0, 500, 0, 300), "level");
    const beside = (itemId: string) => ({ itemId, edge: ["n2", "n3"] as const });
    const bridge = section("bridge", 3, boxBeside(beside("front"), "x", [500, 1000, 0, 300]), "level");
    const rear = section("rear", 2, boxBeside(beside("bridge"), "x", [1000, 1500, 0, 300]), "level");
    const { steps, problems } = tray(
      [rear, bridge, front],
      withJig({ across: { kind: "typed", atMm: [100, 300, 400, 1200, 1400] } }),
    );
    expect(problems).toEqual([]);
    expect(addsOf(steps)).toEqual(["S1", "S3", "S2"]);
  });

  it("lets a transition in between two sheets that ribs place, last and from the measured gap", () => {
    const apart = section("apart", 2, box(0, 1200, 330, 500), "level");
    const bridge = transition(1, stretchOf("centre", "n3", "n4"), stretchOf("apart", "n1", "n2"));
    const { steps, problems } = tray(
      [bridge, apart, centre],
      withJig({ across: { kind: "typed", atMm: [100, 600, 1100] } }),
    );
    expect(problems).toEqual([]);
    expect(addsOf(steps)).toEqual(["S1", "S2R+S2L", "T1R+T1L"]);
    expect(at(steps, 2).title).toBe("Close the gap with T1R and T1L");
    expect(at(steps, 2).why).toContain("marked from the measured gap");
    expect([...at(steps, 2).joins].sort()).toEqual(["T1L/S1", "T1L/S2L", "T1R/S1", "T1R/S2R"]);
  });

  it("lays a transition with one free edge against its sheet like any other", () => {
    const lip = transition(1, stretchOf("centre", "n3", "n4"), freeEdge([1200, 300, 170], [0, 300, 170]));
    const { steps, problems } = tray([lip, centre]);
    expect(problems).toEqual([]);
    expect(addsOf(steps)).toEqual(["S1", "T1R+T1L"]);
    expect(at(steps, 1).title).toBe("Lay T1R and T1L on the jig");
  });

  it("brings a part that closes the gap between two others last", () => {
    const front = section("front", 1, box(0, 500, 0, 250), "level");
    const node = (id: string, x: number, y: number) => ({ kind: "node", id, x, y, next: "line" }) as const;
    const along = (itemId: string, fromNodeId: string, toNodeId: string) =>
      ({
        kind: "follow",
        id: "f1",
        edge: { itemId, fromNodeId, toNodeId, hand: "right" },
        direction: "against",
        next: "line",
      }) as const;
    const side: PlanLine = {
      closed: true,
      elements: [
        along("front", "n3", "n4"),
        node("n1", 700, 250),
        node("n2", 1500, 250),
        node("n3", 1500, 500),
        node("n4", 0, 500),
      ],
    };
    const rear: PlanLine = {
      closed: true,
      elements: [node("n1", 700, 0), node("n2", 1500, 0), along("side", "n1", "n2")],
    };
    const { steps, problems } = tray([
      section("rear", 3, rear, "level"),
      front,
      section("side", 2, side, "level"),
    ]);
    expect(problems).toEqual([]);
    expect(addsOf(steps.filter(({ place }) => place === "jig"))).toEqual(["S3", "S2R+S2L", "S1"]);
    expect([...at(steps, -1).joins].sort()).toEqual(["S2L/S1", "S2R/S1"]);
    expect(at(steps, -1).why).toContain("closes the gap between S2R and S2L");
  });

  it("glues the strips of one part flat on the bench as long as it can be carried", () => {
    const long = section("long", 1, box(0, 2000, 0, 250), "level");
    const { steps } = tray([long]);
    expect(steps.map(({ place }) => place)).toEqual(["bench", "jig"]);
    expect(at(steps, 0).adds).toEqual(["S1-a", "S1-b"]);
    expect(at(steps, 0).joins).toEqual(["S1-a/S1-b"]);
    expect(at(steps, 1).adds).toEqual(["S1"]);
  });

  it("brings the strips of a part that cannot be carried to the jig one by one", () => {
    const endless = section("endless", 1, box(0, 3200, 0, 250), "level");
    const { steps, problems } = tray([endless]);
    expect(problems).toEqual([]);
    expect(steps.every(({ place }) => place === "jig")).toBe(true);
    expect(addsOf(steps).sort()).toEqual(["S1-a", "S1-b", "S1-c"]);
    expect(steps.flatMap(({ joins }) => joins).sort()).toEqual(["S1-a/S1-b", "S1-b/S1-c"]);
  });

  it("names a strip that rests on nothing when its turn comes", () => {
    const { problems, steps } = tray([centre], withJig({ across: { kind: "none" } }));
    expect(problems).toEqual([
      {
        kind: "strip-not-held",
        place: { itemId: "centre", partId: "S1" },
        name: expect.any(String),
        stripId: "S1",
      },
    ]);
    expect(steps).toHaveLength(1);
  });

  it("is empty for an empty tray", () => {
    expect(tray([])).toMatchObject({ steps: [], problems: [] });
  });
});

describe("the figures of a step", () => {
  it("glue is length × thickness × spread, pins stand on both sides, closer at the ends", () => {
    const { steps } = tray([centre, outer]);
    const step = at(steps, 1);
    expect(step.glueLengthMm).toBeCloseTo(2400, 6);
    expect(step.glueMassKg).toBeCloseTo(2.4 * 0.01 * 0.15, 9);
    // 1200 mm on each hand: 50 mm at both ends and eleven spaces between, on both sides.
    expect(step.pins).toBe(2 * (2 * (2 + 11 + 1)));
    expect(step.pinSpacingMm).toBe(100);
    expect(step.waitHours).toBe(24);
  });

  it("pins stand closer where a joint bends", () => {
    const bent = straightProfile("bent", [
      [0, 150],
      [600, 150],
      [1200, 230],
    ]);
    const nodes = bent.nodes.map((node) => (node.id === "p2" ? { ...node, radiusMm: 900 } : node));
    const { steps } = tray(
      [
        { ...centre, profileId: "bent" },
        { ...outer, profileId: "bent" },
      ],
      { profiles: [{ ...bent, nodes }] },
    );
    // Of 1205 mm, 900 × 7.6° bend: with both ends five spaces of 50 mm, and ten of 100 mm, on both sides and hands.
    expect(at(steps, 1).pins).toBe(2 * (2 * (5 + 10 + 1)));
  });

  it("the caution follows the glue's hazard and defers to its data sheet", () => {
    const epoxy = materials.glues.map((glue) => ({ ...glue, id: "epoxy", hazard: "epoxy" as const }));
    const { steps } = tray([centre, outer], {
      glue: { ...plainGlue, glueId: "epoxy" },
      materials: { ...materials, glues: epoxy },
    });
    expect(at(steps, 1).cautions.join(" ")).toMatch(/Epoxy.*safety data sheet/);
    expect(at(tray([centre, outer]).steps, 1).cautions.join(" ")).toMatch(/isocyanates.*safety data sheet/);
  });
});

describe("over random trays", () => {
  it("every piece comes once, every joint and seam is glued once, and each piece is held when it comes", () => {
    const cell = fc.record({
      columns: fc.integer({ min: 1, max: 3 }),
      rows: fc.integer({ min: 1, max: 2 }),
      lengthMm: fc.integer({ min: 300, max: 1500 }),
      widthMm: fc.integer({ min: 200, max: 450 }),
      attitude: fc.constantFrom("upright" as const, "inverted" as const),
      hasFence: fc.boolean(),
    });
    fc.assert(
      fc.property(cell, ({ columns, rows, lengthMm, widthMm, attitude, hasFence }) => {
        const items: Item[] = Array.from({ length: columns }, (_, i) => {
          const place = [i * lengthMm, (i + 1) * lengthMm, 0, widthMm] as const;
          const before = { itemId: `s${i - 1}`, edge: ["n2", "n3"] as const };
          return section(`s${i}`, i + 1, i === 0 ? box(...place) : boxBeside(before, "x", place), "level");
        });
        if (rows > 1) {
          const place = [0, lengthMm, widthMm, 2 * widthMm] as const;
          const below = { itemId: "s0", edge: ["n3", "n4"] as const };
          items.push(section("beside", 9, boxBeside(below, "y", place), "level"));
        }
        if (hasFence && columns * lengthMm > 1150 && widthMm > 420) items.push(fence("core", true));
        const long = straightProfile("level", [
          [-100, 150],
          [5000, 150],
        ]);
        const { steps, problems, sources } = planOf({ profiles: [long], items, ...withJig({ attitude }) });
        expect(problems).toEqual([]);

        const onJig = steps.filter(({ place }) => place === "jig").flatMap(({ adds }) => adds);
        expect(new Set(onJig).size).toBe(onJig.length);
        const partOfStrip = new Map(sources.strips.map(({ id, partId }) => [id, partId]));
        const came = new Set(onJig.map((id) => partOfStrip.get(id) ?? id));
        expect([...came].sort()).toEqual(sources.parts.map(({ id }) => id).sort());

        const glued = steps.flatMap(({ joins }) => joins);
        const all = [...sources.joints, ...sources.seams].map(({ id }) => id);
        expect([...glued].sort()).toEqual([...all].sort());

        const stripsOfPart = (partId: string) =>
          sources.strips.filter((strip) => strip.partId === partId).map(({ id }) => id);
        const seamsHold = (id: string, standing: ReadonlySet<string>) =>
          sources.seams.some(
            ({ stripIds }) =>
              stripIds.includes(id) && stripIds.some((other) => other !== id && standing.has(other)),
          );
        const standing = new Set<string>();
        for (const step of steps) {
          if (step.place === "bench") continue;
          for (const id of step.adds) {
            const partId = partOfStrip.get(id) ?? id;
            const onRib = sources.jig.ribs.some(({ heights }) => heights.some((h) => h.partId === partId));
            const byJoint = sources.joints.some(
              ({ partIds }) =>
                partIds.includes(partId) && partIds.some((p) => p !== partId && standing.has(p)),
            );
            const isFenceFirst = partId.startsWith("F") && step.joins.length === 0;
            expect(onRib || byJoint || seamsHold(id, standing) || isFenceFirst).toBe(true);
          }
          for (const id of step.adds) {
            standing.add(id);
            const partId = partOfStrip.get(id) ?? id;
            standing.add(partId);
            for (const stripId of stripsOfPart(id)) standing.add(stripId);
          }
        }
      }),
      { seed: 75, numRuns: 25 },
    );
  });

  it("is the same every time", () => {
    const items = [outer, fence("core", false), centre];
    expect(JSON.stringify(tray(items).steps)).toBe(JSON.stringify(tray(items).steps));
  });
});
