import { memo } from "react";
import type { Part } from "../../../core/patterns/index.ts";
import {
  chordsAt,
  FlatRulings,
  loopsBounds,
  loopsPath,
  partFill,
  type Scale,
  scaleOf,
} from "../../drawings/index.ts";

interface ShelfPartProps {
  readonly part: Part;
  readonly hatch: number;
  readonly pixelsPerMm: number;
}

/** One flat part as the shelf shows it: its outline, and where it bends. Drawn again only when it has changed. */
export const ShelfPart = memo(function ShelfPart({ part, hatch, pixelsPerMm }: ShelfPartProps) {
  const bounds = loopsBounds(part.loops);
  if (bounds === undefined) return null;
  const scale = scaleOf(bounds, pixelsPerMm, 2);
  const outline = loopsPath(part.loops, scale);
  return (
    <svg
      className="flat-part"
      width={scale.widthPx}
      height={scale.heightPx}
      role="img"
      aria-label={`${part.id} laid flat`}
      data-testid={`flat-${part.id}`}
    >
      <path d={outline} {...partFill(part, hatch)} fillRule="evenodd" />
      {part.rulings.length > 0 ? (
        <FlatRulings rulings={part.rulings} scale={scale} />
      ) : (
        <BendLimits part={part} scale={scale} />
      )}
      <path className="outline" d={outline} />
    </svg>
  );
});

/** Thin chain lines where a bend begins and ends, from edge to edge of the part. */
function BendLimits({ part, scale }: { readonly part: Part; readonly scale: Scale }) {
  const limits = part.zones.slice(1).map((zone) => zone.fromUMm);
  return (
    <g className="fold">
      {limits.flatMap((u) =>
        chordsAt(part.loops, u).map(([from, to]) => {
          const [x, top] = scale.toPx([u, to]);
          const [, bottom] = scale.toPx([u, from]);
          return <line key={`${u}/${from}`} x1={x} x2={x} y1={top} y2={bottom} />;
        }),
      )}
    </g>
  );
}
