import { memo } from "react";
import type { PlatePart } from "../../../core/plates/index.ts";
import { loopsBounds, PlateFlat, scaleOf } from "../../drawings/index.ts";

interface ShelfPlateProps {
  readonly part: PlatePart;
  readonly pixelsPerMm: number;
}

/** One flat plate as the shelf shows it: its outline and its bends. */
export const ShelfPlate = memo(function ShelfPlate({ part, pixelsPerMm }: ShelfPlateProps) {
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
      <PlateFlat part={part} scale={scale} />
    </svg>
  );
});
