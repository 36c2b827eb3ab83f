import { memo } from "react";
import { Line } from "react-konva";
import type { Vec2 } from "../../core/foundation/index.ts";
import type { FoldedPlate } from "../../core/plates/index.ts";
import type { DrawnRuling } from "../../core/surfaces/index.ts";
import { imageOf, linePx, pointsOfLine } from "./draw-line.ts";
import { PickedEdge } from "./PickedEdge.tsx";

import type { Drawn } from "./PlanFill.tsx";
import { dashes, pens } from "./pens.ts";
import { type Box, toPx } from "./viewport.ts";

/** How a transition bends: straight lines of the sheet from edge to edge, thin and in pencil. */
export const Rulings = memo(function Rulings({
  rulings,
  transform,
  paint,
}: Omit<Drawn, "line"> & { readonly rulings: readonly DrawnRuling[] }) {
  return rulings.map(({ sMm, from, to }) => (
    <Line
      key={sMm}
      points={linePx(transform, [
        [from.x, from.y],
        [to.x, to.y],
      ])}
      stroke={paint.pencil}
      strokeWidth={pens.thin}
      opacity={0.6}
    />
  ));
});

/** The wings of a folded plate as the plan sees them, on every hand. */
export const Wings = memo(function Wings({
  plate,
  transform,
  paint,
}: Omit<Drawn, "line"> & { readonly plate: FoldedPlate }) {
  const hands = plate.parts.map(({ hand }) => hand);
  return plate.wings.flatMap(({ id, airFace }) => {
    const points = airFace.map(({ x, y }): Vec2 => [x, y]);
    return hands.map((hand) => (
      <Line
        key={`${id}/${hand}`}
        points={linePx(transform, hand === "left" ? imageOf(points) : points)}
        closed
        stroke={paint.pencil}
        strokeWidth={pens.derived}
        fill={paint.pencil}
        perfectDrawEnabled={false}
        opacity={hand === "left" ? 0.3 : 0.5}
      />
    ));
  });
});

export const Image = memo(function Image({ line, transform, paint }: Drawn) {
  return (
    <Line
      points={linePx(transform, imageOf(pointsOfLine(line)))}
      stroke={paint.pencil}
      strokeWidth={pens.derived}
      {...(line.kind === "fence" ? { dash: [...dashes.hidden] } : {})}
    />
  );
});

export const Outline = memo(function Outline({
  line,
  transform,
  paint,
  isChosen,
  edgeId,
}: Drawn & { readonly isChosen: boolean; readonly edgeId: string | undefined }) {
  const colour = line.broken ? paint.stop : isChosen ? paint.mark : paint.ink;
  const dash = line.broken ? dashes.draft : line.kind === "fence" ? dashes.hidden : undefined;
  const picked = line.edges.find((edge) => edge.edgeId === edgeId);
  return (
    <>
      <Line
        points={linePx(transform, pointsOfLine(line))}
        stroke={colour}
        strokeWidth={isChosen ? pens.chosen : pens.outline}
        lineCap="round"
        lineJoin="round"
        {...(dash ? { dash: [...dash] } : {})}
      />
      {picked ? <PickedEdge edge={picked} transform={transform} paint={paint} /> : null}
    </>
  );
});

export function CentreLine({ transform, box, paint }: Omit<Drawn, "line"> & { readonly box: Box }) {
  const yPx = Math.round(toPx(transform, [0, 0])[1]) + 0.5;
  return (
    <Line
      points={[box.leftPx, yPx, box.leftPx + box.widthPx, yPx]}
      stroke={paint.pencil}
      strokeWidth={pens.thin}
      dash={[...dashes.centre]}
    />
  );
}
