import { describe, expect, it } from "vitest";
import { findJoints } from "../../../core/joints/index.ts";
import { type Project, resolveLines, type Section } from "../../../core/project/index.ts";
import { buildSheets } from "../../../core/surfaces/index.ts";
import {
  followEdge,
  freeEdge,
  planNode,
  rectangle,
  section,
  sideNode,
  stretchOf,
  transition,
  tray,
} from "../trays.ts";

const LEVEL = {
  p: [sideNode("a", -50, 60), sideNode("b", 1850, 60)],
  high: [sideNode("a", -50, 75), sideNode("b", 1850, 75)],
};
const left = section(1, rectangle(0, 1000, 0, 300));
const right = (fromY: number, changes: Partial<Section> = {}) =>
  section(2, rectangle(0, 1000, fromY, 600), changes);

function join(project: Project) {
  const lines = resolveLines(project);
  const { sheets, folds } = buildSheets(project, lines);
  return findJoints(project, lines, sheets, folds);
}

const trayOf = (items: Parameters<typeof tray>[1], changes: Partial<Project["joints"]> = {}): Project => {
  const project = tray(LEVEL, items, { gapLimitMm: 0, thicknessMm: 10 });
  return { ...project, joints: { ...project.joints, ...changes } };
};

describe("two edges that lie on each other though neither follows", () => {
  it("are offered as a joint, with their length, and are no joint yet", () => {
    const found = join(trayOf([left, right(300)]));
    expect(found.joints).toEqual([]);
    expect(found.offers).toMatchObject([
      { first: { itemId: "s1", edgeId: "outer" }, second: { itemId: "s2", edgeId: "inner" }, gapMm: 0 },
    ]);
    expect(found.offers[0]?.lengthMm).toBeCloseTo(1000, 6);
    expect(found.problems).toMatchObject([
      { kind: "edges-coincide", name: "Section 1", otherName: "Section 2" },
    ]);
  });

  it("are joined when the builder says so", () => {
    const joined = [{ first: { itemId: "s1", edgeId: "outer" }, second: { itemId: "s2", edgeId: "inner" } }];
    const found = join(trayOf([left, right(300)], { joined }));
    expect(found.offers).toEqual([]);
    expect(found.problems).toEqual([]);
    expect(found.joints.map(({ partIds }) => partIds)).toEqual([["S2", "S1"]]);
  });

  it("still do where they miss by less than the tolerance, and no longer where by more", () => {
    expect(join(trayOf([left, right(300.3)])).offers[0]?.gapMm).toBeCloseTo(0.3, 6);
    const apart = join(trayOf([left, right(302)]));
    expect(apart.offers).toEqual([]);
    expect(apart.problems).toMatchObject([{ kind: "edges-nearly-meet", gapMm: expect.closeTo(2, 6) }]);
    expect(join(trayOf([left, right(302)], { toleranceMm: 3 })).offers).toHaveLength(1);
  });

  it("that are far apart are nobody's business", () => {
    const found = join(trayOf([left, right(340)]));
    expect([found.offers, found.problems]).toEqual([[], []]);
  });

  it("in plan alone, one 15 mm above the other, do not", () => {
    expect(join(trayOf([left, right(300, { profileId: "high" })])).offers).toEqual([]);
  });
});

describe("sheets that lie in each other", () => {
  it("are named once, with how far and where", () => {
    const found = join(trayOf([left, right(250)]));
    const overlaps = found.problems.filter(({ kind }) => kind === "sheets-overlap");
    expect(overlaps).toMatchObject([{ name: "Section 1", otherName: "Section 2" }]);
    const [overlap] = overlaps;
    if (overlap?.kind !== "sheets-overlap") throw new Error("no overlap");
    expect(overlap.overlapMm).toBeCloseTo(50, 1);
  });

  it("are not those that lie one above the other by more than their foam", () => {
    expect(join(trayOf([left, right(250, { profileId: "high" })])).problems).toEqual([]);
  });
});

describe("the cut of a joint", () => {
  const leaning = section(
    2,
    [
      followEdge("shared", { itemId: "s1", fromNodeId: "outer", toNodeId: "front" }, "against"),
      planNode("far", 1000, 600),
      planNode("off", 0, 600),
    ],
    { tiltRad: Math.PI / 4 },
  );
  const edge = { itemId: "s2", edgeId: "shared" };

  it("is the mitre that its fold asks for", () => {
    expect(join(trayOf([left, leaning])).joints).toMatchObject([{ cut: "mitre" }]);
  });

  it.each(["s1", "s2"])("is a butt with %s running through where the builder chose that", (throughItemId) => {
    const found = join(trayOf([left, leaning], { cuts: [{ edge, cut: "butt", throughItemId }] }));
    const [joint] = found.joints;
    expect(joint?.cut).toBe("butt");
    expect(joint?.partIds[joint.through ?? 0]).toBe(throughItemId === "s1" ? "S1" : "S2");
    expect(found.problems).toEqual([]);
  });

  it("that no blade can make is refused by name, and the fold decides", () => {
    const shallow = { ...leaning, tiltRad: 0.1 };
    const found = join(trayOf([left, shallow], { cuts: [{ edge, cut: "butt" }] }));
    expect(found.joints).toMatchObject([{ cut: "mitre" }]);
    expect(found.problems).toMatchObject([{ kind: "cut-not-possible", cut: "butt" }]);
  });
});

describe("an edge with more than two sheets", () => {
  it("is named with all three, and joined as the first two", () => {
    const found = join(
      trayOf([
        left,
        transition(1, stretchOf("s1", "outer", "front"), freeEdge([0, 500, 90], [1000, 500, 90])),
        transition(2, stretchOf("s1", "outer", "front"), freeEdge([0, 450, 20], [1000, 450, 20])),
      ]),
    );
    expect(found.problems.filter(({ kind }) => kind === "edge-has-three-sheets")).toMatchObject([
      { name: "Section 1", otherName: "Transition 1", thirdName: "Transition 2" },
    ]);
  });
});

describe("a fold so sharp that the sheets lie on each other", () => {
  it("is named, and nothing is set back for it", () => {
    const back = transition(1, stretchOf("s1", "outer", "front"), freeEdge([0, 100, 90], [1000, 100, 90]));
    const found = join(trayOf([left, back]));
    expect(found.problems.map(({ kind }) => kind)).toContain("fold-too-sharp");
    const amounts = found.setBacks.flatMap(({ edges }) => edges.flatMap(({ amountsMm }) => amountsMm));
    expect(Math.max(...amounts.map(Math.abs))).toBeLessThan(1e-9);
  });
});
