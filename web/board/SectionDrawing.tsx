import { memo } from "react";
import { Group, Line } from "react-konva";
import type { Design } from "../../core/design.ts";
import { useLengths } from "../controls/index.ts";
import { hatchOfItem } from "../drawings/index.ts";
import { useDrawnSelection } from "../hand/index.ts";
import { chosenOwnersOf } from "../tools/index.ts";
import { type CrossSection, type CutSheet, crossSection } from "./cross-section.ts";
import { columnsUnder, LINE_PX, numbersOver } from "./cut-numbers.ts";
import { linePx } from "./draw-line.ts";
import { extentOfTray } from "./extent-of-tray.ts";
import { GroundLine } from "./GroundLine.tsx";
import { Letters } from "./Letters.tsx";
import type { Paint } from "./paint.ts";
import { pens, sizes } from "./pens.ts";
import { type Box, sectionTransform, type Transform, toPx } from "./viewport.ts";

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
  const owners = chosenOwnersOf(useDrawnSelection());
  const isChosen = (itemId: string) => owners.includes(`item/${itemId}`);
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
          stroke={isChosen(fence.itemId) ? paint.mark : paint.ink}
          strokeWidth={isChosen(fence.itemId) ? pens.chosen : pens.derived}
        />
      ))}
      {cut.sheets.map((sheet) => (
        <SheetCut
          key={sheet.key}
          {...shared}
          sheet={sheet}
          tint={tint(sheet.itemId)}
          isChosen={isChosen(sheet.itemId)}
        />
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
      <Numbers cut={cut} box={box} isChosen={isChosen} {...shared} />
      {cut.sheets.length === 0 && design.sheets.length > 0 ? <CutsNothing box={box} paint={paint} /> : null}
    </>
  );
}

/** Says why the view is empty, and what fills it. */
const CutsNothing = ({ box, paint }: { readonly box: Box; readonly paint: Paint }) => (
  <Letters
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
  isChosen,
}: {
  readonly isChosen: boolean;
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
      <Line
        points={linePx(transform, sheet.air)}
        stroke={isChosen ? paint.mark : paint.ink}
        strokeWidth={isChosen ? pens.chosen : pens.outline}
      />
    </>
  );
});

/** Heights over the cut, and under it where edges and fences are, on the right half where nothing hides them. */
function Numbers({
  isChosen,
  cut,
  box,
  transform,
  paint,
}: {
  readonly isChosen: (itemId: string) => boolean;
  readonly cut: CrossSection;
  readonly box: Box;
  readonly transform: Transform;
  readonly paint: Paint;
}) {
  const lengths = useLengths();
  return (
    <>
      {numbersOver(cut, isChosen, lengths, transform, box).map(({ text, leftPx, topPx, widthPx }) => (
        <Letters
          key={`${text}/${leftPx}/${topPx}`}
          x={leftPx}
          y={topPx}
          width={widthPx}
          align="center"
          text={text}
          wrap="none"
          fontFamily={paint.mono}
          fontSize={sizes.caption}
          fill={paint.ink}
          stroke={paint.sheet}
          strokeWidth={3}
          fillAfterStrokeEnabled
        />
      ))}
      <Columns cut={cut} box={box} transform={transform} paint={paint} />
    </>
  );
}

const COLUMN_PX = 90;
const TICK_PX = 5;

/** Along one line under the ground: how far from the centre line edges and fences are, and each fence's own numbers. */
function Columns({
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
  const [fromPx, groundPx] = toPx(transform, [0, 0]);
  const bottomPx = box.topPx + box.heightPx;
  const yPx = Math.min(groundPx + 20, bottomPx - 22);
  const mostLines = Math.floor((bottomPx - yPx - TICK_PX - 3) / LINE_PX);
  const columns = columnsUnder(cut, lengths, transform, mostLines);
  const outer = columns.at(-1);
  if (outer === undefined || outer.yMm === 0) return null;
  const [endPx] = toPx(transform, [outer.yMm, 0]);
  return (
    <Group>
      <Line points={[fromPx, yPx, endPx, yPx]} stroke={paint.pencil} strokeWidth={pens.thin} />
      {columns.map(({ yMm, lines }) => {
        const [xPx] = toPx(transform, [yMm, 0]);
        return (
          <Group key={yMm}>
            <Line
              points={[xPx, yPx - TICK_PX, xPx, yPx + TICK_PX]}
              stroke={paint.pencil}
              strokeWidth={pens.thin}
            />
            {lines.map((text, line) => (
              <Letters
                key={text}
                text={text}
                x={Math.min(xPx - COLUMN_PX / 2, box.leftPx + box.widthPx - COLUMN_PX)}
                y={yPx + TICK_PX + 3 + line * LINE_PX}
                width={COLUMN_PX}
                align="center"
                fontFamily={paint.mono}
                fontSize={sizes.caption}
                fill={line === 0 ? paint.pencil : paint.ink}
              />
            ))}
          </Group>
        );
      })}
    </Group>
  );
}
