import { type Curve, type CurvePiece, subCurve } from "../curves/index.ts";
import type { Problem } from "../foundation/index.ts";
import type { LineOwner } from "./check-line.ts";
import { nameOfItem } from "./names.ts";
import type { TransitionEdges } from "./resolved-lines.ts";
import type { EdgeRef, Item, Project } from "./schema.ts";

/** The line in plan of one item or opening, compiled in the direction it was drawn. */
export interface DrawnLine {
  /** Absent where the line cannot be compiled. */
  readonly curve?: Curve;
  /** Of a transition: its two edges. */
  readonly edges?: TransitionEdges;
  /** For each following piece, by id: the pieces it runs along, in this line's direction. */
  readonly stretches: Readonly<Record<string, readonly CurvePiece[]>>;
  /** For each following piece, by id: the edges of the other line that it runs along. */
  readonly followed: Readonly<Record<string, readonly string[]>>;
  readonly problems: readonly Problem[];
}

/** Where references of a line lead. */
export interface Surroundings {
  readonly project: Project;
  readonly items: ReadonlyMap<string, Item>;
  readonly lineOf: (item: Item) => DrawnLine;
}

/** The pieces of the other line that an edge reference means, in that line's direction. */
export function findStretch(
  edge: EdgeRef,
  here: LineOwner,
  { project, items, lineOf }: Surroundings,
): { readonly pieces: readonly CurvePiece[] } | { readonly problem: Problem } {
  const missing = (missingId: string) => ({
    problem: { ...here, kind: "unknown-reference", field: "edge", missingId } as const,
  });
  const other = items.get(edge.itemId);
  if (!other) return missing(edge.itemId);
  if (edge.hand === "left" && project.symmetry === "none") return missing(`${nameOfItem(other)} on the left`);
  const curve = lineOf(other).curve;
  if (!curve) return { problem: { ...here, kind: "followed-line-missing", otherName: nameOfItem(other) } };
  const pieces = subCurve(curve, edge.fromNodeId, edge.toNodeId);
  if (pieces) return { pieces };
  return missing(missingEnd(edge, curve));
}

/** The end that a curve does not have; both in their order where it has both, but runs the other way. */
function missingEnd(edge: EdgeRef, curve: Curve): string {
  const isOn = (nodeId: string) =>
    curve.pieces.some((piece) => piece.startNodeId === nodeId || piece.endNodeId === nodeId);
  if (!isOn(edge.fromNodeId)) return edge.fromNodeId;
  if (!isOn(edge.toNodeId)) return edge.toNodeId;
  return `${edge.fromNodeId} to ${edge.toNodeId}`;
}
