import { memo } from "react";
import { Group, Line } from "react-konva";
import type { Design } from "../../core/design.ts";
import type { Vec2 } from "../../core/foundation/index.ts";
import type { FoldedPlate } from "../../core/plates/index.ts";
import type { Project } from "../../core/project/index.ts";
import type { DrawnRuling } from "../../core/surfaces/index.ts";
import { codeOfItem, codeOfOpening, hatchOfItem } from "../drawings/index.ts";
import {
  chosenEdgeId,
  chosenOwnersOf,
  inView,
  isSameLine,
  lineKey,
  lineOfSelection,
  ownerKey,
  type Scene,
  type SceneLine,
  type Selection,
} from "../tools/index.ts";
import { clearSpot } from "./clear-spot.ts";
import { imageOf, labelSpot, linePx, pointsOfLine } from "./draw-line.ts";
import { extentOf } from "./extents.ts";
import { Letters } from "./Letters.tsx";
import { PickedEdge } from "./PickedEdge.tsx";
import type { Paint } from "./paint.ts";
import { dashes, pens, sizes } from "./pens.ts";
import { type Box, type Transform, toPx } from "./viewport.ts";

interface PlanDrawingProps {
  readonly project: Project;
  readonly scene: Scene;
  readonly design: Design | undefined;
  readonly selection: Selection | undefined;
  readonly transform: Transform;
  readonly box: Box;
  readonly paint: Paint;
}

/** The plan from above: sheets with their tints, fences hidden under them, the mirror image in pencil. */
export function PlanDrawing(props: PlanDrawingProps) {
  const { project, scene, design, selection, transform, box, paint } = props;
  const lines = scene.lines.filter((line) => line.view === "plan");
  const chosen = new Set(chosenOwnersOf(selection));
  const edgeLine = lineOfSelection(selection);
  const sorted = [...lines].sort((a, b) => order(a, chosen) - order(b, chosen));
  const shared = { transform, paint };
  return (
    <>
      {lines.toSorted(byLayer).map((line) => (
        <Fill
          key={lineKey(line.line)}
          {...shared}
          line={line}
          {...fillOf(line, project, paint)}
          mirrored={scene.mirrored && !line.isWhole}
        />
      ))}
      {design?.sheets.map((sheet) =>
        sheet.kind === "transition" ? <Rulings key={sheet.id} {...shared} rulings={sheet.rulings} /> : null,
      )}
      {design?.plates.map((plate) => (
        <Wings key={plate.id} {...shared} plate={plate} />
      ))}
      <CentreLine transform={transform} box={box} paint={paint} />
      {scene.mirrored
        ? sorted.map((line) =>
            line.isWhole ? null : <Image key={lineKey(line.line)} {...shared} line={line} />,
          )
        : null}
      {sorted.map((line) => {
        const hasEdge = edgeLine !== undefined && isSameLine(line.line, inView(edgeLine, "plan"));
        return (
          <Outline
            key={lineKey(line.line)}
            {...shared}
            line={line}
            isChosen={chosen.has(ownerKey(line.line))}
            edgeId={hasEdge ? chosenEdgeId(selection) : undefined}
          />
        );
      })}
      {sorted.map((line) => {
        const [spotX, spotY] = spotOf(line, lines);
        return (
          <Label
            key={lineKey(line.line)}
            {...shared}
            {...{ line, spotX, spotY }}
            code={codeOf(line, project)}
          />
        );
      })}
    </>
  );
}

/** Fills lie as the things do, whatever is chosen: openings cut through all of them. */
const byLayer = (a: SceneLine, b: SceneLine): number => LAYERS[a.kind] - LAYERS[b.kind];

/** Sheets under plates and fences, these under openings and free edges, what is chosen on top. */
const order = (line: SceneLine, chosen: ReadonlySet<string>): number =>
  LAYERS[line.kind] + (chosen.has(ownerKey(line.line)) ? 10 : 0);

const LAYERS: Readonly<Record<SceneLine["kind"], number>> = {
  section: 0,
  transition: 1,
  plate: 2,
  fence: 3,
  opening: 4,
  "free-edge": 5,
  profile: 5,
  "lower-edge": 5,
};

interface Drawn {
  readonly line: SceneLine;
  readonly transform: Transform;
  readonly paint: Paint;
}

interface PlanFill {
  readonly colour: string;
  readonly opacity: number;
  readonly imageOpacity: number;
  /** It takes away what lies under it in this layer: the paper shows, and a picture to draw over. */
  readonly cuts?: true;
}

/** Sheets are tinted as their parts are, metal is grey, and an opening is a hole in both. */
function fillOf({ kind, line }: SceneLine, project: Project, paint: Paint): PlanFill | undefined {
  if (kind === "opening") return { colour: paint.sheet, opacity: 1, imageOpacity: 1, cuts: true };
  if (kind === "plate") return { colour: paint.pencil, opacity: 0.3, imageOpacity: 0.12 };
  if ((kind !== "section" && kind !== "transition") || line.of !== "item") return undefined;
  const colour = paint.tints[hatchOfItem(project, line.itemId) - 1];
  return colour === undefined ? undefined : { colour, opacity: 0.35, imageOpacity: 0.14 };
}

/** The letter and number that an item or opening goes by. */
function codeOf({ line }: SceneLine, project: Project): string {
  if (line.of === "opening") {
    const opening = project.openings.find((other) => other.id === line.openingId);
    return opening ? codeOfOpening(opening) : "";
  }
  const item = line.of === "item" ? project.items.find((other) => other.id === line.itemId) : undefined;
  return item ? codeOfItem(item) : "";
}

/** Where a line is named: before its front end if it is open, else inside it, clear of what lies on it. */
function spotOf(line: SceneLine, lines: readonly SceneLine[]): Vec2 {
  const points = pointsOfLine(line);
  if (!line.closed || points.length === 0) return points[0] ?? [0, 0];
  const within = lines.filter(
    (other) => other !== line && (other.kind === "opening" || other.kind === "plate"),
  );
  return line.kind === "section" || line.kind === "transition"
    ? clearSpot(points, within.map(pointsOfLine))
    : labelSpot(points);
}

const Fill = memo(function Fill({
  line,
  transform,
  colour,
  opacity,
  imageOpacity,
  cuts,
  mirrored,
}: Drawn & Partial<PlanFill> & { readonly mirrored: boolean }) {
  if (colour === undefined || line.broken) return null;
  const points = pointsOfLine(line);
  const shared = {
    closed: true,
    fill: colour,
    ...(cuts && { globalCompositeOperation: "destination-out" as const }),
  };
  return (
    <>
      <Line points={linePx(transform, points)} opacity={opacity ?? 1} {...shared} />
      {mirrored ? (
        <Line points={linePx(transform, imageOf(points))} opacity={imageOpacity ?? 1} {...shared} />
      ) : null}
    </>
  );
});

/** How a transition bends: straight lines of the sheet from edge to edge, thin and in pencil. */
const Rulings = memo(function Rulings({
  rulings,
  transform,
  paint,
}: Omit<Drawn, "line"> & { readonly rulings: readonly DrawnRuling[] }) {
  return rulings.map(({ sMm, from, to }) => (
    <Line
      key={sMm}
      points={linePx(transform, [
        [from.x, from.y],
        [to.x, to.y],
      ])}
      stroke={paint.pencil}
      strokeWidth={pens.thin}
      opacity={0.6}
    />
  ));
});

/** The wings of a folded plate as the plan sees them, on every hand. */
const Wings = memo(function Wings({
  plate,
  transform,
  paint,
}: Omit<Drawn, "line"> & { readonly plate: FoldedPlate }) {
  const hands = plate.parts.map(({ hand }) => hand);
  return plate.wings.flatMap(({ id, airFace }) => {
    const points = airFace.map(({ x, y }): Vec2 => [x, y]);
    return hands.map((hand) => (
      <Line
        key={`${id}/${hand}`}
        points={linePx(transform, hand === "left" ? imageOf(points) : points)}
        closed
        stroke={paint.pencil}
        strokeWidth={pens.derived}
        fill={paint.pencil}
        perfectDrawEnabled={false}
        opacity={hand === "left" ? 0.3 : 0.5}
      />
    ));
  });
});

const Image = memo(function Image({ line, transform, paint }: Drawn) {
  return (
    <Line
      points={linePx(transform, imageOf(pointsOfLine(line)))}
      stroke={paint.pencil}
      strokeWidth={pens.derived}
      {...(line.kind === "fence" ? { dash: [...dashes.hidden] } : {})}
    />
  );
});

const Outline = memo(function Outline({
  line,
  transform,
  paint,
  isChosen,
  edgeId,
}: Drawn & { readonly isChosen: boolean; readonly edgeId: string | undefined }) {
  const colour = line.broken ? paint.stop : isChosen ? paint.mark : paint.ink;
  const dash = line.broken ? dashes.draft : line.kind === "fence" ? dashes.hidden : undefined;
  const picked = line.edges.find((edge) => edge.edgeId === edgeId);
  return (
    <>
      <Line
        points={linePx(transform, pointsOfLine(line))}
        stroke={colour}
        strokeWidth={isChosen ? pens.chosen : pens.outline}
        lineCap="round"
        lineJoin="round"
        {...(dash ? { dash: [...dash] } : {})}
      />
      {picked ? <PickedEdge edge={picked} transform={transform} paint={paint} /> : null}
    </>
  );
});

const Label = memo(function Label({
  line,
  transform,
  paint,
  code,
  spotX,
  spotY,
}: Drawn & { readonly code: string; readonly spotX: number; readonly spotY: number }) {
  const points = pointsOfLine(line);
  if (code === "" || points.length < 2) return null;
  const [xPx, yPx] = toPx(transform, [spotX, spotY]);
  if (!Number.isFinite(xPx) || !Number.isFinite(yPx)) return null;
  const isNamed = hasRoom(transform, points);
  // A fence is named before its front end, a sheet in its middle.
  return line.closed ? (
    <Group x={xPx} y={yPx - (isNamed ? 16 : sizes.code / 2)}>
      <Letters {...lettersOf(code, paint)} x={-100} width={200} align="center" />
      {isNamed ? (
        <Letters
          text={line.name}
          x={-100}
          y={18}
          width={200}
          align="center"
          fontFamily={paint.sans}
          fontSize={sizes.label}
          fill={paint.pencil}
          {...haloOf(paint)}
        />
      ) : null}
    </Group>
  ) : (
    <Letters {...lettersOf(code, paint)} x={xPx - 50} y={yPx - sizes.code / 2} width={40} align="right" />
  );
});

const lettersOf = (code: string, paint: Paint) => ({
  text: code,
  fontFamily: paint.mono,
  fontSize: sizes.code,
  fill: paint.ink,
  ...haloOf(paint),
});

/** Letters stand clear of the lines that run under them. */
const haloOf = (paint: Paint) => ({ stroke: paint.sheet, strokeWidth: 2.5, fillAfterStrokeEnabled: true });

/** A name is written only where it does not hide the outline. */
function hasRoom(transform: Transform, points: readonly Vec2[]): boolean {
  const extent = extentOf(points);
  return (
    extent !== undefined &&
    (extent.right - extent.left) * transform.pxPerMmAcross > LEAST_NAME_PX &&
    (extent.top - extent.bottom) * transform.pxPerMmUp > LEAST_NAME_PX / 2
  );
}

const LEAST_NAME_PX = 110;

function CentreLine({ transform, box, paint }: Pick<PlanDrawingProps, "transform" | "box" | "paint">) {
  const yPx = Math.round(toPx(transform, [0, 0])[1]) + 0.5;
  return (
    <Line
      points={[box.leftPx, yPx, box.leftPx + box.widthPx, yPx]}
      stroke={paint.pencil}
      strokeWidth={pens.thin}
      dash={[...dashes.centre]}
    />
  );
}
