import type { Strip } from "../cutting/index.ts";
import type { FlatPoint } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";
import { shownFace } from "./shown-face.ts";

/** An edge with foam left standing outside it: to be cut to a measured gap, or to hold a bend by and be trimmed. */
export interface FittedEdge {
  readonly edgeId: string;
  readonly name: string;
  readonly spareMm: number;
  /** Where the drawing ends it on the face shown. */
  readonly netLineMm: readonly FlatPoint[];
}

type Reason = "gap" | "hold";

/** The edges of a strip with foam left standing for a reason, with their net lines on the face shown. */
export const fittedEdges = (
  strip: Strip,
  thicknessMm: number,
  project: Pick<Project, "cutting">,
  reason: Reason,
): readonly FittedEdge[] =>
  isFitted(strip, reason)
    ? shownFace(strip, thicknessMm, project).loops.flatMap(({ edges }) =>
        edges.flatMap(({ edgeId, name, points, spare }): readonly FittedEdge[] =>
          spare?.for === reason ? [{ edgeId, name, spareMm: spare.lengthMm, netLineMm: points }] : [],
        ),
      )
    : [];

/** Whether an edge of a strip has foam left standing for a reason. */
export const isFitted = (strip: Strip, reason: Reason): boolean =>
  strip.loops.some(({ edges }) => edges.some(({ spare }) => spare?.for === reason));
