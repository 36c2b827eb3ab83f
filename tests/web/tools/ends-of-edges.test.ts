import { describe, expect, it } from "vitest";
import { newPlate, newSection, newTransition, type PlanElement } from "../../../core/project/index.ts";
import { endsOfEdges } from "../../../web/tools/index.ts";

const elements: readonly PlanElement[] = [
  { kind: "node", id: "n1", x: 0, y: 0, next: "line" },
  {
    kind: "follow",
    id: "e1",
    edge: { itemId: "s9", fromNodeId: "n1", toNodeId: "n2", hand: "right" },
    direction: "along",
    next: "line",
  },
  { kind: "node", id: "n3", x: 100, y: 100, next: "line" },
];
const idsOf = (item: Parameters<typeof endsOfEdges>[0]) => endsOfEdges(item).map(({ nodeId }) => nodeId);

describe("the nodes that an edge of a transition may run between", () => {
  it("of a section are its nodes, and both ends of what it follows", () => {
    const section = newSection({ id: "s1", number: 1, name: "", profileId: "p", elements, closed: true });
    expect(idsOf(section)).toEqual(["n1", "e1-start", "e1-end", "n3"]);
  });

  it("of a plate are also the ends of its wings' free edges", () => {
    const plate = newPlate({ id: "pl1", number: 1, name: "", elements, closed: true, zMm: 0 });
    const wing = {
      id: "w1",
      edgeId: "n3",
      angleRad: 1,
      insideRadiusMm: 3,
      lengthMm: 20,
      startInsetMm: 0,
      endInsetMm: 0,
      startTaperRad: 0,
      endTaperRad: 0,
    };
    expect(idsOf({ ...plate, wings: [wing] }).slice(-2)).toEqual(["w1-start", "w1-end"]);
  });

  it("of another transition are its four corners and the inner nodes of its free edges", () => {
    const node = (id: string, x: number) => ({ id, x, y: 0, z: 0, next: "line" }) as const;
    const transition = newTransition({
      id: "t1",
      number: 1,
      name: "",
      first: { kind: "free", nodes: [node("n1", 0), node("n2", 50), node("n3", 100)] },
      second: {
        kind: "stretch",
        edge: { itemId: "s1", fromNodeId: "n1", toNodeId: "n2", hand: "right" },
      },
    });
    expect(idsOf(transition)).toEqual(["first-start", "n2", "first-end", "second-start", "second-end"]);
  });
});
