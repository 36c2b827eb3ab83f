import { at, formatNumber, MINUS } from "../../../core/foundation/index.ts";
import type { LieLine, LieStation } from "../../../core/jig/index.ts";
import { boundsOf, fitScale, pathOf, type Scale, type Spot } from "../../drawings/index.ts";
import { allStations, lieBands } from "./lie-bands.ts";

/** What stands off is drawn larger than it is, by so much that the tolerance is seen. */
const TOLERANCE_PX = 10;
const MOST_TIMES = 40;
const STRIP_PX = 22;
/** A number on the strip needs so much room. */
const NUMBER_PX = 34;

interface LiePictureProps {
  readonly line: LieLine;
  readonly toleranceMm: number;
  readonly widthPx: number;
}

/** A line over the foam from the side: as drawn, as it lies (larger than it is), its ribs, and a strip of figures below. */
export function LiePicture({ line, toleranceMm, widthPx }: LiePictureProps) {
  const all = allStations(line);
  const drawn = all.map(({ alongMm, heightMm }): Spot => [alongMm, heightMm]);
  const bounds = boundsOf([...drawn, ...drawn.map(([along]): Spot => [along, 0])]);
  if (!bounds) return null;
  const scale = fitScale(bounds, { widthPx, heightPx: 240, marginPx: 40 });
  const times = Math.max(
    1,
    Math.min(MOST_TIMES, Math.round(TOLERANCE_PX / (toleranceMm * scale.pixelsPerMm))),
  );
  const lyingAt = ({ alongMm, heightMm, errorMm }: LieStation): Spot => [alongMm, heightMm + times * errorMm];
  const heightPx = scale.heightPx + STRIP_PX + 36;
  return (
    <svg
      width={scale.widthPx}
      height={heightPx}
      role="img"
      aria-label={`${line.partId} on its ribs, from the side`}
    >
      <Ribs line={line} scale={scale} />
      <path className="derived" d={pathOf(drawn, scale, "open")} />
      <path className="lie-foam" d={pathOf(all.map(lyingAt), scale, "open")} />
      <path className="lie-without" d={pathOf(line.without.map(lyingAt), scale, "open")} />
      <TrimLines line={line} scale={scale} />
      <text className="lie-note" x={40} y={16}>
        {`as drawn in pencil, as it lies ${times === 1 ? "at its size" : `${times} times as far off`}`}
      </text>
      {line.without.length > 0 ? (
        <text className="lie-note" x={40} y={32}>
          dashed, if it ended at the trim line
        </text>
      ) : null}
      <Strip line={line} scale={scale} toleranceMm={toleranceMm} topPx={scale.heightPx} />
    </svg>
  );
}

/** Where foam that runs past is trimmed off after the first skin. */
function TrimLines({ line, scale }: { readonly line: LieLine; readonly scale: Scale }) {
  const [first, last] = [at(line.stations, 0), at(line.stations, -1)];
  const ends = [
    ...(line.past.some(({ alongMm }) => alongMm < first.alongMm) ? [first] : []),
    ...(line.past.some(({ alongMm }) => alongMm > last.alongMm) ? [last] : []),
  ];
  return ends.map(({ alongMm, heightMm }) => {
    const [x, y] = scale.toPx([alongMm, heightMm]);
    return (
      <g key={alongMm} data-testid="lie-trim">
        <line className="lie-trim" x1={x} x2={x} y1={y - 18} y2={y + 12} />
        <text className="lie-note" x={x} y={y - 22} textAnchor="middle">
          trim
        </text>
      </g>
    );
  });
}

function Ribs({ line, scale }: { readonly line: LieLine; readonly scale: Scale }) {
  let lastPx = Number.NEGATIVE_INFINITY;
  return line.ribIds.map((id, i) => {
    const alongMm = at(line.ribsMm, i);
    const [x, top] = scale.toPx([alongMm, heightAt(allStations(line), alongMm)]);
    const [, foot] = scale.toPx([alongMm, 0]);
    const hasRoom = x - lastPx > NUMBER_PX;
    if (hasRoom) lastPx = x;
    return (
      <g key={id} data-testid={`lie-rib-${id}`}>
        <line className="lie-rib" x1={x} x2={x} y1={foot} y2={top} />
        {hasRoom ? (
          <text className="code" x={x} y={foot + 16} textAnchor="middle">
            {id}
          </text>
        ) : null}
      </g>
    );
  });
}

const heightAt = (stations: readonly LieStation[], alongMm: number): number =>
  stations.reduce((best, one) =>
    Math.abs(one.alongMm - alongMm) < Math.abs(best.alongMm - alongMm) ? one : best,
  ).heightMm;

interface StripProps {
  readonly line: LieLine;
  readonly scale: Scale;
  readonly toleranceMm: number;
  readonly topPx: number;
}

/** How far off the foam lies, as depth of colour, and the worst of each stretch as a number; over the tolerance it is framed. */
function Strip({ line, scale, toleranceMm, topPx }: StripProps) {
  return (
    <g className="lie-strip" data-testid="lie-strip">
      {line.stations.slice(1).map((station, i) => {
        const before = at(line.stations, i);
        const [x] = scale.toPx([before.alongMm, 0]);
        const [to] = scale.toPx([station.alongMm, 0]);
        const offMm = (Math.abs(before.errorMm) + Math.abs(station.errorMm)) / 2;
        const share = Math.round(Math.min(1, offMm / toleranceMm) * 100);
        const fill = `color-mix(in oklab, var(--mark) ${share}%, var(--sheet))`;
        return (
          <rect
            key={station.alongMm}
            x={x}
            width={to - x + 0.5}
            y={topPx}
            height={STRIP_PX}
            style={{ fill }}
          />
        );
      })}
      {lieBands(line).map(({ fromMm, toMm, worst }) => {
        const [x] = scale.toPx([fromMm, 0]);
        const [to] = scale.toPx([toMm, 0]);
        const isOver = Math.abs(worst.errorMm) > toleranceMm;
        return (
          <g key={fromMm} data-over={isOver || undefined}>
            <rect className="lie-band" x={x} width={to - x} y={topPx} height={STRIP_PX} />
            {to - x > NUMBER_PX || isOver ? (
              <text x={(x + to) / 2} y={topPx + STRIP_PX + 16} textAnchor="middle">
                {signed(worst.errorMm)}
              </text>
            ) : null}
          </g>
        );
      })}
      <text className="lie-note" x={40} y={topPx + STRIP_PX + 32}>
        {`mm off, above is plus; full colour at ${formatNumber(toleranceMm, 1)} mm and more`}
      </text>
    </g>
  );
}

function signed(mm: number): string {
  const size = formatNumber(Math.abs(mm), 1);
  if (size === "0.0") return size;
  return mm < 0 ? `${MINUS}${size}` : `+${size}`;
}
