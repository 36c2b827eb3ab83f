import type { Design } from "../../../core/design.ts";
import type { MarkingTable } from "../../../core/marking/index.ts";
import { finishedLoops, type Part } from "../../../core/patterns/index.ts";
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
import { Bends, Slots } from "./BendsOfPart.tsx";
import { CutGrips } from "./CutGrips.tsx";
import { EdgeNumber } from "./EdgeNumber.tsx";
import { Forward, Marks, Stations, stationInterval } from "./PartMarks.tsx";

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
  const bounds = loopsBounds(finishedLoops(props.part));
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
      {part.finished && <path className="finished-edge" d={loopsPath(part.finished, scale)} />}
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
