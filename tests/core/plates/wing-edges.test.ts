import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { onlyPart } from "./measure-plates.ts";
import { planNode, plateOf, projectOf, rectangle, soundPlate, wing } from "./plates.ts";

/** Chords of a flat outline, mm (design: chord error at most 0.005). */
const CHORD_MM = 0.005;

describe("an edge of foam on a wing", () => {
  it("runs along the wing's free edge on its air face, from its start to its end", () => {
    const plate = plateOf(rectangle(0, 400, 0, 200), [wing("o", { angleRad: 0.4, lengthMm: 60 })]);
    const project = projectOf(plate, { symmetry: "mirrored" });
    const edge = { itemId: "p", fromNodeId: "w-o-start", toNodeId: "w-o-end", hand: "right" } as const;
    const node = (id: string, x: number) => ({ id, x, y: 420, z: 130, next: "line" }) as const;
    const design = designTray({
      ...project,
      items: [
        plate,
        {
          kind: "transition",
          id: "t",
          number: 1,
          name: "Side",
          first: { kind: "stretch", edge },
          second: { kind: "free", nodes: [node("a", 400), node("b", 0)] },
        },
      ],
    });
    expect(design.problems.filter(({ place }) => place.itemId === "t" || place.itemId === "p")).toEqual([]);
    const sheet = design.sheets.find(({ itemId }) => itemId === "t");
    expect(sheet).toBeDefined();
    const part = design.parts.find(({ itemId }) => itemId === "t");
    const along = part?.edges.find(({ edgeId }) => edgeId === "first");
    // The wing is as long as its edge, and stands 60 sin 0.4 over the base: set-backs 5 tan 0.2.
    const [free] = design.plates[0]?.wingEdges ?? [];
    expect(along?.drawnLengthMm).toBeCloseTo(400, 6);
    expect(free?.air[0].z).toBeCloseTo(50 + 60 * Math.sin(0.4), 9);
    expect(free?.air[0].y).toBeCloseTo(200 + 60 * Math.cos(0.4), 9);
  });
});

describe("the curved edge of a base", () => {
  it("lies within the chord error of its flat outline", () => {
    const radiusMm = 90;
    const round = rectangle(0, 300, 0, 200).map((node) => (node.id === "o" ? { ...node, radiusMm } : node));
    const { edges } = onlyPart(soundPlate(round, [wing("i")])).loops[0] ?? { edges: [] };
    const points = edges.flatMap((edge) => edge.points).filter(({ u, v }) => u > 210.001 && v > 110.001);
    expect(points.length).toBeGreaterThan(20);
    for (const [i, p] of points.entries()) {
      expect(Math.hypot(p.u - 210, p.v - 110)).toBeCloseTo(radiusMm, 9);
      const before = points[i - 1];
      if (!before) continue;
      const middle = Math.hypot((p.u + before.u) / 2 - 210, (p.v + before.v) / 2 - 110);
      expect(radiusMm - middle).toBeLessThan(CHORD_MM);
    }
  });

  it("keeps its length to a millionth of the outline's", () => {
    const nodes = [
      planNode("i", 0, 0),
      planNode("r", 300, 0),
      planNode("o", 300, 200, { radiusMm: 90 }),
      planNode("f", 0, 200),
    ];
    const { edges } = onlyPart(soundPlate(nodes, [])).loops[0] ?? { edges: [] };
    const lengthMm = edges.reduce(
      (sum, { points }) =>
        points.reduce((part, p, i) => {
          const before = points[i - 1];
          return before ? part + Math.hypot(p.u - before.u, p.v - before.v) : part;
        }, sum),
      0,
    );
    expect(lengthMm / (1000 - 180 + 45 * Math.PI) - 1).toBeLessThanOrEqual(0);
    expect(lengthMm / (1000 - 180 + 45 * Math.PI) - 1).toBeGreaterThan(-1e-6);
  });
});
