import { assert } from "../../../core/foundation/index.ts";
import {
  type PlanLine,
  type Profile,
  type Project,
  resolveLines,
  type Section,
} from "../../../core/project/index.ts";
import { buildSheets, type Sheet } from "../../../core/surfaces/index.ts";
import { plainProject } from "../cutting/plain-project.ts";

export type Corner = readonly [x: number, y: number];

/** A straight-sided outline in plan. */
export const outlineThrough = (corners: readonly Corner[]): PlanLine => ({
  closed: true,
  elements: corners.map(([x, y], i) => ({ kind: "node", id: `n${i + 1}`, x, y, next: "line" }) as const),
});

export const box = (fromX: number, toX: number, fromY: number, toY: number) =>
  outlineThrough([
    [fromX, fromY],
    [toX, fromY],
    [toX, toY],
    [fromX, toY],
  ]);

export function section(id: string, number: number, outline: PlanLine, profileId: string): Section {
  return {
    kind: "section",
    id,
    number,
    name: `Section ${number}`,
    outline,
    profileId,
    headingRad: 0,
    tiltRad: 0,
  };
}

export const straightProfile = (
  id: string,
  points: readonly (readonly [x: number, z: number])[],
): Profile => ({
  id,
  name: id,
  nodes: points.map(([x, z], i) => ({ kind: "node", id: `p${i + 1}`, x, z, next: "line" }) as const),
});

/** Nodes of a rising arc of the given radius, its lowest point at x = 0, as fine as a spline needs to be exact. */
export function arcProfile(id: string, radiusMm: number, toX: number, count = 16): Profile {
  const nodes = Array.from({ length: count + 1 }, (_, i) => {
    const x = (toX * i) / count;
    const slopeRad = Math.asin(x / radiusMm);
    const ends = { ...(i === 0 && { tangentOutRad: 0 }), ...(i === count && { tangentInRad: slopeRad }) };
    const z = radiusMm - Math.sqrt(radiusMm ** 2 - x ** 2);
    return { kind: "node", id: `p${i + 1}`, x, z, next: "curve", ...ends } as const;
  });
  return { id, name: id, nodes };
}

/** A box whose edge at its least y or x follows the edge of another box that meets it there. */
export const boxBeside = (
  other: { readonly itemId: string; readonly edge: readonly [fromNodeId: string, toNodeId: string] },
  side: "y" | "x",
  [fromX, toX, fromY, toY]: readonly [number, number, number, number],
): PlanLine => {
  const [fromNodeId, toNodeId] = other.edge;
  const far: Corner = side === "y" ? [toX, toY] : [toX, fromY];
  const farther: Corner = side === "y" ? [fromX, toY] : [toX, toY];
  const node = (id: string, [x, y]: Corner) => ({ kind: "node", id, x, y, next: "line" }) as const;
  return {
    closed: true,
    elements: [
      {
        kind: "follow",
        id: "f1",
        edge: { itemId: other.itemId, fromNodeId, toNodeId, hand: "right" },
        direction: "against",
        next: "line",
      },
      node(side === "y" ? "n3" : "n2", far),
      node(side === "y" ? "n4" : "n3", farther),
    ],
  };
};

/** A project with its sheets, as the stages before the jig make them. */
export function trayOf(changes: Partial<Project>): {
  readonly project: Project;
  readonly sheets: readonly Sheet[];
} {
  const project = plainProject(changes);
  const lines = resolveLines(project);
  const { sheets, problems } = buildSheets(project, lines);
  assert(lines.problems.length === 0 && problems.length === 0, "the tray of a test is sound");
  return { project, sheets };
}
