import { expect, it } from "vitest";
import { nodeLabel, sayEdge, sayNode, wordProblem } from "../../../core/foundation/index.ts";

it("a node that the program made goes by its number, in tables and in sentences", () => {
  expect(["n2", "n17", "front", "n"].map(nodeLabel)).toEqual(["2", "17", "front", "n"]);
  expect(["n2", "tip", "e1", "e1-start", "e2-end"].map(sayNode)).toEqual([
    "node 2",
    "node tip",
    "followed edge 1",
    "the start of followed edge 1",
    "the end of followed edge 2",
  ]);
});

it("an edge goes by the node that it leaves", () => {
  expect(["n2", "e1", "e1-next"].map(sayEdge)).toEqual([
    "the edge after node 2",
    "followed edge 1",
    "the edge after followed edge 1",
  ]);
});

it("a problem says nodes as the tables do", () => {
  const problem = { name: "Outer floor", place: { itemId: "s2", nodeId: "n3" } } as const;
  expect(wordProblem({ ...problem, kind: "left-of-centre-line", yMm: -4 })).toMatch(
    /^Node 3 of Outer floor /,
  );
  expect(
    wordProblem({ ...problem, kind: "line-crosses-itself", edgeIds: ["n1", "n3"], at: { x: 412, y: 80 } }),
  ).toMatch(/^In Outer floor, the edge after node 1 and the edge after node 3 cross near x 412/);
});
