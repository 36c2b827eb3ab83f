import { Circle, Ellipse, Line, Rect } from "react-konva";
import type { Draft } from "../tools/index.ts";
import { draftPoints } from "./draft-points.ts";
import { linePx } from "./draw-line.ts";
import type { Paint } from "./paint.ts";
import { dashes, pens, sizes } from "./pens.ts";
import { type Transform, toPx } from "./viewport.ts";

interface DraftDrawingProps {
  readonly draft: Draft;
  readonly transform: Transform;
  readonly paint: Paint;
}

/** A line that is being drawn: what is set down, and dashed where it would go on. */
export function DraftDrawing({ draft, transform, paint }: DraftDrawingProps) {
  const { set, next } = draftPoints(draft);
  const half = sizes.node / 2;
  return (
    <>
      {draft.circle ? <DraftCircle circle={draft.circle} transform={transform} paint={paint} /> : null}
      <Line points={linePx(transform, set)} stroke={paint.mark} strokeWidth={pens.outline} />
      <Line
        points={linePx(transform, next)}
        stroke={paint.mark}
        strokeWidth={pens.outline}
        dash={[...dashes.draft]}
      />
      {draft.nodes.map((node, index) => {
        const [x, y] = toPx(transform, node.at);
        const fill = index === 0 && draft.closes ? paint.mark : paint.sheet;
        return (
          <Rect
            key={`${x}/${y}`}
            x={x - half}
            y={y - half}
            width={sizes.node}
            height={sizes.node}
            fill={fill}
            stroke={paint.mark}
            strokeWidth={pens.handle}
          />
        );
      })}
    </>
  );
}

function DraftCircle({
  circle: { centre, radiusMm },
  transform,
  paint,
}: Omit<DraftDrawingProps, "draft"> & { readonly circle: NonNullable<Draft["circle"]> }) {
  const [x, y] = toPx(transform, centre);
  return (
    <>
      <Ellipse
        x={x}
        y={y}
        radiusX={radiusMm * transform.pxPerMmAcross}
        radiusY={radiusMm * transform.pxPerMmUp}
        stroke={paint.mark}
        strokeWidth={pens.outline}
        dash={[...dashes.draft]}
      />
      <Circle x={x} y={y} radius={sizes.quietNode / 2} fill={paint.mark} />
    </>
  );
}
