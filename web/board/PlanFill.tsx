import { memo } from "react";
import { Line } from "react-konva";
import type { Project } from "../../core/project/index.ts";
import { hatchOfItem } from "../drawings/index.ts";
import type { SceneLine } from "../tools/index.ts";
import { imageOf, linePx, pointsOfLine } from "./draw-line.ts";
import type { Paint } from "./paint.ts";
import type { Transform } from "./viewport.ts";

export interface Drawn {
  readonly line: SceneLine;
  readonly transform: Transform;
  readonly paint: Paint;
}

interface PlanFill {
  readonly colour: string;
  readonly opacity: number;
  readonly imageOpacity: number;
  /** It takes away what lies under it in this layer: the paper shows, and a picture to draw over. */
  readonly cuts?: true;
}

/** Sheets are tinted as their parts are, metal is grey, and an opening is a hole in both. */
export function fillOf({ kind, line }: SceneLine, project: Project, paint: Paint): PlanFill | undefined {
  if (kind === "opening") return { colour: paint.sheet, opacity: 1, imageOpacity: 1, cuts: true };
  if (kind === "plate") return { colour: paint.pencil, opacity: 0.3, imageOpacity: 0.12 };
  if ((kind !== "section" && kind !== "transition") || line.of !== "item") return undefined;
  const colour = paint.tints[hatchOfItem(project, line.itemId) - 1];
  return colour === undefined ? undefined : { colour, opacity: 0.35, imageOpacity: 0.14 };
}

export const Fill = memo(function Fill({
  line,
  transform,
  colour,
  opacity,
  imageOpacity,
  cuts,
  mirrored,
}: Drawn & Partial<PlanFill> & { readonly mirrored: boolean }) {
  if (colour === undefined || line.broken) return null;
  const points = pointsOfLine(line);
  const shared = {
    closed: true,
    fill: colour,
    ...(cuts && { globalCompositeOperation: "destination-out" as const }),
  };
  return (
    <>
      <Line points={linePx(transform, points)} opacity={opacity ?? 1} {...shared} />
      {mirrored ? (
        <Line points={linePx(transform, imageOf(points))} opacity={imageOpacity ?? 1} {...shared} />
      ) : null}
    </>
  );
});
