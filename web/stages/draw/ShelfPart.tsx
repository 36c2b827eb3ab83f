import type { Part } from "../../../core/patterns/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { hatchFill, hatchOfItem, loopsBounds, loopsPath, type Scale, scaleOf } from "../../drawings/index.ts";

interface ShelfPartProps {
  readonly part: Part;
  readonly project: Project;
  readonly pixelsPerMm: number;
}

/** One flat part as the shelf shows it: its outline, and where it bends. */
export function ShelfPart({ part, project, pixelsPerMm }: ShelfPartProps) {
  const bounds = loopsBounds(part.loops);
  if (bounds === undefined) return null;
  const scale = scaleOf(bounds, pixelsPerMm, 2);
  return (
    <svg
      className="flat-part"
      width={scale.widthPx}
      height={scale.heightPx}
      role="img"
      aria-label={`${part.id} laid flat`}
      data-testid={`flat-${part.id}`}
    >
      <path
        d={loopsPath(part.loops, scale)}
        fill={hatchFill(hatchOfItem(project, part.itemId))}
        fillRule="evenodd"
      />
      <BendLimits part={part} scale={scale} />
      <path className="outline" d={loopsPath(part.loops, scale)} />
    </svg>
  );
}

/** Thin chain lines where a bend begins and ends. */
function BendLimits({ part, scale }: { readonly part: Part; readonly scale: Scale }) {
  const bounds = loopsBounds(part.loops);
  if (bounds === undefined) return null;
  const limits = part.zones.slice(1).map((zone) => zone.fromUMm);
  return (
    <g className="fold">
      {limits.map((u) => {
        const [x, top] = scale.toPx([u, bounds.top]);
        const [, bottom] = scale.toPx([u, bounds.bottom]);
        return <line key={u} x1={x} x2={x} y1={top} y2={bottom} />;
      })}
    </g>
  );
}
