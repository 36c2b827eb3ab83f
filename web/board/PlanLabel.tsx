import { memo } from "react";
import { Group } from "react-konva";
import type { Vec2 } from "../../core/foundation/index.ts";
import type { Project } from "../../core/project/index.ts";
import { codeOfItem, codeOfOpening } from "../drawings/index.ts";
import type { SceneLine } from "../tools/index.ts";
import { clearSpot } from "./clear-spot.ts";
import { labelSpot, pointsOfLine } from "./draw-line.ts";
import { extentOf } from "./extents.ts";
import { Letters } from "./Letters.tsx";
import type { Drawn } from "./PlanFill.tsx";
import type { Paint } from "./paint.ts";
import { sizes } from "./pens.ts";
import { type Transform, toPx } from "./viewport.ts";

/** The letter and number that an item or opening goes by. */
export function codeOf({ line }: SceneLine, project: Project): string {
  if (line.of === "opening") {
    const opening = project.openings.find((other) => other.id === line.openingId);
    return opening ? codeOfOpening(opening) : "";
  }
  const item = line.of === "item" ? project.items.find((other) => other.id === line.itemId) : undefined;
  return item ? codeOfItem(item) : "";
}

/** Where a line is named: before its front end if it is open, else inside it, clear of what lies on it. */
export function spotOf(line: SceneLine, lines: readonly SceneLine[]): Vec2 {
  const points = pointsOfLine(line);
  if (!line.closed || points.length === 0) return points[0] ?? [0, 0];
  const within = lines.filter(
    (other) => other !== line && (other.kind === "opening" || other.kind === "plate"),
  );
  return line.kind === "section" || line.kind === "transition"
    ? clearSpot(points, within.map(pointsOfLine))
    : labelSpot(points);
}

export const Label = memo(function Label({
  line,
  transform,
  paint,
  code,
  spotX,
  spotY,
}: Drawn & { readonly code: string; readonly spotX: number; readonly spotY: number }) {
  const points = pointsOfLine(line);
  if (code === "" || points.length < 2) return null;
  const [xPx, yPx] = toPx(transform, [spotX, spotY]);
  if (!Number.isFinite(xPx) || !Number.isFinite(yPx)) return null;
  const isNamed = hasRoom(transform, points);
  // A fence is named before its front end, a sheet in its middle.
  return line.closed ? (
    <Group x={xPx} y={yPx - (isNamed ? 16 : sizes.code / 2)}>
      <Letters {...lettersOf(code, paint)} x={-100} width={200} align="center" />
      {isNamed ? (
        <Letters
          text={line.name}
          x={-100}
          y={18}
          width={200}
          align="center"
          fontFamily={paint.sans}
          fontSize={sizes.label}
          fill={paint.pencil}
          {...haloOf(paint)}
        />
      ) : null}
    </Group>
  ) : (
    <Letters {...lettersOf(code, paint)} x={xPx - 50} y={yPx - sizes.code / 2} width={40} align="right" />
  );
});

const lettersOf = (code: string, paint: Paint) => ({
  text: code,
  fontFamily: paint.mono,
  fontSize: sizes.code,
  fill: paint.ink,
  ...haloOf(paint),
});

/** Letters stand clear of the lines that run under them. */
const haloOf = (paint: Paint) => ({ stroke: paint.sheet, strokeWidth: 2.5, fillAfterStrokeEnabled: true });

/** A name is written only where it does not hide the outline. */
function hasRoom(transform: Transform, points: readonly Vec2[]): boolean {
  const extent = extentOf(points);
  return (
    extent !== undefined &&
    (extent.right - extent.left) * transform.pxPerMmAcross > LEAST_NAME_PX &&
    (extent.top - extent.bottom) * transform.pxPerMmUp > LEAST_NAME_PX / 2
  );
}

const LEAST_NAME_PX = 110;
