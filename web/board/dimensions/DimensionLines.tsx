import type { Vec2 } from "../../../core/foundation/index.ts";
import type { Box } from "../viewport.ts";
import type { Arrow, PlacedDimension } from "./place-dimensions.ts";

interface DimensionLinesProps {
  readonly box: Box;
  readonly placed: readonly PlacedDimension[];
}

/** The thin lines and filled arrow heads of dimensions, cut off at the edges of their view. */
export function DimensionLines({ box, placed }: DimensionLinesProps) {
  return (
    <svg
      className="dimension-lines"
      aria-hidden
      style={{ left: box.leftPx, top: box.topPx, width: box.widthPx, height: box.heightPx }}
      viewBox={`${box.leftPx} ${box.topPx} ${box.widthPx} ${box.heightPx}`}
    >
      {placed.map(({ id, lines, arrows }) => (
        <g key={id}>
          {lines.map(([a, b], index) => (
            <line key={`${id}/${index === 0 ? "a" : index}`} x1={a[0]} y1={a[1]} x2={b[0]} y2={b[1]} />
          ))}
          {arrows.map((arrow) => (
            <polygon key={arrow.points.join("/")} points={headOf(arrow)} />
          ))}
        </g>
      ))}
    </svg>
  );
}

const HEAD_PX = 9;
const HALF_PX = 2.2;

function headOf({ tip, points: [x, y] }: Arrow): string {
  const foot: Vec2 = [tip[0] - x * HEAD_PX, tip[1] - y * HEAD_PX];
  const corners = [
    tip,
    [foot[0] - y * HALF_PX, foot[1] + x * HALF_PX],
    [foot[0] + y * HALF_PX, foot[1] - x * HALF_PX],
  ];
  return corners.map((corner) => corner.join(",")).join(" ");
}
