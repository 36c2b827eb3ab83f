import type { FlatPoint } from "../../core/foundation/index.ts";
import type { PlatePart } from "../../core/plates/index.ts";
import { flatSpot, loopsPath } from "./flat-loops.ts";
import type { Scale } from "./scale.ts";

interface PlateFlatProps {
  readonly part: PlatePart;
  readonly scale: Scale;
}

/** A plate laid flat: its outline, and each bend as a chain line between the two where it begins and ends. */
export function PlateFlat({ part, scale }: PlateFlatProps) {
  const outline = loopsPath(part.loops, scale);
  return (
    <>
      <path className="metal" d={outline} fillRule="evenodd" />
      {part.bends.map(({ id, baseTangent, middle, wingTangent }) => (
        <g key={id}>
          <g className="rulings">
            <Chord ends={baseTangent} scale={scale} />
            <Chord ends={wingTangent} scale={scale} />
          </g>
          <g className="fold">
            <Chord ends={middle} scale={scale} />
          </g>
        </g>
      ))}
      <path className="outline" d={outline} />
    </>
  );
}

function Chord({
  ends: [from, to],
  scale,
}: {
  readonly ends: readonly [FlatPoint, FlatPoint];
  readonly scale: Scale;
}) {
  const [x1, y1] = scale.toPx(flatSpot(from));
  const [x2, y2] = scale.toPx(flatSpot(to));
  return <line x1={x1} y1={y1} x2={x2} y2={y2} />;
}
