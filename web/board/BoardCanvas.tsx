import { Layer, Line, Stage, Text } from "react-konva";
import { useDesign, useDocument, useView } from "../stores/index.ts";
import { chosenKeys, lineKey, type Sight } from "../tools/index.ts";
import { DraftDrawing, SnapMark } from "./DraftDrawing.tsx";
import { Grid } from "./Grid.tsx";
import { Handles, QuietHandles } from "./Handles.tsx";
import { PlanDrawing } from "./PlanDrawing.tsx";
import { usePaint } from "./paint.ts";
import { pens } from "./pens.ts";
import { Ruler } from "./Ruler.tsx";
import { SectionDrawing } from "./SectionDrawing.tsx";
import { SideDrawing, sideKeys } from "./SideDrawing.tsx";
import { useScene } from "./use-scene.ts";
import { View } from "./View.tsx";
import { type Box, type Layout, planTransform, sideTransform, type Transform, toPx } from "./viewport.ts";

interface BoardCanvasProps {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly layout: Layout;
  readonly heightFactor: number;
  readonly sight: Sight;
}

/** The drawing itself: plan, ruler, side view and cross-section on one sheet. It listens to nothing. */
export function BoardCanvas({ widthPx, heightPx, layout, heightFactor, sight }: BoardCanvasProps) {
  const project = useDocument((state) => state.project);
  const design = useDesign((state) => state.design);
  const viewport = useView((view) => view.viewport);
  const selection = useView((view) => view.selection);
  const hairlineXMm = useView((view) => view.hairlineXMm);
  const scene = useScene();
  const paint = usePaint();
  const plan = planTransform(viewport, layout);
  const side = sideTransform(viewport, layout, heightFactor);
  const nodeId = selection?.kind === "item" || selection?.kind === "profile" ? selection.nodeId : undefined;
  const keys = [...chosenKeys(selection), ...sideKeys(project, selection)];
  const owner = chosenKeys(selection);

  const handles = (view: "plan" | "side", transform: Transform) =>
    scene.lines
      .filter((line) => line.view === view)
      .map((line) =>
        keys.includes(lineKey(line.line)) ? (
          <Handles
            key={lineKey(line.line)}
            line={line}
            transform={transform}
            paint={paint}
            nodeId={
              owner.includes(lineKey(line.line)) && isNodeOf(line.line.of, selection) ? nodeId : undefined
            }
          />
        ) : (
          <QuietHandles key={lineKey(line.line)} line={line} transform={transform} paint={paint} />
        ),
      );
  const live = (view: "plan" | "side", transform: Transform, box: Box) => (
    <>
      {sight.draft?.view === view ? (
        <DraftDrawing draft={sight.draft} transform={transform} paint={paint} />
      ) : null}
      {sight.snap && sight.view === view ? (
        <SnapMark snap={sight.snap} view={view} transform={transform} box={box} paint={paint} />
      ) : null}
    </>
  );
  return (
    <Stage width={widthPx} height={heightPx} listening={false}>
      <Layer listening={false}>
        <View box={layout.plan} paper={paint.sheet}>
          <Grid box={layout.plan} transform={plan} paint={paint} />
          <PlanDrawing {...{ project, scene, selection, paint }} transform={plan} box={layout.plan} />
          {handles("plan", plan)}
          <Hairline xMm={hairlineXMm} box={layout.plan} transform={plan} colour={paint.mark} />
          {live("plan", plan, layout.plan)}
          <Caption box={layout.plan} text="Plan, from above" font={paint.sans} colour={paint.pencil} />
        </View>
        <View box={layout.side} paper={paint.sheet}>
          <Grid box={layout.side} transform={side} paint={paint} />
          <SideDrawing {...{ project, scene, design, selection, paint }} transform={side} box={layout.side} />
          {handles("side", side)}
          <Hairline xMm={hairlineXMm} box={layout.side} transform={side} colour={paint.mark} />
          {live("side", side, layout.side)}
          <Caption box={layout.side} text="Side view" font={paint.sans} colour={paint.pencil} />
        </View>
        {layout.section ? (
          <View box={layout.section} paper={paint.sheet}>
            {design ? (
              <SectionDrawing
                design={design}
                xMm={hairlineXMm}
                box={layout.section}
                heightFactor={heightFactor}
                paint={paint}
              />
            ) : null}
            <Line
              points={[
                layout.section.leftPx + 0.5,
                layout.section.topPx,
                layout.section.leftPx + 0.5,
                layout.section.topPx + layout.section.heightPx,
              ]}
              stroke={paint.rule}
            />
            <Caption
              box={layout.section}
              text="Section at the hairline, from the rear"
              font={paint.sans}
              colour={paint.pencil}
            />
          </View>
        ) : null}
        <Ruler box={layout.ruler} transform={plan} hairlineXMm={hairlineXMm} paint={paint} />
      </Layer>
    </Stage>
  );
}

/** A node id counts on the line that the selection names. */
function isNodeOf(
  of: "item" | "profile" | "lower-edge",
  selection: ReturnType<typeof useView.getState>["selection"],
) {
  if (selection?.kind === "profile") return of === "profile";
  return selection?.kind === "item" && of === (selection.line ?? "item");
}

function Hairline({
  xMm,
  box,
  transform,
  colour,
}: {
  readonly xMm: number;
  readonly box: Box;
  readonly transform: Transform;
  readonly colour: string;
}) {
  const xPx = Math.round(toPx(transform, [xMm, 0])[0]) + 0.5;
  return (
    <Line
      points={[xPx, box.topPx, xPx, box.topPx + box.heightPx]}
      stroke={colour}
      strokeWidth={pens.thin}
      opacity={0.75}
    />
  );
}

function Caption({
  box,
  text,
  font,
  colour,
}: {
  readonly box: Box;
  readonly text: string;
  readonly font: string;
  readonly colour: string;
}) {
  return (
    <Text
      x={box.leftPx + 12}
      y={box.topPx + 10}
      text={text.toUpperCase()}
      fontFamily={font}
      fontSize={11}
      fontStyle="600"
      letterSpacing={0.8}
      fill={colour}
    />
  );
}
