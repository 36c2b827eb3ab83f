import { Line } from "react-konva";
import { findLine, lineKey, type ShownEdge } from "../tools/index.ts";
import { imageOf, linePx, pointsOfEdge } from "./draw-line.ts";
import type { Paint } from "./paint.ts";
import { dashes, pens } from "./pens.ts";
import { useScene } from "./use-scene.ts";
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
    const edge = findLine(scene, line)?.edges.find((other) => other.edgeId === edgeId);
    if (!edge) return null;
    const points = hand === "left" ? imageOf(pointsOfEdge(edge)) : pointsOfEdge(edge);
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
