import type { Opening, PlanElement, Project } from "../../core/project/index.ts";
import { planNode } from "./trays.ts";

/** An opening of the given elements; upright unless said otherwise. */
export const opening = (
  number: number,
  elements: readonly PlanElement[],
  changes: Partial<Opening> = {},
): Opening => ({
  id: `h${number}`,
  number,
  name: `Hatch ${number}`,
  outline: { closed: true, elements },
  cut: "upright",
  ...changes,
});

export const withOpenings = (project: Project, ...openings: readonly Opening[]): Project => ({
  ...project,
  openings,
});

/** A circle exactly: a square whose four radii meet in the middles of its sides. */
export const circleNodes = (x: number, y: number, radiusMm: number): readonly PlanElement[] =>
  [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a = 0, b = 0], i) => planNode(`c${i}`, x + a * radiusMm, y + b * radiusMm, { radiusMm }));

export const boxNodes = (x0: number, x1: number, y0: number, y1: number): readonly PlanElement[] => [
  planNode("a", x0, y0),
  planNode("b", x1, y0),
  planNode("c", x1, y1),
  planNode("d", x0, y1),
];
