import { Line } from "react-konva";
import type { Vec2 } from "../../core/foundation/index.ts";
import { useScene, wingEdgesInPlan } from "../hand/index.ts";
import { findLine, lineKey, type Scene, type ShownEdge } from "../tools/index.ts";
import { imageOf, linePx, pointsOfEdge } from "./draw-line.ts";
import type { Paint } from "./paint.ts";
import { dashes, pens } from "./pens.ts";
import type { Transform } from "./viewport.ts";

interface ShownEdgesProps {
  readonly edges: readonly ShownEdge[];
  readonly transform: Transform;
  readonly paint: Paint;
}

/** Edges that the tool in hand has taken, and dashed the one that a click would take. */
export function ShownEdges({ edges, transform, paint }: ShownEdgesProps) {
  const scene = useScene();
  return edges.map(({ line, edgeId, hand, isTaken }) => {
    const drawn = pointsOf(scene, line, edgeId);
    if (!drawn) return null;
    const points = hand === "left" ? imageOf(drawn) : drawn;
    return (
      <Line
        key={`${lineKey(line)}/${edgeId}/${hand}/${isTaken}`}
        points={linePx(transform, points)}
        stroke={paint.mark}
        strokeWidth={pens.chosen * 2}
        lineCap="round"
        {...(isTaken ? {} : { dash: [...dashes.draft] })}
      />
    );
  });
}

/** The points of a drawn edge, or of the free edge of the wing that goes by this id. */
function pointsOf(scene: Scene, line: ShownEdge["line"], edgeId: string): readonly Vec2[] | undefined {
  const edge = findLine(scene, line)?.edges.find((other) => other.edgeId === edgeId);
  if (edge) return pointsOfEdge(edge);
  const wing = wingEdgesInPlan().find(
    ({ itemId, wingId }) => line.of === "item" && itemId === line.itemId && wingId === edgeId,
  );
  return wing && [wing.from, wing.to];
}
