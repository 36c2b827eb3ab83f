import { memo } from "react";
import { Group, Line, Text } from "react-konva";
import { pointOnPiece } from "../../core/curves/index.ts";
import type { Design } from "../../core/design.ts";
import type { Vec2 } from "../../core/foundation/index.ts";
import type { LyingSheet } from "../../core/surfaces/index.ts";
import { useLengths } from "../controls/index.ts";
import { hatchOfItem } from "../drawings/index.ts";
import type { Lengths } from "../lengths/index.ts";
import { type CrossSection, type CutSheet, crossSection } from "./cross-section.ts";
import { linePx } from "./draw-line.ts";
import { extentOf } from "./extents.ts";
import { GroundLine } from "./GroundLine.tsx";
import type { Paint } from "./paint.ts";
import { pens, sizes } from "./pens.ts";
import { type Box, type Extent, sectionTransform, type Transform, toPx } from "./viewport.ts";

/** Foam and skins are seldom thicker. */
const THICKEST_MM = 12;

interface SectionDrawingProps {
  readonly design: Design;
  readonly xMm: number;
  readonly box: Box;
  readonly heightFactor: number;
  readonly paint: Paint;
}

/** The tray cut at the hairline, seen from the rear: air side in ink, foam, skins and fences, with numbers. */
export function SectionDrawing({ design, xMm, box, heightFactor, paint }: SectionDrawingProps) {
  const cut = crossSection(design, xMm);
  const transform = sectionTransform(box, extentOfTray(design), heightFactor);
  const tint = (itemId: string) => paint.tints[hatchOfItem(design.project, itemId) - 1] ?? paint.rule;
  const shared = { transform, paint };
  return (
    <>
      <GroundLine transform={transform} box={box} paint={paint} />
      {cut.fences.map((fence) => (
        <Line
          key={fence.key}
          points={linePx(transform, fence.corners)}
          closed
          fill={tint(fence.itemId)}
          stroke={paint.ink}
          strokeWidth={pens.derived}
        />
      ))}
      {cut.sheets.map((sheet) => (
        <SheetCut key={sheet.key} {...shared} sheet={sheet} tint={tint(sheet.itemId)} />
      ))}
      {cut.metal.map(({ key, outline }) => (
        <Line
          key={key}
          points={linePx(transform, outline)}
          closed
          fill={paint.pencil}
          stroke={paint.ink}
          strokeWidth={pens.derived}
        />
      ))}
      <Numbers cut={cut} box={box} {...shared} />
      {cut.sheets.length === 0 && design.sheets.length > 0 ? <CutsNothing box={box} paint={paint} /> : null}
    </>
  );
}

/** Says why the view is empty, and what fills it. */
const CutsNothing = ({ box, paint }: { readonly box: Box; readonly paint: Paint }) => (
  <Text
    text="The hairline cuts nothing here. Drag it along the ruler over the tray."
    x={box.leftPx + 16}
    y={box.topPx + box.heightPx / 3}
    width={box.widthPx - 32}
    align="center"
    fontFamily={paint.sans}
    fontSize={sizes.label}
    lineHeight={1.4}
    fill={paint.pencil}
  />
);

const SheetCut = memo(function SheetCut({
  sheet,
  transform,
  tint,
  paint,
}: {
  readonly sheet: CutSheet;
  readonly transform: Transform;
  readonly tint: string;
  readonly paint: Paint;
}) {
  const foam = [...sheet.coreLower, ...[...sheet.coreUpper].reverse()];
  return (
    <>
      <Line points={linePx(transform, foam)} closed fill={tint} />
      <Line points={linePx(transform, sheet.coreUpper)} stroke={paint.pencil} strokeWidth={pens.thin} />
      <Line points={linePx(transform, sheet.air)} stroke={paint.ink} strokeWidth={pens.outline} />
    </>
  );
});

/** Half widths and heights above the ground, on the right half where nothing hides them. */
function Numbers({
  cut,
  box,
  transform,
  paint,
}: {
  readonly cut: CrossSection;
  readonly box: Box;
  readonly transform: Transform;
  readonly paint: Paint;
}) {
  const lengths = useLengths();
  const spots = withoutCrowd(numberedSpots(cut, lengths), transform);
  // Numbers of the air side stand over the upper face, so that they do not lie on the foam.
  const clearPx = 20 + THICKEST_MM * transform.pxPerMmUp;
  const widestMm = Math.max(
    0,
    ...cut.sheets.flatMap((sheet) => sheet.air.map((point) => Math.abs(point[0]))),
  );
  return (
    <>
      {spots.map(({ at, text, stands }) => {
        const [xPx, yPx] = toPx(transform, at);
        const leftPx = leftOfNumber(xPx, stands, box);
        return (
          <Text
            key={`${text}/${xPx}`}
            x={leftPx}
            y={stands === "over" ? yPx - clearPx : yPx - 13}
            width={NUMBER_PX}
            align={stands === "over" ? "center" : stands === "right" ? "left" : "right"}
            text={text}
            fontFamily={paint.mono}
            fontSize={sizes.caption}
            fill={paint.ink}
            stroke={paint.sheet}
            strokeWidth={3}
            fillAfterStrokeEnabled
          />
        );
      })}
      {widestMm > 0 ? <HalfWidth yMm={widestMm} box={box} transform={transform} paint={paint} /> : null}
    </>
  );
}

const NUMBER_PX = 72;

function leftOfNumber(xPx: number, stands: Spot["stands"], box: Box): number {
  if (stands === "right") return xPx + 6;
  if (stands === "left") return xPx - 6 - NUMBER_PX;
  return Math.min(xPx - NUMBER_PX / 2, box.leftPx + box.widthPx - NUMBER_PX - 4);
}

interface Spot {
  readonly at: Vec2;
  readonly text: string;
  /** A sheet's number stands over its edge; a fence's beside its foot, outward on the outermost. */
  readonly stands: "over" | "left" | "right";
}

/** The air side's height at both ends of each sheet, and the fences' lower edges. */
function numberedSpots({ sheets, fences }: CrossSection, { show }: Lengths): readonly Spot[] {
  const onRight = sheets.filter((sheet) => sheet.hand !== "left");
  const ends = onRight.flatMap((sheet) =>
    [sheet.air[0], sheet.air.at(-1)].flatMap((at): readonly Spot[] =>
      at && at[0] >= -0.1 ? [{ at, text: show(at[1]), stands: "over" }] : [],
    ),
  );
  const onRightHand = fences.filter((fence) => fence.hand !== "left");
  const outermostMm = Math.max(...onRightHand.map((fence) => fence.yMm));
  const lower = onRightHand.map(
    (fence): Spot => ({
      at: [fence.yMm, fence.finishedZMm],
      text: show(fence.finishedZMm),
      stands: fence.yMm === outermostMm ? "right" : "left",
    }),
  );
  return [...withoutRepeats(ends), ...lower];
}

/** Numbers over the sheets that would run into the one before are left out. */
function withoutCrowd(spots: readonly Spot[], transform: Transform): readonly Spot[] {
  const kept: Spot[] = [];
  for (const spot of spots) {
    const isCrowded = kept.some(
      (other) =>
        other.stands === "over" &&
        spot.stands === "over" &&
        Math.abs(other.at[0] - spot.at[0]) * transform.pxPerMmAcross < LEAST_STEP_PX &&
        Math.abs(other.at[1] - spot.at[1]) * transform.pxPerMmUp < LEAST_RISE_PX,
    );
    if (!isCrowded) kept.push(spot);
  }
  return kept;
}

const LEAST_STEP_PX = 42;
const LEAST_RISE_PX = 12;

/** Where two sheets meet at one height the number stands once. */
const withoutRepeats = (spots: readonly Spot[]): readonly Spot[] =>
  spots.filter(
    (spot, index) =>
      !spots
        .slice(0, index)
        .some((other) => other.text === spot.text && Math.abs(other.at[0] - spot.at[0]) < 1),
  );

function HalfWidth({
  yMm,
  box,
  transform,
  paint,
}: {
  readonly yMm: number;
  readonly box: Box;
  readonly transform: Transform;
  readonly paint: Paint;
}) {
  const { show } = useLengths();
  const [fromPx] = toPx(transform, [0, 0]);
  const [toPxX] = toPx(transform, [yMm, 0]);
  const yPx = Math.min(toPx(transform, [0, 0])[1] + 24, box.topPx + box.heightPx - 12);
  return (
    <Group>
      <Line points={[fromPx, yPx, toPxX, yPx]} stroke={paint.pencil} strokeWidth={pens.thin} />
      <Line points={[fromPx, yPx - 5, fromPx, yPx + 5]} stroke={paint.pencil} strokeWidth={pens.thin} />
      <Line points={[toPxX, yPx - 5, toPxX, yPx + 5]} stroke={paint.pencil} strokeWidth={pens.thin} />
      <Text
        text={show(yMm)}
        x={fromPx}
        y={yPx - 15}
        width={toPxX - fromPx}
        align="center"
        fontFamily={paint.mono}
        fontSize={sizes.caption}
        fill={paint.pencil}
      />
    </Group>
  );
}

const heightsOf = (sheet: LyingSheet): readonly number[] =>
  sheet.kind === "section"
    ? sheet.chart.pieces.flatMap(({ piece }) => [0, 0.5, 1].map((t) => pointOnPiece(piece, t)[1]))
    : sheet.rulings.flatMap(({ from, to }) => [from.z, to.z]);

/** The same box at every station, so that the section keeps its scale while the hairline moves. */
function extentOfTray(design: Design): Extent {
  const points: Vec2[] = [];
  for (const sheet of design.sheets) {
    if (sheet.kind === "fence") continue;
    const ys = sheet.planLoops.flatMap((loop) => loop.map((point) => point.y));
    const widest = Math.max(0, ...ys.map(Math.abs));
    points.push([-widest, 0], [widest, Math.max(...heightsOf(sheet))]);
  }
  for (const { wings, zMm } of design.plates) {
    const corners = wings.flatMap((wing) => wing.upperFace);
    points.push([0, zMm], ...corners.map(({ y, z }): Vec2 => [y, z]));
  }
  return extentOf(points) ?? { left: -600, right: 600, bottom: 0, top: 100 };
}
