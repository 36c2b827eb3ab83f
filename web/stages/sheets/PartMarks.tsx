import type { Design } from "../../../core/design.ts";
import { formatNumber } from "../../../core/foundation/index.ts";
import type { MarkingTable } from "../../../core/marking/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { Bounds, Scale } from "../../drawings/index.ts";

/** Stations as the marking out has them, or the next coarser step that leaves room for the numbers. */
export function stationInterval(design: Design, scale: Scale): number {
  const { intervalMm } = design.project.marking;
  const leastPx = 44;
  const steps = [1, 2, 5, 10].map((factor) => factor * intervalMm);
  return steps.find((step) => step * scale.pixelsPerMm >= leastPx) ?? 10 * intervalMm;
}

interface StationsProps {
  readonly bounds: Bounds;
  readonly scale: Scale;
  readonly everyMm: number;
}

export function Stations({ bounds, scale, everyMm }: StationsProps) {
  if (!(everyMm > 0)) return null;
  const count = Math.min(200, Math.floor(bounds.right / everyMm) - Math.ceil(bounds.left / everyMm) + 1);
  const first = Math.ceil(bounds.left / everyMm);
  return (
    <g className="stations">
      {Array.from({ length: Math.max(0, count) }, (_, index) => {
        const u = (first + index) * everyMm;
        const [x, top] = scale.toPx([u, bounds.top]);
        const [, bottom] = scale.toPx([u, bounds.bottom]);
        return (
          <g key={u}>
            <line x1={x} x2={x} y1={top} y2={bottom + 10} />
            <text x={x} y={bottom + 24} textAnchor="middle">
              {formatNumber(u, 0)}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** The datum of a strip's marking out, and every mark of its table. */
export function Marks({ table, scale }: { readonly table: MarkingTable; readonly scale: Scale }) {
  const { u, v } = table.origin;
  const along = table.rows.map(({ alongMm }) => alongMm);
  const ends = [Math.min(0, ...along), Math.max(0, ...along)].map((mm) => scale.toPx([u + mm, v]));
  const [[x1, y1] = [0, 0], [x2, y2] = [0, 0]] = ends;
  return (
    <g className="marks" data-testid="marks">
      <line x1={x1} y1={y1} x2={x2} y2={y2} />
      {table.rows.flatMap(({ alongMm, offsetsMm }) =>
        offsetsMm.map((offsetMm, index) => {
          const [x, y] = scale.toPx([u + alongMm, v + offsetMm]);
          return <circle key={`${alongMm}/${index}`} cx={x} cy={y} r="2.5" />;
        }),
      )}
    </g>
  );
}

/** An arrow toward the front of the car, by the left edge of the drawing. */
export function Forward({
  part,
  bounds,
  scale,
}: {
  readonly part: Part;
  readonly bounds: Bounds;
  readonly scale: Scale;
}) {
  const isReversed = part.kind === "fence" && part.hand === "left";
  const [left, top] = scale.toPx([bounds.left, bounds.top]);
  const y = Math.max(14, top - 26);
  const points = isReversed ? `${left + 64} ${y}` : `${left} ${y}`;
  const tail = isReversed ? left : left + 64;
  const barb = isReversed ? -7 : 7;
  const tip = isReversed ? left + 64 : left;
  return (
    <g className="forward">
      <path d={`M${tail} ${y}L${points}M${tip + barb} ${y - 4}L${tip} ${y}L${tip + barb} ${y + 4}`} />
      <text x={left + 72} y={y + 4}>
        forward
      </text>
    </g>
  );
}
