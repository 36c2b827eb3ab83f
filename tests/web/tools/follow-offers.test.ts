import { describe, expect, it } from "vitest";
import { distance2, type Vec2 } from "../../../core/foundation/index.ts";
import { applyCommand, newSection, type Project, resolveLines } from "../../../core/project/index.ts";
import { followOffers, sceneOf } from "../../../web/tools/index.ts";
import { trayWithSection } from "./bench-of-tools.ts";

function withNeighbour(corners: readonly Vec2[]): Project {
  return applyCommand(trayWithSection(), {
    kind: "add-section",
    section: newSection({
      id: "s2",
      number: 2,
      name: "Outer",
      profileId: "p1",
      closed: true,
      elements: corners.map(([x, y], index) => ({ kind: "node", id: `n${index + 1}`, x, y, next: "line" })),
    }),
  });
}

const offersFor = (project: Project) => followOffers(project, sceneOf(project, resolveLines(project)), "s2");

describe("edges that could follow another", () => {
  it("a segment from node to node of a neighbour is offered, and following it keeps the outline where it was", () => {
    const project = withNeighbour([
      [0, 400],
      [1000, 400],
      [1000, 600],
      [0, 600],
    ]);
    const [offer, ...others] = offersFor(project);
    expect(others).toEqual([]);
    expect(offer).toMatchObject({ afterNodeId: "n1", beforeNodeId: "n2", otherName: "Floor" });
    const followed = (offer?.commands ?? []).reduce(applyCommand, project);
    const before = resolveLines(project).plan.s2;
    const after = resolveLines(followed).plan.s2;
    expect(resolveLines(followed).problems).toEqual([]);
    expect(after?.lengthMm).toBeCloseTo(before?.lengthMm ?? 0, 9);
    const [, outer] = followed.items;
    expect(outer?.kind === "section" ? outer.outline.elements.map((element) => element.kind) : []).toContain(
      "follow",
    );
  });

  it("an end in the middle of a neighbour's edge puts a node there first", () => {
    const project = withNeighbour([
      [250, 400],
      [1000, 400],
      [1000, 600],
    ]);
    const [offer] = offersFor(project);
    const followed = (offer?.commands ?? []).reduce(applyCommand, project);
    const [floor] = followed.items;
    const nodes = floor?.kind === "section" ? floor.outline.elements : [];
    const isThere = nodes.some(
      (element) => element.kind === "node" && distance2([element.x, element.y], [250, 400]) < 1e-6,
    );
    expect(isThere).toBe(true);
    expect(resolveLines(followed).problems).toEqual([]);
  });

  it("both ends in the middle of one edge of a neighbour put two nodes there, whichever way round it is drawn", () => {
    const corners = [
      [250, 400],
      [700, 400],
      [700, 600],
      [250, 600],
    ] as const;
    for (const drawn of [corners, [...corners].reverse()]) {
      const project = withNeighbour(drawn);
      const [offer, ...others] = offersFor(project);
      expect(others).toEqual([]);
      const followed = (offer?.commands ?? []).reduce(applyCommand, project);
      const [floor] = followed.items;
      const nodes = floor?.kind === "section" ? floor.outline.elements : [];
      for (const place of corners.slice(0, 2))
        expect(
          nodes.filter((node) => node.kind === "node" && distance2([node.x, node.y], place) < 1e-6),
        ).toHaveLength(1);
      expect(resolveLines(followed).problems).toEqual([]);
      expect(resolveLines(followed).plan.s2?.lengthMm).toBeCloseTo(1300, 6);
    }
  });

  it("a segment that touches a neighbour with one end only is not offered", () => {
    const project = withNeighbour([
      [1000, 400],
      [1300, 400],
      [1300, 600],
    ]);
    expect(offersFor(project)).toEqual([]);
  });
});
