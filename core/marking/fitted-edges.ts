import type { Strip } from "../cutting/index.ts";
import type { FlatPoint } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";
import { shownFace } from "./shown-face.ts";

/** An edge with spare on it, to be cut to a measured gap. */
export interface FittedEdge {
  readonly edgeId: string;
  readonly name: string;
  readonly spareMm: number;
  /** Where the drawing ends it on the face shown. */
  readonly netLineMm: readonly FlatPoint[];
}

/** The edges of a closer that are cut to a measured gap, with their net lines on the face shown; none on other strips. */
export const fittedEdges = (
  strip: Strip,
  thicknessMm: number,
  project: Pick<Project, "cutting">,
): readonly FittedEdge[] =>
  isFitted(strip)
    ? shownFace(strip, thicknessMm, project).loops.flatMap(({ edges }) =>
        edges.flatMap(({ edgeId, name, points, spare }): readonly FittedEdge[] =>
          spare?.for === "gap" ? [{ edgeId, name, spareMm: spare.lengthMm, netLineMm: points }] : [],
        ),
      )
    : [];

/** Whether an edge of a strip has spare on it for a measured gap. */
export const isFitted = (strip: Strip): boolean =>
  strip.loops.some(({ edges }) => edges.some(({ spare }) => spare?.for === "gap"));
