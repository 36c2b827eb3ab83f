import { describe, expect, it } from "vitest";
import { levelOf, wordProblem } from "../../../core/foundation/index.ts";
import {
  checkDocument,
  newFence,
  newSection,
  type Project,
  resolveLines,
  type Section,
  soundProject,
} from "../../../core/project/index.ts";
import { oneSection, plan, rectangle, side, twoSections, withFence } from "./small-projects.ts";

const good = oneSection(rectangle(0, 1000, 0, 200));

const withSection = (changes: Partial<Section>): Project => ({
  ...good,
  items: good.items.map((item) => (item.kind === "section" ? { ...item, ...changes } : item)),
});

const ODD = [Number.NaN, Number.POSITIVE_INFINITY, 1e9, -1e9, -5] as const;

describe("a sound document", () => {
  it("has no problems and is computed with as it is", () => {
    for (const project of [good, twoSections(), withFence()]) {
      expect(checkDocument(project)).toEqual([]);
      expect(soundProject(project)).toEqual(project);
    }
  });
});

describe("a setting out of its range", () => {
  const cases: readonly (readonly [
    string,
    (value: number) => Project,
    (project: Project) => number,
    number,
  ])[] = [
    [
      "core.thicknessMm",
      (value) => ({ ...good, core: { ...good.core, thicknessMm: value } }),
      (p) => p.core.thicknessMm,
      10,
    ],
    [
      "skins.lowerMm",
      (value) => ({ ...good, skins: { ...good.skins, lowerMm: value } }),
      (p) => p.skins.lowerMm,
      0.8,
    ],
    [
      "skins.upperMm",
      (value) => ({ ...good, skins: { ...good.skins, upperMm: value } }),
      (p) => p.skins.upperMm,
      0.8,
    ],
    [
      "cutting.kerfMm",
      (value) => ({ ...good, cutting: { ...good.cutting, kerfMm: value } }),
      (p) => p.cutting.kerfMm,
      0,
    ],
    [
      "cutting.trimMm",
      (value) => ({ ...good, cutting: { ...good.cutting, trimMm: value } }),
      (p) => p.cutting.trimMm,
      0,
    ],
    [
      "cutting.stockEdgeMm",
      (value) => ({ ...good, cutting: { ...good.cutting, stockEdgeMm: value } }),
      (p) => p.cutting.stockEdgeMm,
      5,
    ],
    [
      "cutting.seamStaggerMm",
      (value) => ({ ...good, cutting: { ...good.cutting, seamStaggerMm: value } }),
      (p) => p.cutting.seamStaggerMm,
      100,
    ],
    [
      "marking.intervalMm",
      (value) => ({ ...good, marking: { ...good.marking, intervalMm: value } }),
      (p) => p.marking.intervalMm,
      100,
    ],
    [
      "marking.toleranceMm",
      (value) => ({ ...good, marking: { ...good.marking, toleranceMm: value } }),
      (p) => p.marking.toleranceMm,
      0.5,
    ],
    [
      "jig.across.spacingMm",
      (value) => ({ ...good, jig: { ...good.jig, across: { kind: "spacing", spacingMm: value } } }),
      (p) => (p.jig.across.kind === "spacing" ? p.jig.across.spacingMm : Number.NaN),
      300,
    ],
    [
      "jig.leastHeightMm",
      (value) => ({ ...good, jig: { ...good.jig, leastHeightMm: value } }),
      (p) => p.jig.leastHeightMm,
      60,
    ],
    [
      "jig.proudLimitMm",
      (value) => ({ ...good, jig: { ...good.jig, proudLimitMm: value } }),
      (p) => p.jig.proudLimitMm,
      1,
    ],
    ["glue.gapMm", (value) => ({ ...good, glue: { ...good.glue, gapMm: value } }), (p) => p.glue.gapMm, 0],
    [
      "glue.pinSpacingMm",
      (value) => ({ ...good, glue: { ...good.glue, pinSpacingMm: value } }),
      (p) => p.glue.pinSpacingMm,
      100,
    ],
    [
      "glue.pinSpacingCurvedMm",
      (value) => ({ ...good, glue: { ...good.glue, pinSpacingCurvedMm: value } }),
      (p) => p.glue.pinSpacingCurvedMm,
      50,
    ],
    [
      "paper.rollWidthMm",
      (value) => ({ ...good, paper: { ...good.paper, rollWidthMm: value } }),
      (p) => p.paper.rollWidthMm,
      610,
    ],
    [
      "paper.marginMm",
      (value) => ({ ...good, paper: { ...good.paper, marginMm: value } }),
      (p) => p.paper.marginMm,
      6.35,
    ],
    [
      "paper.overlapMm",
      (value) => ({ ...good, paper: { ...good.paper, overlapMm: value } }),
      (p) => p.paper.overlapMm,
      10,
    ],
    [
      "paper.correctionX",
      (value) => ({ ...good, paper: { ...good.paper, correctionX: value } }),
      (p) => p.paper.correctionX,
      1,
    ],
    [
      "paper.correctionY",
      (value) => ({ ...good, paper: { ...good.paper, correctionY: value } }),
      (p) => p.paper.correctionY,
      1,
    ],
  ];

  it.each(cases)("%s is named, and its default is computed with", (setting, project, read, fallback) => {
    for (const value of ODD) {
      const problems = checkDocument(project(value));
      expect(problems).toMatchObject([
        { kind: "number-out-of-range", place: { setting }, value, used: fallback },
      ]);
      expect(read(soundProject(project(value)))).toBe(fallback);
    }
  });

  it("of a print correction begins beyond two per cent", () => {
    const corrected = (correctionX: number): Project => ({ ...good, paper: { ...good.paper, correctionX } });
    expect([0.98, 1.02].flatMap((value) => checkDocument(corrected(value)))).toEqual([]);
    expect([0.979, 1.021].flatMap((value) => checkDocument(corrected(value)))).toHaveLength(2);
  });

  it("is told in plain words, with what is used until then", () => {
    const [zero, nan, huge] = [0, Number.NaN, 1e9].map((thicknessMm) => {
      const problem = checkDocument({ ...good, core: { ...good.core, thicknessMm } })[0];
      return problem && wordProblem(problem);
    });
    expect(zero).toBe("Thickness of the foam is 0. It must lie between 1 and 200. Until then 10 is used.");
    expect(nan).toContain("is not a number.");
    expect(huge).toContain("is far too large.");
  });

  it("of typed rib places leaves out the wrong ones only", () => {
    const project: Project = {
      ...good,
      jig: { ...good.jig, along: { kind: "typed", atMm: [60, Number.NaN, 1e9, 230] } },
    };
    expect(checkDocument(project).map(({ place }) => place.setting)).toEqual([
      "jig.along.atMm",
      "jig.along.atMm",
    ]);
    expect(soundProject(project).jig.along).toEqual({ kind: "typed", atMm: [60, 230] });
  });
});

describe("a name of something that is not there", () => {
  it.each([
    ["the tray's foam", { ...good, core: { foamId: "x", thicknessMm: 10 } }, "core.foamId"],
    ["the glue", { ...good, glue: { ...good.glue, glueId: "x" } }, "glue.glueId"],
    ["the rib board", { ...good, jig: { ...good.jig, boardId: "x" } }, "jig.boardId"],
  ])("of %s is a problem, and the default is computed with", (_title, project, setting) => {
    expect(checkDocument(project)).toMatchObject([
      { kind: "unknown-reference", missingId: "x", place: { setting } },
    ]);
    expect(soundProject(project)).toEqual(good);
  });

  it("of a section's profile or foam is a problem of the section", () => {
    expect(checkDocument(withSection({ profileId: "x" }))).toMatchObject([
      { kind: "unknown-reference", field: "profile", place: { itemId: "one" } },
    ]);
    expect(checkDocument(withSection({ core: { foamId: "x", thicknessMm: 10 } }))).toMatchObject([
      { kind: "unknown-reference", field: "foam", place: { itemId: "one" } },
    ]);
  });
});

describe("materials and stock", () => {
  it("with an odd figure are computed with the usual one", () => {
    const foams = good.materials.foams.map((foam) =>
      foam.id === "pvc-80" ? { ...foam, densityKgPerM3: -1 } : foam,
    );
    const project = { ...good, materials: { ...good.materials, foams } };
    expect(checkDocument(project)).toMatchObject([
      {
        kind: "number-out-of-range",
        name: "Cross-linked PVC 80",
        place: { setting: "materials.foams.pvc-80.densityKgPerM3" },
        used: 80,
      },
    ]);
    expect(soundProject(project)).toEqual(good);
  });

  it("that come twice are taken once", () => {
    const [first] = good.materials.glues;
    if (!first) throw new Error("no glue");
    const project = { ...good, materials: { ...good.materials, glues: [...good.materials.glues, first] } };
    expect(checkDocument(project)).toMatchObject([{ kind: "duplicate-id", id: first.id }]);
    expect(soundProject(project)).toEqual(good);
  });

  it("that are missing altogether are the usual ones", () => {
    const project = {
      ...good,
      materials: { foams: [], cloths: [], resins: [], glues: [], boards: [], metals: [] },
    };
    const { foams, glues, boards } = soundProject(project).materials;
    expect([foams, glues, boards]).toEqual([
      good.materials.foams,
      good.materials.glues,
      good.materials.boards,
    ]);
  });

  it.each([0, ...ODD])("with a length of %s are no stock, and the rest of the stock is", (lengthMm) => {
    const odd = { id: "odd", foamId: "xps", thicknessMm: 10, lengthMm, widthMm: 600 };
    const project = { ...good, stock: [odd, ...good.stock] };
    expect(checkDocument(project)).toMatchObject([
      { kind: "number-out-of-range", place: { setting: "stock.odd.lengthMm" }, value: lengthMm },
    ]);
    expect(soundProject(project).stock).toEqual(good.stock);
  });
});

describe("a number typed on a section or fence", () => {
  it.each([
    ["Thickness", { core: { foamId: "xps", thicknessMm: 0 } }],
    ["Thickness", { core: { foamId: "xps", thicknessMm: Number.NaN } }],
    ["Number", { number: 0 }],
    ["Number", { number: 1.5 }],
    ["Heading in degrees", { headingRad: 1.2 }],
    ["Tilt in degrees", { tiltRad: -1.2 }],
    ["Tilt in degrees", { tiltRad: Number.NaN }],
    ["Pivot line", { pivotYMm: 1e9 }],
  ])("%s out of range leaves the section out, and nothing else", (field, changes) => {
    const project = withSection(changes);
    expect(checkDocument(project)).toMatchObject([
      { kind: "number-out-of-range", field, place: { itemId: "one" } },
    ]);
    const lines = resolveLines(soundProject(project));
    expect(lines.plan).toEqual({});
    expect(Object.keys(lines.profiles)).toEqual(["flat"]);
    expect(lines.problems).toEqual([]);
  });

  it("of a fence's depths is a problem of that node", () => {
    const fence = newFence({
      id: "deep",
      number: 1,
      name: "",
      elements: [plan("a", 0, 50), plan("b", 500, 50)],
    });
    const nodes = [
      { id: "d1", alongMm: 100, depthMm: -4 },
      { id: "d2", alongMm: 50, depthMm: 40 },
    ];
    const project = {
      ...good,
      items: [...good.items, { ...fence, lowerEdge: { kind: "depths", nodes } as const }],
    };
    expect(checkDocument(project)).toMatchObject([
      { field: "Depth of node 1", place: { itemId: "deep", nodeId: "d1" } },
      { field: "Place along the fence of node 2", least: 100, place: { nodeId: "d2" } },
    ]);
    expect(Object.keys(resolveLines(project).plan)).toEqual(["one"]);
  });
});

describe("a node", () => {
  const [, b, c, d] = rectangle(0, 1000, 0, 200);

  it.each([
    ["x", plan("a", Number.NaN, 0)],
    ["x", plan("a", 1e9, 0)],
    ["y", plan("a", 0, Number.POSITIVE_INFINITY)],
    ["Radius", plan("a", 0, 0, { radiusMm: -3 })],
    ["Knot spacing", plan("a", 0, 0, { next: "curve", knotSpacingMm: 0 })],
    ["Arriving angle", plan("a", 0, 0, { tangentInRad: 1e6 })],
    ["Leaving angle", plan("a", 0, 0, { tangentOutRad: Number.NaN })],
  ])("with an odd %s is named and leads to itself", (label, node) => {
    const project = oneSection([node, b, c, d]);
    const problems = checkDocument(project);
    expect(problems).toMatchObject([
      { kind: "number-out-of-range", field: `${label} of node a`, place: { itemId: "one", nodeId: "a" } },
    ]);
    expect(problems.map(levelOf)).toEqual(["stop"]);
    expect(resolveLines(project).plan).toEqual({});
  });

  it("of a profile and of a lower edge is named with its line", () => {
    const profile = { id: "flat", name: "Flat", nodes: [side("p", 0, Number.NaN), side("q", 1000, 50)] };
    expect(checkDocument({ ...good, profiles: [profile] })).toMatchObject([
      { field: "z of node p", place: { profileId: "flat", nodeId: "p" } },
    ]);
    const project = withFence();
    const items = project.items.map((item) =>
      item.kind === "fence"
        ? { ...item, lowerEdge: { kind: "heights" as const, nodes: [side("l", 1e9, 20)] } }
        : item,
    );
    expect(checkDocument({ ...project, items })).toMatchObject([
      { field: "x of node l", place: { itemId: "fence", nodeId: "l" } },
    ]);
    expect(resolveLines({ ...project, items }).problems).toEqual([]);
  });

  it("left of the centre line is a problem when mirrored, and none when not", () => {
    const project = oneSection([plan("a", 0, -8), b, c, d]);
    expect(checkDocument(project)).toMatchObject([
      { kind: "left-of-centre-line", yMm: -8, place: { nodeId: "a" } },
    ]);
    expect(checkDocument({ ...project, symmetry: "none" })).toEqual([]);
  });

  it("within a hundredth of the centre line lies on it", () => {
    expect(checkDocument(oneSection([plan("a", 0, -0.009), b, c, d]))).toEqual([]);
  });

  it("whose id comes twice in its line is a problem", () => {
    expect(checkDocument(oneSection([plan("b", 0, 0), b, c, d]))).toMatchObject([
      { kind: "duplicate-id", id: "b", field: "node id" },
    ]);
  });

  it("too many of them are told by their count, and nothing hangs", () => {
    const nodes = Array.from({ length: 20_000 }, (_, i) => plan(`n${i}`, i % 1000, i));
    expect(checkDocument(oneSection(nodes))).toMatchObject([{ kind: "too-many-nodes", count: 20_000 }]);
    expect(resolveLines(oneSection(nodes)).plan).toEqual({});
  });
});

describe("two things of one name", () => {
  const twin = newSection({
    id: "twin",
    number: 1,
    name: "Twin",
    profileId: "flat",
    elements: rectangle(0, 500, 300, 400),
    closed: true,
  });

  it("the second of two items with one number is left out and told", () => {
    const project = { ...good, items: [...good.items, twin] };
    expect(checkDocument(project)).toMatchObject([
      { kind: "duplicate-id", field: "number", place: { itemId: "twin" } },
    ]);
    expect(soundProject(project).items).toEqual(good.items);
  });

  it("a section and a fence may have the same number", () => {
    const fence = newFence({
      id: "fence",
      number: 1,
      name: "",
      elements: [plan("a", 0, 50), plan("b", 500, 50)],
    });
    expect(checkDocument({ ...good, items: [...good.items, fence] })).toEqual([]);
  });

  it("the second of two items or profiles with one id is left out and told", () => {
    const project = {
      ...good,
      items: [...good.items, { ...twin, id: "one", number: 2 }],
      profiles: [...good.profiles, ...good.profiles],
    };
    expect(checkDocument(project).map(({ kind }) => kind)).toEqual(["duplicate-id", "duplicate-id"]);
    expect(soundProject(project)).toEqual(good);
    expect(resolveLines(project)).toEqual(resolveLines(good));
  });
});
