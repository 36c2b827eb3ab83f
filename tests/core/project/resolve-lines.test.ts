import { describe, expect, it } from "vitest";
import { type Curve, endOfPiece, pointOnPiece, startOfPiece } from "../../../core/curves/index.ts";
import { at, wordProblem } from "../../../core/foundation/index.ts";
import {
  type FollowPiece,
  newProfile,
  newSection,
  type PlanElement,
  type Project,
  resolveLines,
  type SideNode,
} from "../../../core/project/index.ts";
import { oneSection, plan, rectangle, side, twoSections, withFence } from "./small-projects.ts";

/** Points that should be one differ by rounding only. */
const ROUNDING_MM = 1e-9;

const kindsOf = (project: Project) => resolveLines(project).problems.map(({ kind }) => kind);

const curveOf = (curves: Readonly<Record<string, Curve>>, id: string): Curve => {
  const curve = curves[id];
  if (!curve) throw new Error(`no curve ${id}`);
  return curve;
};

/** The area inside a closed curve from a dense polygon; positive when it runs counter-clockwise. */
function polygonArea(curve: Curve): number {
  const points = curve.pieces.flatMap((piece) =>
    Array.from({ length: 200 }, (_, i) => pointOnPiece(piece, i / 200)),
  );
  return points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = at(points, (i + 1) % points.length);
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

const endsOf = (curve: Curve, edgeId: string) => {
  const pieces = curve.pieces.filter((piece) => piece.edgeId === edgeId);
  return { from: startOfPiece(at(pieces, 0)), to: endOfPiece(at(pieces, -1)) };
};

function withProfile(nodes: readonly SideNode[]): Project {
  const project = oneSection(rectangle(0, 1000, 0, 200));
  return { ...project, profiles: [newProfile({ id: "flat", name: "Flat", nodes })] };
}

/** A section that runs along an edge of another item, then out to y 400 and back. */
function follower(
  id: string,
  number: number,
  follow: Partial<FollowPiece["edge"]>,
  direction: "along" | "against",
) {
  const elements: readonly PlanElement[] = [
    {
      kind: "follow",
      id: "shared",
      edge: { itemId: "one", fromNodeId: "c", toNodeId: "d", hand: "right", ...follow },
      direction,
      next: "line",
    },
    plan("e", direction === "against" ? 1000 : 0, 400),
    plan("f", direction === "against" ? 0 : 1000, 400),
  ];
  return newSection({ id, number, name: id, profileId: "flat", elements, closed: true });
}

describe("an outline", () => {
  it("runs counter-clockwise whichever way it was drawn, and every edge keeps its id and its place", () => {
    const nodes = rectangle(0, 1000, 0, 200);
    const asDrawn = curveOf(resolveLines(oneSection(nodes)).plan, "one");
    // Drawn the other way round, the edge between two nodes belongs to the node that it then leaves.
    const clockwise = [...nodes].reverse();
    const turned = curveOf(resolveLines(oneSection(clockwise)).plan, "one");
    expect(polygonArea(asDrawn)).toBeCloseTo(200_000, 6);
    expect(polygonArea(turned)).toBeCloseTo(200_000, 6);
    expect(endsOf(asDrawn, "a")).toEqual({ from: [0, 0], to: [1000, 0] });
    expect(endsOf(turned, "b")).toEqual({ from: [0, 0], to: [1000, 0] });
  });

  it("with curves and radii runs counter-clockwise too", () => {
    const nodes = [
      plan("a", 0, 0, { radiusMm: 50 }),
      plan("b", 0, 200, { next: "curve" }),
      plan("c", 500, 320, { next: "curve" }),
      plan("d", 1000, 200),
      plan("e", 1000, 0, { radiusMm: 20 }),
    ];
    const curve = curveOf(resolveLines(oneSection(nodes)).plan, "one");
    expect(polygonArea(curve)).toBeGreaterThan(200_000);
    curve.pieces.forEach((piece, i) => {
      const next = startOfPiece(at(curve.pieces, (i + 1) % curve.pieces.length));
      expect(Math.hypot(endOfPiece(piece)[0] - next[0], endOfPiece(piece)[1] - next[1])).toBeLessThan(
        ROUNDING_MM,
      );
    });
  });

  it("that is open is a problem with its gap, and gives no curve", () => {
    const lines = resolveLines(oneSection(rectangle(0, 1000, 0, 200), false));
    expect(lines.problems).toMatchObject([{ kind: "outline-open", gapMm: 200, place: { itemId: "one" } }]);
    expect(lines.plan.one).toBeUndefined();
    expect(lines.unfit?.one?.lengthMm).toBeCloseTo(2200, 9);
  });

  it("that crosses itself is a problem that names both edges and the place", () => {
    const [a, b, c, d] = rectangle(0, 1000, 0, 200);
    const lines = resolveLines(oneSection([a, c, b, d]));
    expect(lines.problems).toMatchObject([{ kind: "line-crosses-itself", edgeIds: ["a", "b"] }]);
    const problem = lines.problems[0];
    expect(problem?.kind === "line-crosses-itself" && problem.at.x).toBeCloseTo(500, 9);
  });

  it("on one straight line encloses nothing and is refused", () => {
    const nodes = [plan("a", 0, 10), plan("b", 500, 10), plan("c", 1000, 10)];
    expect(new Set(kindsOf(oneSection(nodes)))).toEqual(new Set(["line-crosses-itself"]));
    expect(resolveLines(oneSection(nodes)).plan).toEqual({});
  });

  it.each([
    ["two nodes", [plan("a", 0, 0), plan("b", 1000, 0)], "too-few-nodes"],
    ["no nodes", [], "too-few-nodes"],
    ["two nodes on one spot", [...rectangle(0, 1000, 0, 200), plan("e", 0, 200)], "zero-length-segment"],
    [
      "a radius of a metre",
      [plan("a", 0, 0, { radiusMm: 1000 }), ...rectangle(0, 1000, 0, 200).slice(1)],
      "radius-does-not-fit",
    ],
    [
      "a radius beside a curve",
      [plan("a", 0, 0, { radiusMm: 10, next: "curve" }), ...rectangle(0, 1000, 0, 200).slice(1)],
      "radius-needs-lines",
    ],
  ])("of %s is a problem", (_title, nodes, kind) => {
    const lines = resolveLines(oneSection(nodes));
    expect(lines.problems.map((problem) => problem.kind)).toEqual([kind]);
    expect(lines.problems[0]?.place.itemId).toBe("one");
    expect(lines.plan).toEqual({});
  });

  it("that bulges over the centre line between its nodes is a problem with the depth of the bulge", () => {
    const nodes = [
      plan("a", 0, 5, { next: "curve" }),
      plan("b", 500, 0, { next: "curve" }),
      plan("c", 1000, 200),
      plan("d", 0, 200),
    ];
    const lines = resolveLines(oneSection(nodes));
    expect(lines.problems.map(({ kind }) => kind)).toEqual(["left-of-centre-line"]);
    const problem = lines.problems[0];
    const curve = curveOf(resolveLines({ ...oneSection(nodes), symmetry: "none" }).plan, "one");
    const least = Math.min(
      ...curve.pieces.flatMap((piece) =>
        Array.from({ length: 1001 }, (_, i) => pointOnPiece(piece, i / 1000)[1]),
      ),
    );
    expect(problem?.kind === "left-of-centre-line" && problem.yMm).toBeCloseTo(least, 3);
  });

  it("with a faulty number is left out without being told twice", () => {
    const lines = resolveLines(
      oneSection([plan("a", Number.NaN, 0), ...rectangle(0, 1000, 0, 200).slice(1)]),
    );
    expect(lines.problems).toEqual([]);
    expect(lines.plan).toEqual({});
    expect(Object.keys(lines.profiles)).toEqual(["flat"]);
  });
});

describe("a piece that follows an edge", () => {
  it("lies on that edge point for point, and is one edge with the piece's id", () => {
    const lines = resolveLines(twoSections());
    expect(lines.problems).toEqual([]);
    expect(endsOf(curveOf(lines.plan, "two"), "shared")).toEqual({ from: [0, 200], to: [1000, 200] });
    expect(lines.follows).toEqual({ "two/shared": { itemId: "one", edgeIds: ["c"], hand: "right" } });
    expect(curveOf(lines.plan, "two").pieces.map(({ edgeId }) => edgeId)).toEqual([
      "shared",
      "shared-next",
      "e",
      "f",
    ]);
  });

  it("moves with the edge", () => {
    const project = twoSections();
    const moved = {
      ...project,
      items: [...oneSection(rectangle(0, 1000, 0, 250)).items, ...project.items.slice(1)],
    };
    expect(endsOf(curveOf(resolveLines(moved).plan, "two"), "shared")).toEqual({
      from: [0, 250],
      to: [1000, 250],
    });
  });

  it("goes in the direction that is asked for", () => {
    const project = twoSections();
    const along = { ...project, items: [...project.items.slice(0, 1), follower("two", 2, {}, "along")] };
    const lines = resolveLines(along);
    expect(lines.problems).toEqual([]);
    expect(polygonArea(curveOf(lines.plan, "two"))).toBeCloseTo(200_000, 6);
  });

  it("follows round the end of a closed outline", () => {
    const project = twoSections();
    const fence = withFence().items[1];
    if (fence?.kind !== "fence") throw new Error("no fence");
    const elements: readonly PlanElement[] = [
      {
        kind: "follow",
        id: "g",
        edge: { itemId: "one", fromNodeId: "d", toNodeId: "b", hand: "right" },
        direction: "along",
        next: "line",
      },
    ];
    const lines = resolveLines({
      ...project,
      items: [...project.items, { ...fence, line: { closed: false, elements } }],
    });
    expect(lines.problems).toEqual([]);
    expect(endsOf(curveOf(lines.plan, "fence"), "g")).toEqual({ from: [0, 200], to: [1000, 0] });
    expect(lines.follows["fence/g"]?.edgeIds).toEqual(["d", "a"]);
  });

  it("ends in the middle of the arc of a radiused node", () => {
    const [a, b, c, d] = rectangle(0, 1000, 0, 200);
    const project = twoSections();
    const rounded = oneSection([a, b, { ...c, radiusMm: 100 }, d]).items;
    const lines = resolveLines({ ...project, items: [...rounded, ...project.items.slice(1)] });
    const inset = 100 * (1 - Math.SQRT1_2);
    const { to } = endsOf(curveOf(lines.plan, "two"), "shared");
    expect(to[0]).toBeCloseTo(1000 - inset, 9);
    expect(to[1]).toBeCloseTo(200 - inset, 9);
  });

  it("of the left hand is the mirror image", () => {
    const project = twoSections();
    const fence = withFence().items[1];
    if (fence?.kind !== "fence") throw new Error("no fence");
    const elements: readonly PlanElement[] = [
      {
        kind: "follow",
        id: "g",
        edge: { itemId: "one", fromNodeId: "c", toNodeId: "d", hand: "left" },
        direction: "along",
        next: "line",
      },
    ];
    const left = { ...project, items: [...project.items, { ...fence, line: { closed: false, elements } }] };
    // The image lies left of the centre line, where nothing may be drawn: that is what is told.
    expect(resolveLines(left).problems).toMatchObject([
      { kind: "left-of-centre-line", yMm: -200, place: { itemId: "fence" } },
    ]);
    expect(resolveLines({ ...left, symmetry: "none" }).problems).toMatchObject([
      { kind: "unknown-reference" },
    ]);
  });

  it("may follow a piece that follows", () => {
    const project = twoSections();
    const three = follower("three", 3, { itemId: "two", fromNodeId: "e", toNodeId: "f" }, "against");
    const elements = three.outline.elements.map((element) =>
      element.kind === "node" ? { ...element, y: 600 } : element,
    );
    // The one that follows stands before the one it follows: the order of the document does not matter.
    const lines = resolveLines({
      ...project,
      items: [{ ...three, outline: { closed: true, elements } }, ...project.items],
    });
    expect(lines.problems).toEqual([]);
    expect(endsOf(curveOf(lines.plan, "three"), "shared")).toEqual({ from: [0, 400], to: [1000, 400] });
  });

  it.each([
    ["an item that is not there", { itemId: "nobody" }, "nobody"],
    ["a node that is not there", { toNodeId: "z" }, "z"],
  ])("of %s is a problem; the item it followed is made all the same", (_title, edge, missingId) => {
    const project = twoSections();
    const lines = resolveLines({
      ...project,
      items: [...project.items.slice(0, 1), follower("two", 2, edge, "against")],
    });
    expect(lines.problems).toMatchObject([
      { kind: "unknown-reference", field: "edge", missingId, place: { itemId: "two", nodeId: "shared" } },
    ]);
    expect(Object.keys(lines.plan)).toEqual(["one"]);
  });

  it("of a line that cannot be made says whose it is", () => {
    const project = twoSections();
    const broken = oneSection(rectangle(0, 1000, 0, 200).slice(0, 2)).items;
    const lines = resolveLines({ ...project, items: [...broken, ...project.items.slice(1)] });
    expect(lines.problems).toMatchObject([
      { kind: "too-few-nodes", place: { itemId: "one" } },
      { kind: "followed-line-missing", otherName: "One", place: { itemId: "two" } },
    ]);
  });

  it("still follows an item that is left out for its foam alone", () => {
    const project = twoSections();
    const items = project.items.map((item) =>
      item.id === "one" ? { ...item, core: { foamId: "xps", thicknessMm: -3 } } : item,
    );
    expect(Object.keys(resolveLines({ ...project, items }).plan)).toEqual(["two"]);
  });

  it("in a cycle is a problem of every line in the cycle; what follows them says so", () => {
    const project = oneSection([]);
    const one = { ...follower("one", 1, { itemId: "two" }, "along"), name: "One" };
    const two = follower("two", 2, { itemId: "one" }, "along");
    const three = follower("three", 3, { itemId: "two" }, "along");
    const four = follower("four", 4, { itemId: "four" }, "along");
    expect(resolveLines({ ...project, items: [three, one, two, four] }).problems).toMatchObject([
      { kind: "followed-line-missing", place: { itemId: "three" } },
      { kind: "reference-cycle", itemIds: ["one", "two", "one"] },
      { kind: "reference-cycle", itemIds: ["two", "one", "two"] },
      { kind: "reference-cycle", itemIds: ["four", "four"] },
    ]);
  });
});

describe("a profile", () => {
  it("drawn from the rear forward runs rearward all the same", () => {
    const lines = resolveLines(withProfile([side("a", 1000, 80), side("b", 0, 50)]));
    const curve = curveOf(lines.profiles, "flat");
    expect(startOfPiece(at(curve.pieces, 0))).toEqual([0, 50]);
  });

  it("may fall back by a hundredth of a millimetre", () => {
    expect(
      kindsOf(
        withProfile([side("a", 0, 50), side("b", 500, 50), side("c", 499.991, 50.05), side("d", 1000, 60)]),
      ),
    ).toEqual([]);
  });

  it.each([
    [
      "falls back at a node",
      [side("a", 0, 50), side("b", 500, 50), side("c", 480, 60), side("d", 1000, 60)],
      20,
      /runs back by 20\.00 mm near x 480\.0/,
    ],
    [
      "steps straight up",
      [side("a", 0, 50), side("b", 500, 50), side("c", 500, 60), side("d", 1000, 60)],
      0,
      /has an upright step at x 500\.0/,
    ],
  ])("that %s is a problem of the profile", (_title, nodes, fallbackMm, words) => {
    const lines = resolveLines(withProfile(nodes));
    expect(lines.problems).toMatchObject([{ kind: "profile-falls-back", place: { profileId: "flat" } }]);
    const problem = lines.problems[0];
    expect(problem?.kind === "profile-falls-back" && problem.fallbackMm).toBeCloseTo(fallbackMm, 9);
    expect(problem === undefined ? "" : wordProblem(problem)).toMatch(words);
    expect(lines.profiles).toEqual({});
    expect(Object.keys(lines.plan)).toEqual(["one"]);
  });

  it("whose curve swings back between nodes that go on is a problem too", () => {
    const nodes = [
      side("a", 0, 50, { next: "curve", tangentOutRad: Math.PI / 2 }),
      side("b", 20, 150, { tangentInRad: (3 * Math.PI) / 4 }),
      side("c", 1000, 150),
    ];
    expect(kindsOf(withProfile(nodes))).toEqual(["profile-falls-back"]);
  });

  it("may start upright, as a nose does", () => {
    const nodes = [
      side("a", 0, 50, { next: "curve", tangentOutRad: -Math.PI / 2 }),
      side("b", 400, 20, { next: "curve" }),
      side("c", 1000, 50),
    ];
    expect(kindsOf(withProfile(nodes))).toEqual([]);
  });

  it("of one node is a problem", () => {
    expect(kindsOf(withProfile([side("a", 0, 50)]))).toEqual(["too-few-nodes"]);
  });
});

describe("a fence", () => {
  it("has an open line in the direction it was drawn, and its lower edge in the side view", () => {
    const lines = resolveLines(withFence());
    expect(lines.problems).toEqual([]);
    expect(curveOf(lines.plan, "fence").closed).toBe(false);
    expect(curveOf(lines.lowerEdges, "fence").lengthMm).toBeCloseTo(800, 9);
  });

  it("that closes on itself is a problem", () => {
    const project = withFence();
    const items = project.items.map((item) =>
      item.kind === "fence"
        ? { ...item, line: { closed: true, elements: rectangle(100, 900, 50, 150) } }
        : item,
    );
    expect(kindsOf({ ...project, items })).toEqual(["fence-line-closed"]);
  });

  it("with a lower edge that falls back has a problem, and its line in plan all the same", () => {
    const project = withFence();
    const items = project.items.map((item) =>
      item.kind === "fence"
        ? {
            ...item,
            lowerEdge: {
              kind: "heights" as const,
              nodes: [side("l", 100, 20), side("m", 900, 20), side("n", 500, 10)],
            },
          }
        : item,
    );
    const lines = resolveLines({ ...project, items });
    expect(lines.problems).toMatchObject([{ kind: "profile-falls-back", place: { itemId: "fence" } }]);
    expect(Object.keys(lines.plan)).toEqual(["one", "fence"]);
    expect(lines.lowerEdges).toEqual({});
  });
});
