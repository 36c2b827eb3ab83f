import { formatAngle, formatMm } from "../../../core/foundation/index.ts";
import type { BendLine, PlatePart } from "../../../core/plates/index.ts";
import { useSize } from "../../controls/index.ts";
import { fitScale, flatSpot, loopsBounds, PlateFlat, type Scale } from "../../drawings/index.ts";

const MARGIN_PX = 44;
const MOST_HEIGHT_PX = 460;

interface PlateDrawingProps {
  readonly part: PlatePart;
}

/** The flat pattern of a plate drawn large, each bend with its words. */
export function PlateDrawing({ part }: PlateDrawingProps) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const bounds = loopsBounds(part.loops);
  const scale =
    bounds && widthPx > 0
      ? fitScale(bounds, { widthPx, heightPx: MOST_HEIGHT_PX, marginPx: MARGIN_PX })
      : undefined;
  return (
    <div ref={ref} className="part-drawing">
      {scale ? (
        <svg
          width={scale.widthPx}
          height={scale.heightPx}
          role="img"
          aria-label={`${part.id} laid flat, upper face toward you`}
          data-testid="plate-drawing"
        >
          <PlateFlat part={part} scale={scale} />
          {part.bends.map((bend) => (
            <BendWords key={bend.id} bend={bend} scale={scale} />
          ))}
        </svg>
      ) : null}
    </div>
  );
}

/** The words of a bend along its middle, on the base's side of it. */
function BendWords({ bend, scale }: { readonly bend: BendLine; readonly scale: Scale }) {
  const [from, to] = bend.baseTangent.map((point) => scale.toPx(flatSpot(point)));
  const [wing] = bend.wingTangent.map((point) => scale.toPx(flatSpot(point)));
  if (!from || !to || !wing) return null;
  const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
  const degrees = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  const isUpsideDown = Math.abs(degrees) > 90;
  const turned = isUpsideDown ? degrees - 180 : degrees;
  // The wing lies on one side of the line; the words go on the other.
  const side = (to[0] - from[0]) * (wing[1] - from[1]) - (to[1] - from[1]) * (wing[0] - from[0]);
  const isBelow = side > 0 !== isUpsideDown;
  const { direction, angleRad, insideRadiusMm } = bend.figures;
  return (
    <text
      className="bend-label"
      x={middle[0]}
      y={middle[1] + (isBelow ? -6 : 14)}
      textAnchor="middle"
      transform={`rotate(${turned} ${middle[0]} ${middle[1]})`}
    >
      {`${bend.name}: ${direction} ${formatAngle(angleRad)}, R ${formatMm(insideRadiusMm)}`}
    </text>
  );
}
