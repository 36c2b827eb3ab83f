import type { BendVerdict } from "../../../core/bending/index.ts";
import type { Strip } from "../../../core/cutting/index.ts";
import { formatNumber } from "../../../core/foundation/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { Bounds, Scale } from "../../drawings/index.ts";

/** Every relief slot as wide as the blade. */
export function Slots({ strips, scale }: { readonly strips: readonly Strip[]; readonly scale: Scale }) {
  return (
    <g className="slots" data-testid="slots">
      {strips
        .flatMap(({ slots }) => slots ?? [])
        .flatMap(({ uMm, kerfMm, stretchesMm }) =>
          stretchesMm.map(([fromMm, toMm]) => {
            const [x, y] = scale.toPx([uMm, (fromMm + toMm) / 2]);
            const [, top] = scale.toPx([uMm, Math.max(fromMm, toMm)]);
            const widthPx = Math.max(1, kerfMm * scale.pixelsPerMm);
            const heightPx = 2 * Math.abs(y - top);
            return (
              <rect
                key={`${uMm}/${fromMm}`}
                x={x - widthPx / 2}
                y={y - heightPx / 2}
                width={widthPx}
                height={heightPx}
              />
            );
          }),
        )}
    </g>
  );
}

const WORDS_OF_BEND = {
  flat: "flat",
  "bend cold": "bend",
  "relief slots": "relief slots",
  planks: "planks",
  "not with this foam": "not with this foam",
} as const satisfies Record<BendVerdict, string>;

export function Bends({
  part,
  bounds,
  scale,
}: {
  readonly part: Part;
  readonly bounds: Bounds;
  readonly scale: Scale;
}) {
  const bent = part.zones.filter(({ leastRadiusMm }) => leastRadiusMm !== undefined);
  return (
    <g>
      {part.zones.map((zone, index) => {
        const [from, top] = scale.toPx([zone.fromUMm, bounds.top]);
        const [to, bottom] = scale.toPx([zone.toUMm, bounds.bottom]);
        return (
          <g key={zone.fromUMm}>
            {index > 0 ? <line className="fold" x1={from} x2={from} y1={top - 8} y2={bottom} /> : null}
            {zone.leastRadiusMm === undefined ? null : (
              <text
                className="bend-label"
                x={(from + to) / 2}
                // Below the stations, neighbours in two rows: bends may lie closer than their words are long.
                y={bottom + 42 + (bent.indexOf(zone) % 2) * 16}
                textAnchor="middle"
              >
                {`${WORDS_OF_BEND[zone.verdict]}, R ${formatNumber(zone.leastRadiusMm, 0)}`}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}
