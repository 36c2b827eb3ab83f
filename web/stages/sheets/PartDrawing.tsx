import type { BendVerdict } from "../../../core/bending/index.ts";
import type { Strip } from "../../../core/cutting/index.ts";
import type { Design } from "../../../core/design.ts";
import { distanceFlat, type FlatPoint, formatMm, formatNumber } from "../../../core/foundation/index.ts";
import type { MarkingTable } from "../../../core/marking/index.ts";
import type { FlatEdge, Part } from "../../../core/patterns/index.ts";
import { useSize } from "../../controls/index.ts";
import {
  type Bounds,
  FlatRulings,
  fitScale,
  flatSpot,
  hatchOfItem,
  loopsBounds,
  loopsPath,
  middleOf,
  partFill,
  pathOf,
  type Scale,
  widthOf,
} from "../../drawings/index.ts";
import { CutGrips } from "./CutGrips.tsx";

const MARGIN_PX = 64;
const MOST_HEIGHT_PX = 500;

interface PartDrawingProps {
  readonly part: Part;
  readonly design: Design;
  /** The edge that is pointed at in the table. */
  readonly edgeId: string | undefined;
  /** The marking out of the chosen strip. */
  readonly table: MarkingTable | undefined;
}

/** A part laid flat and drawn large: strips, bends, stations, numbered edges, and which way is forward. */
export function PartDrawing(props: PartDrawingProps) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const bounds = loopsBounds(props.part.loops);
  return (
    <div ref={ref} className="part-drawing">
      {bounds && widthPx > 0 ? (
        <Picture {...props} bounds={bounds} scale={scaleFor(bounds, widthPx)} />
      ) : null}
    </div>
  );
}

const scaleFor = (bounds: Bounds, widthPx: number): Scale =>
  fitScale(bounds, { widthPx, heightPx: MOST_HEIGHT_PX, marginPx: MARGIN_PX });

interface PictureProps extends PartDrawingProps {
  readonly bounds: Bounds;
  readonly scale: Scale;
}

function Picture({ part, design, edgeId, table, bounds, scale }: PictureProps) {
  const strips = design.strips.filter((strip) => strip.partId === part.id);
  const path = loopsPath(part.loops, scale);
  return (
    <svg
      width={scale.widthPx}
      height={scale.heightPx}
      role="group"
      aria-label={`${part.id} laid flat, ${part.faceShown} toward you`}
      data-testid="part-drawing"
    >
      <path d={path} {...partFill(part, hatchOfItem(design.project, part.itemId))} fillRule="evenodd" />
      <Stations bounds={bounds} scale={scale} everyMm={stationInterval(design, scale)} />
      {part.rulings.length > 0 ? (
        <FlatRulings rulings={part.rulings} scale={scale} />
      ) : (
        <Bends part={part} bounds={bounds} scale={scale} />
      )}
      <Slots strips={strips} scale={scale} />
      {strips.length > 1
        ? strips.map((strip) => <path key={strip.id} className="seam" d={loopsPath(strip.loops, scale)} />)
        : null}
      <path className="outline" d={path} />
      {table ? <Marks table={table} scale={scale} /> : null}
      {part.loops
        .flatMap((loop) => loop.edges)
        .filter((edge) => edge.edgeId === edgeId)
        .map((edge) => (
          <path key={edge.edgeId} className="pointed" d={pathOf(edge.points.map(flatSpot), scale, "open")} />
        ))}
      {part.loops
        .flatMap((loop) => loop.edges)
        .map((edge) => (
          <EdgeNumber key={edge.edgeId} edge={edge} part={part} scale={scale} />
        ))}
      {strips.length > 1
        ? strips.map((strip) => {
            const box = loopsBounds(strip.loops);
            if (!box) return null;
            return <StripLabel key={strip.id} id={strip.id} box={box} scale={scale} />;
          })
        : null}
      <CutGrips part={part} design={design} bounds={bounds} scale={scale} />
      <Forward part={part} bounds={bounds} scale={scale} />
    </svg>
  );
}

/** Width of a letter of a code. */
const LETTER_PX = 8;

/** The code in the middle of a strip; upright where the strip is too narrow for it. */
function StripLabel({
  id,
  box,
  scale,
}: {
  readonly id: string;
  readonly box: Bounds;
  readonly scale: Scale;
}) {
  const [x, y] = scale.toPx(middleOf(box));
  const fits = widthOf(box) * scale.pixelsPerMm > id.length * LETTER_PX;
  return (
    <text
      className="code strip-label"
      x={x}
      y={y}
      dominantBaseline="central"
      textAnchor="middle"
      transform={fits ? undefined : `rotate(-90 ${x} ${y})`}
    >
      {id}
    </text>
  );
}

/** Stations as the marking out has them, or the next coarser step that leaves room for the numbers. */
function stationInterval(design: Design, scale: Scale): number {
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

function Stations({ bounds, scale, everyMm }: StationsProps) {
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

/** Every relief slot as wide as the blade. */
function Slots({ strips, scale }: { readonly strips: readonly Strip[]; readonly scale: Scale }) {
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

function Bends({
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

/** The number of an edge in the table, just inside its middle. */
function EdgeNumber({
  edge,
  part,
  scale,
}: {
  readonly edge: FlatEdge;
  readonly part: Part;
  readonly scale: Scale;
}) {
  const number = part.edges.findIndex(({ edgeId }) => edgeId === edge.edgeId) + 1;
  const middle = halfwayAlong(edge.points);
  if (middle === undefined || number === 0) return null;
  const [x, y] = scale.toPx(flatSpot(middle));
  return (
    <g className="edge-mark">
      <title>{`Edge ${number}, ${edge.name}: ${formatMm(part.edges[number - 1]?.flatLengthMm ?? 0)} mm flat`}</title>
      {edge.role === "centre" ? (
        <path className="centre-line" d={pathOf(edge.points.map(flatSpot), scale, "open")} />
      ) : null}
      <circle cx={x} cy={y} r="9" />
      <text className="code" x={x} y={y + 4} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}

/** The place on a line that is as far from its start as from its end. */
function halfwayAlong(points: readonly FlatPoint[]): FlatPoint | undefined {
  const chords = points.slice(1).map((p, i) => distanceFlat(points[i] ?? p, p));
  let left = chords.reduce((sum, chord) => sum + chord, 0) / 2;
  for (const [i, chord] of chords.entries()) {
    const [from, to] = [points[i], points[i + 1]];
    if (from && to && left <= chord) {
      const t = chord === 0 ? 0 : left / chord;
      return { u: from.u + (to.u - from.u) * t, v: from.v + (to.v - from.v) * t };
    }
    left -= chord;
  }
  return points[0];
}

/** The datum of a strip's marking out, and every mark of its table. */
function Marks({ table, scale }: { readonly table: MarkingTable; readonly scale: Scale }) {
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
function Forward({
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
