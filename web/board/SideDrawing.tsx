import { memo, useMemo } from "react";
import { Group, Line } from "react-konva";
import type { Design } from "../../core/design.ts";
import type { SpacePoint, Vec2 } from "../../core/foundation/index.ts";
import type { FoldedPlate } from "../../core/plates/index.ts";
import type { Project } from "../../core/project/index.ts";
import type { FenceSheet, SectionSheet, TransitionSheet } from "../../core/surfaces/index.ts";
import { hatchOfItem } from "../drawings/index.ts";
import {
  chosenEdgeId,
  inView,
  isSameLine,
  lineKey,
  lineOfSelection,
  ownerKey,
  type Scene,
  type SceneLine,
  type Selection,
} from "../tools/index.ts";
import { chosenOwners } from "./chosen-owners.ts";
import { linePx, pointsOfLine } from "./draw-line.ts";
import { edgesOfTransition } from "./edges-of-transition.ts";
import { fenceSilhouette } from "./fence-silhouette.ts";
import { Letters } from "./Letters.tsx";
import { PickedEdge } from "./PickedEdge.tsx";
import type { Paint } from "./paint.ts";
import { dashes, pens, sizes } from "./pens.ts";
import { sideSilhouette } from "./side-silhouette.ts";
import { type Transform, toPx } from "./viewport.ts";

interface SideDrawingProps {
  readonly project: Project;
  readonly scene: Scene;
  readonly design: Design | undefined;
  readonly selection: Selection | undefined;
  readonly transform: Transform;
  readonly paint: Paint;
}

/** The side view: profiles and lower edges as drawn, the fences that hang between them. */
export function SideDrawing(props: SideDrawingProps) {
  const { project, scene, design, selection, transform, paint } = props;
  const lines = scene.lines.filter((line) => line.view === "side");
  const chosen = chosenOwners(project, selection);
  const edgeLine = lineOfSelection(selection);
  const sorted = [...lines].sort((a, b) => Number(isIn(chosen, a)) - Number(isIn(chosen, b)));
  const sheets = design?.sheets ?? [];
  const tintOf = ({ itemId }: { readonly itemId: string }) =>
    paint.tints[hatchOfItem(project, itemId) - 1] ?? paint.rule;
  const isOf = ({ itemId }: { readonly itemId: string }) => chosen.includes(`item/${itemId}`);
  const shared = { transform, paint };
  return (
    <>
      {sheets.map((sheet) =>
        sheet.kind === "fence" ? (
          <FenceFoam key={sheet.id} sheet={sheet} tint={tintOf(sheet)} transform={transform} paint={paint} />
        ) : null,
      )}
      {sheets.map((sheet) =>
        sheet.kind === "section" ? (
          <SheetFoam key={sheet.id} sheet={sheet} tint={tintOf(sheet)} transform={transform} paint={paint} />
        ) : null,
      )}
      {sheets.map((sheet) =>
        sheet.kind === "transition" ? (
          <TransitionFoam
            key={sheet.id}
            {...shared}
            sheet={sheet}
            tint={tintOf(sheet)}
            isChosen={isOf(sheet)}
          />
        ) : null,
      )}
      {design?.plates.map((plate) => (
        <Metal key={plate.id} {...shared} plate={plate} isChosen={isOf(plate)} />
      ))}
      {sorted.map((line) => (
        <SideLine
          key={lineKey(line.line)}
          line={line}
          transform={transform}
          paint={paint}
          isChosen={isIn(chosen, line)}
          isNamed={isIn(chosen, line) && selection?.kind !== "several"}
          edgeId={
            edgeLine && isSameLine(line.line, inView(edgeLine, "side")) ? chosenEdgeId(selection) : undefined
          }
        />
      ))}
    </>
  );
}

const isIn = (owners: readonly string[], line: SceneLine): boolean => owners.includes(ownerKey(line.line));

const SideLine = memo(function SideLine({
  line,
  transform,
  paint,
  isChosen,
  isNamed,
  edgeId,
}: {
  readonly line: SceneLine;
  readonly transform: Transform;
  readonly paint: Paint;
  readonly isChosen: boolean;
  /** The names of several would lie over each other. */
  readonly isNamed: boolean;
  readonly edgeId: string | undefined;
}) {
  const colour = line.broken ? paint.stop : isChosen ? paint.mark : paint.ink;
  const points = pointsOfLine(line);
  const last = points.at(-1);
  const picked = line.edges.find((edge) => edge.edgeId === edgeId);
  return (
    <>
      <Line
        points={linePx(transform, points)}
        stroke={colour}
        strokeWidth={isChosen ? pens.chosen : pens.outline}
        lineCap="round"
        lineJoin="round"
        {...(line.broken ? { dash: [...dashes.draft] } : {})}
      />
      {picked ? <PickedEdge edge={picked} transform={transform} paint={paint} /> : null}
      {isNamed && last ? <Name at={last} text={line.name} transform={transform} paint={paint} /> : null}
    </>
  );
});

function Name({
  at,
  text,
  transform,
  paint,
}: {
  readonly at: Vec2;
  readonly text: string;
  readonly transform: Transform;
  readonly paint: Paint;
}) {
  const [xPx, yPx] = toPx(transform, at);
  return (
    <Letters
      x={xPx - 210}
      y={yPx - 24}
      width={200}
      align="right"
      text={text}
      fontFamily={paint.sans}
      fontSize={sizes.label}
      fill={paint.mark}
    />
  );
}

interface FoamProps<Sheet> {
  readonly sheet: Sheet;
  readonly tint: string;
  readonly transform: Transform;
  readonly paint: Paint;
}

/** The foam of a section's sheet, cut along its middle. */
const SheetFoam = memo(function SheetFoam({ sheet, tint, transform, paint }: FoamProps<SectionSheet>) {
  const { coreLower, coreUpper } = useMemo(() => sideSilhouette(sheet), [sheet]);
  return (
    <Group>
      <Line
        points={linePx(transform, [...coreLower, ...[...coreUpper].reverse()])}
        closed
        fill={tint}
        opacity={0.6}
      />
      <Line points={linePx(transform, coreUpper)} stroke={paint.pencil} strokeWidth={pens.thin} />
    </Group>
  );
});

/** A transition: its two edges, the rulings between them, and its tint. */
const TransitionFoam = memo(function TransitionFoam({
  sheet,
  tint,
  transform,
  paint,
  isChosen,
}: FoamProps<TransitionSheet> & { readonly isChosen: boolean }) {
  const { first, second } = edgesOfTransition(sheet);
  const seen = (points: readonly SpacePoint[]) => points.map(({ x, z }): Vec2 => [x, z]);
  const edge = { stroke: isChosen ? paint.mark : paint.ink, strokeWidth: pens.derived };
  return (
    <Group>
      <Line
        points={linePx(transform, seen([...first, ...second.toReversed()]))}
        closed
        fill={tint}
        opacity={0.45}
      />
      {sheet.rulings.map(({ sMm, from, to }) => (
        <Line
          key={sMm}
          points={linePx(transform, seen([from, to]))}
          stroke={paint.pencil}
          strokeWidth={pens.thin}
          opacity={0.5}
        />
      ))}
      <Line points={linePx(transform, seen(first))} {...edge} />
      <Line points={linePx(transform, seen(second))} {...edge} />
    </Group>
  );
});

/** A folded plate from the side: its base on edge, and its wings. */
const Metal = memo(function Metal({
  plate,
  transform,
  paint,
  isChosen,
}: Omit<FoamProps<unknown>, "sheet" | "tint"> & {
  readonly plate: FoldedPlate;
  readonly isChosen: boolean;
}) {
  const xs = plate.base.flatMap((loop) => loop.map(({ x }) => x));
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const top = plate.zMm + plate.thicknessMm;
  const pen = { stroke: isChosen ? paint.mark : paint.ink, strokeWidth: pens.derived };
  const base: readonly Vec2[] = [
    [left, plate.zMm],
    [right, plate.zMm],
    [right, top],
    [left, top],
  ];
  return (
    <Group>
      {plate.wings.map(({ id, airFace }) => (
        <Line
          key={id}
          points={linePx(
            transform,
            airFace.map(({ x, z }): Vec2 => [x, z]),
          )}
          closed
          fill={paint.pencil}
          perfectDrawEnabled={false}
          opacity={0.35}
          {...pen}
        />
      ))}
      <Line points={linePx(transform, base)} closed fill={paint.pencil} {...pen} />
    </Group>
  );
});

/** The foam of a fence, from its seat under the sheet down to its lower edge. */
const FenceFoam = memo(function FenceFoam({ sheet, tint, transform, paint }: FoamProps<FenceSheet>) {
  const outline = useMemo(() => fenceSilhouette(sheet), [sheet]);
  return (
    <Line
      points={linePx(transform, outline)}
      closed
      fill={tint}
      perfectDrawEnabled={false}
      opacity={0.45}
      stroke={paint.pencil}
      strokeWidth={pens.derived}
    />
  );
});
