import type { Design } from "../../../core/design.ts";
import { formatMm, formatNumber, type PlanPoint } from "../../../core/foundation/index.ts";
import type { Rib, RibSet } from "../../../core/jig/index.ts";
import { useSize } from "../../controls/index.ts";
import { boundsOf, fitScale, pathOf, type Scale, type Spot } from "../../drawings/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useView } from "../../stores/index.ts";
import { planPath, useStripShapes } from "../plan/index.ts";
import { type CodePlace, codePlaces } from "./code-places.ts";
import { useRibDrag } from "./use-rib-drag.ts";

const MARGIN_PX = 56;
const MOST_HEIGHT_PX = 420;

/** The baseboard from above: its edges, the ribs where they stand, and the tray over them in pencil. */
export function BaseboardPlan({
  design,
  set,
  chosenId,
}: {
  readonly design: Design;
  readonly set: RibSet;
  readonly chosenId: string;
}) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const { corners, attitude } = set.baseboard;
  const bounds = boundsOf(corners.map(({ x, y }) => [x, y] as const));
  return (
    <section aria-label="The baseboard from above">
      <header className="drawing-heading">
        <h2>
          <HelpMark term="baseboard">Baseboard</HelpMark> from above
        </h2>
        {bounds ? (
          <p className="pencil">
            {`${formatMm(bounds.right - bounds.left)} × ${formatMm(bounds.top - bounds.bottom)} mm, `}
            {attitude === "upright" ? "tray upright" : "tray upside down"}
          </p>
        ) : null}
      </header>
      <div ref={ref} className="part-drawing">
        {bounds && widthPx > 0 ? (
          <Picture
            design={design}
            set={set}
            chosenId={chosenId}
            scale={fitScale(bounds, { widthPx, heightPx: MOST_HEIGHT_PX, marginPx: MARGIN_PX })}
          />
        ) : null}
      </div>
    </section>
  );
}

interface PictureProps {
  readonly design: Design;
  readonly set: RibSet;
  readonly chosenId: string;
  readonly scale: Scale;
}

function Picture({ design, set, chosenId, scale }: PictureProps) {
  const shapes = useStripShapes(design);
  const [one, other] = set.baseboard.corners;
  const [left, top] = scale.toPx([Math.min(one.x, other.x), Math.max(one.y, other.y)]);
  const [right, bottom] = scale.toPx([Math.max(one.x, other.x), Math.min(one.y, other.y)]);
  const [, centre] = scale.toPx([0, 0]);
  const places = codePlaces(set, scale);
  const { pull, handlersOf } = useRibDrag(set.ribs, scale.pixelsPerMm);
  return (
    <svg
      width={scale.widthPx}
      height={scale.heightPx}
      aria-label="Baseboard from above"
      data-testid="baseboard"
    >
      <rect className="board-edge" x={left} y={top} width={right - left} height={bottom - top} />
      {set.baseboard.sheets.slice(1).map(({ id, corners: [a, b] }) => (
        <path key={id} className="derived" d={pathOf(boxOf(a, b), scale, "closed")} />
      ))}
      {set.baseboard.slots.map(({ ribId, corners: [a, b] }) => (
        <path key={`${ribId} ${a.x} ${a.y}`} className="outline" d={pathOf(boxOf(a, b), scale, "closed")} />
      ))}
      {shapes.map((shape) => (
        <path key={shape.id} className="derived" d={planPath(shape, scale)} />
      ))}
      <line className="centre-line" x1={left - 24} x2={right + 24} y1={centre} y2={centre} />
      {set.ribs.map((rib) => (
        <RibMark
          key={rib.id}
          place={places.get(rib.id) ?? { code: [0, 0], number: [0, 0] }}
          rib={rib}
          set={set}
          scale={scale}
          isChosen={rib.id === chosenId}
          byMm={pull?.isPulled && pull.rib.id === rib.id ? pull.byMm : 0}
          handlers={rib.isOutboard ? {} : handlersOf(rib)}
        />
      ))}
    </svg>
  );
}

const boxOf = (a: PlanPoint, b: PlanPoint): readonly Spot[] => [
  [a.x, a.y],
  [b.x, a.y],
  [b.x, b.y],
  [a.x, b.y],
];

interface RibMarkProps {
  readonly place: CodePlace;
  readonly rib: Rib;
  readonly set: RibSet;
  readonly scale: Scale;
  readonly isChosen: boolean;
  /** How far it is pulled just now. */
  readonly byMm: number;
  readonly handlers: Partial<ReturnType<ReturnType<typeof useRibDrag>["handlersOf"]>>;
}

function RibMark({ place, rib, set, scale, isChosen, byMm, handlers }: RibMarkProps) {
  const select = useView((view) => view.select);
  const line = set.baseboard.lines.find(({ ribId }) => ribId === rib.id);
  if (line === undefined) return null;
  const from = scale.toPx([line.from.x, line.from.y]);
  const to = scale.toPx([line.to.x, line.to.y]);
  const widthPx = Math.max(1.5, rib.thicknessMm * scale.pixelsPerMm);
  const body = bodyShift(rib, widthPx / 2);
  const [[x, y], [numberX, numberY]] = [place.code, place.number];
  const ends = { x1: from[0], y1: from[1], x2: to[0], y2: to[1] };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the same choice is in the cutting list for keys
    <g
      className="rib-mark"
      data-chosen={isChosen}
      data-testid={`rib-mark-${rib.id}`}
      transform={
        rib.runs === "across"
          ? `translate(${byMm * scale.pixelsPerMm} 0)`
          : `translate(0 ${-byMm * scale.pixelsPerMm})`
      }
      {...handlers}
      onClick={() => select({ kind: "rib", ribId: rib.id })}
    >
      <title>{`${rib.id}, ${rib.runs} at ${formatMm(rib.atMm)} mm; ${rib.isOutboard ? "it stands as far out as the foam runs past" : "pull it to move it"}`}</title>
      <line
        className="rib-body"
        {...ends}
        transform={`translate(${body.right} ${body.down})`}
        strokeWidth={widthPx}
      />
      <line className="rib-station" {...ends} />
      <line className="hit" {...ends} />
      <text className="code" x={x} y={y} textAnchor={rib.runs === "across" ? "middle" : "start"}>
        {rib.id}
      </text>
      {rib.runs === "across" ? (
        <text className="station-number" x={numberX} y={numberY} textAnchor="middle">
          {formatNumber(rib.atMm + byMm, 0)}
        </text>
      ) : null}
    </g>
  );
}

/** The body of a rib lies on the other side of its station face. */
function bodyShift(rib: Rib, halfPx: number): { readonly right: number; readonly down: number } {
  switch (rib.stationFace) {
    case "front":
      return { right: halfPx, down: 0 };
    case "rear":
      return { right: -halfPx, down: 0 };
    case "left":
      return { right: 0, down: -halfPx };
    case "right":
      return { right: 0, down: halfPx };
  }
}
