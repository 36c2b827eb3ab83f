import { isSameLine } from "../scene.ts";
import type { NearEdge } from "./near-edges.ts";

/** An edge in a reason: by the name that the builder gave it, else by the line that it belongs to. */
export const wordOfEdge = ({ line, edge }: Pick<NearEdge, "line" | "edge">): string =>
  edge.name === undefined ? `the edge of ${line.name}` : `${edge.name} of ${line.name}`;

export const wordOfCrossing = (one: NearEdge, other: NearEdge): string =>
  isSameLine(one.line.line, other.line.line)
    ? `crossing of two edges of ${one.line.name}`
    : `crossing of ${one.line.name} and ${other.line.name}`;
