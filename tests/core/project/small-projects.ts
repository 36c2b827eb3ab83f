import {
  emptyProject,
  newFence,
  newProfile,
  newSection,
  type PlanElement,
  type PlanNode,
  type Project,
  type SideNode,
} from "../../../core/project/index.ts";

/** A node in plan, straight on unless told otherwise. */
export const plan = (id: string, x: number, y: number, more: Partial<PlanNode> = {}): PlanNode => ({
  kind: "node",
  id,
  x,
  y,
  next: "line",
  ...more,
});

/** A node in the side view, straight on unless told otherwise. */
export const side = (id: string, x: number, z: number, more: Partial<SideNode> = {}): SideNode => ({
  kind: "node",
  id,
  x,
  z,
  next: "line",
  ...more,
});

/** A rectangle drawn counter-clockwise seen from above: a, b, c, d. */
export const rectangle = (
  fromX: number,
  toX: number,
  fromY: number,
  toY: number,
): readonly [PlanNode, PlanNode, PlanNode, PlanNode] => [
  plan("a", fromX, fromY),
  plan("b", toX, fromY),
  plan("c", toX, toY),
  plan("d", fromX, toY),
];

/** One section, S1 with the id "one", of the given outline, and a flat profile from x 0 to 1000. */
export function oneSection(elements: readonly PlanElement[], closed = true): Project {
  const empty = emptyProject({ id: "small", title: "Small", issuedOn: "2026-01-01" });
  return {
    ...empty,
    profiles: [newProfile({ id: "flat", name: "Flat", nodes: [side("p", 0, 50), side("q", 1000, 50)] })],
    items: [newSection({ id: "one", number: 1, name: "One", profileId: "flat", elements, closed })],
  };
}

/** S1 from y 0 to 200, and S2 from there to 400 that follows the outer edge of S1. */
export function twoSections(): Project {
  const project = oneSection(rectangle(0, 1000, 0, 200));
  const elements: readonly PlanElement[] = [
    {
      kind: "follow",
      id: "shared",
      edge: { itemId: "one", fromNodeId: "c", toNodeId: "d", hand: "right" },
      direction: "against",
      next: "line",
    },
    plan("e", 1000, 400),
    plan("f", 0, 400),
  ];
  const two = newSection({ id: "two", number: 2, name: "Two", profileId: "flat", elements, closed: true });
  return { ...project, items: [...project.items, two] };
}

/** S1 with a fence, F1 with the id "fence", whose lower edge is drawn as heights. */
export function withFence(): Project {
  const project = oneSection(rectangle(0, 1000, 0, 200));
  const fence = {
    ...newFence({
      id: "fence",
      number: 1,
      name: "Fence",
      elements: [plan("a", 100, 100), plan("b", 900, 100)],
    }),
    lowerEdge: { kind: "heights", nodes: [side("l", 100, 20), side("m", 900, 20)] },
  } as const;
  return { ...project, items: [...project.items, fence] };
}
