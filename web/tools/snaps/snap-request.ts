import type { Vec2 } from "../../../core/foundation/index.ts";
import { findLine, isSameLine, type SceneLine } from "../scene.ts";
import type { DraftNode, Place, ToolContext } from "../types.ts";

/** A snap reaches less far than a grab: else near things could not be drawn apart. */
export const SNAP_SHARE = 0.6;
/** Nearer than this a coordinate is drawn onto that of something else, px. */
export const ALIGN_PX = 5;

export interface SnapRequest {
  readonly place: Place;
  readonly context: ToolContext;
  /** The line being drawn: its first node closes it, its nodes line up with the next. */
  readonly draft?: readonly DraftNode[];
  /** The draft may be closed on its first node. */
  readonly canClose?: boolean;
  /** The line whose node is moved, and the node. */
  readonly moving?: { readonly line: SceneLine["line"]; readonly nodeId: string };
}

/** The lines of the view that may be snapped to: not the one whose node is moved. */
export const otherLines = ({ place, context, moving }: SnapRequest): readonly SceneLine[] =>
  context.scene.lines.filter(
    ({ view, line }) => view === place.view && !(moving && isSameLine(line, moving.line)),
  );

/** Where the segments that end in the wanted place begin: the last node drawn, or the neighbours of the one moved. */
export function segmentStarts({ context, draft, moving }: SnapRequest): readonly Vec2[] {
  const last = draft?.at(-1);
  if (last) return [last.at];
  const line = moving && findLine(context.scene, moving.line);
  if (!moving || !line) return [];
  const index = line.nodes.findIndex(({ nodeId }) => nodeId === moving.nodeId);
  const beside = [index - 1, index + 1].map((next) =>
    line.closed ? line.nodes.at(next % line.nodes.length) : next < 0 ? undefined : line.nodes[next],
  );
  return beside.flatMap((node) => (node ? [node.at] : []));
}
