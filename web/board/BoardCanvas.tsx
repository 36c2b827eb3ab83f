import { memo, useMemo } from "react";
import { Layer, Line, Stage } from "react-konva";
import { ChoosingBox } from "../edit/index.ts";
import { designWithoutHidden, useDrawnSelection, useScene } from "../hand/index.ts";
import { AMomentLater, useDesign, useDocument, useView } from "../stores/index.ts";
import type { Sight } from "../tools/index.ts";
import { UnderlayPictures } from "../underlay/index.ts";
import { OtherView } from "./both-views/OtherView.tsx";
import { CombDrawing } from "./comb/CombDrawing.tsx";
import { DraftDrawing } from "./DraftDrawing.tsx";
import { SegmentFigures } from "./drafting/SegmentFigures.tsx";
import { drawInTime } from "./draw-in-time.ts";
import { EditPreview } from "./EditPreview.tsx";
import { LineHandles } from "./LineHandles.tsx";
import { Paper } from "./Paper.tsx";
import { PlanDrawing } from "./PlanDrawing.tsx";
import { type Paint, usePaint } from "./paint.ts";
import { pens } from "./pens.ts";
import { HairlineTab } from "./Ruler.tsx";
import { SectionDrawing } from "./SectionDrawing.tsx";
import { ShownEdges } from "./ShownEdges.tsx";
import { SideDrawing } from "./SideDrawing.tsx";
import { SnapMark } from "./snaps/SnapMark.tsx";
import { View } from "./View.tsx";
import { type Box, type Layout, planTransform, sideTransform, type Transform, toPx } from "./viewport.ts";

drawInTime();

interface BoardCanvasProps {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly layout: Layout;
  readonly heightFactor: number;
  readonly sight: Sight;
}

/** The drawing itself: plan, ruler, side view and cross-section on one sheet. It listens to nothing. */
export function BoardCanvas({ widthPx, heightPx, layout, heightFactor, sight }: BoardCanvasProps) {
  const viewport = useView((view) => view.viewport);
  const paint = usePaint();
  const plan = useMemo(() => planTransform(viewport, layout), [viewport, layout]);
  const side = useMemo(() => sideTransform(viewport, layout, heightFactor), [viewport, layout, heightFactor]);
  const shared = { layout, plan, side, paint };
  return (
    <Stage width={widthPx} height={heightPx} listening={false}>
      <Paper {...shared} />
      <Pictures {...shared} />
      <Drawn {...shared} />
      <AMomentLater>
        <Cut {...{ layout, heightFactor, paint }} />
      </AMomentLater>
      <Live {...shared} sight={sight} />
    </Stage>
  );
}

interface Shared {
  readonly layout: Layout;
  readonly plan: Transform;
  readonly side: Transform;
  readonly paint: Paint;
}

/** Pictures to draw over: they lie on the paper, under everything that is drawn. */
const Pictures = memo(function Pictures({ layout, plan, side, paint }: Shared) {
  const hasPictures = useDocument((state) => state.project.underlays.length > 0);
  return (
    <Layer listening={false} visible={hasPictures}>
      <View box={layout.plan}>
        <UnderlayPictures view="plan" transform={plan} mark={paint.mark} />
      </View>
      <View box={layout.side}>
        <UnderlayPictures view="side" transform={side} mark={paint.mark} />
      </View>
    </Layer>
  );
});

/** The document in plan and side view. */
const Drawn = memo(function Drawn({ layout, plan, side, paint }: Shared) {
  const project = useDocument((state) => state.project);
  const computed = useDesign((state) => state.design);
  const design = useMemo(() => designWithoutHidden(computed, project), [computed, project]);
  const selection = useDrawnSelection();
  const scene = useScene();
  const shared = { project, scene, selection, paint };
  return (
    <Layer listening={false}>
      <View box={layout.plan}>
        <PlanDrawing {...shared} design={design} transform={plan} box={layout.plan} />
      </View>
      <View box={layout.side}>
        <SideDrawing {...shared} design={design} transform={side} />
      </View>
    </Layer>
  );
});

/** The cross-section, as the worker last computed the tray. */
const Cut = memo(function Cut({
  layout,
  heightFactor,
  paint,
}: Pick<Shared, "layout" | "paint"> & { readonly heightFactor: number }) {
  const project = useDocument((state) => state.project);
  const computed = useDesign((state) => state.design);
  const design = useMemo(() => designWithoutHidden(computed, project), [computed, project]);
  const xMm = useView((view) => view.hairlineXMm);
  const box = layout.section;
  return (
    <Layer listening={false}>
      {box && design ? (
        <View box={box}>
          <SectionDrawing {...{ design, xMm, box, heightFactor, paint }} />
        </View>
      ) : null}
    </Layer>
  );
});

/** What moves with the hand: handles, hairline, the line being drawn, and where the pointer has snapped to. */
function Live({ layout, plan, side, paint, sight }: Shared & { readonly sight: Sight }) {
  const xMm = useView((view) => view.hairlineXMm);
  const views = [
    { view: "plan", box: layout.plan, transform: plan },
    { view: "side", box: layout.side, transform: side },
  ] as const;
  return (
    <Layer listening={false}>
      {views.map(({ view, box, transform }) => (
        <View key={view} box={box}>
          <OtherView view={view} transform={transform} box={box} paint={paint} />
          <CombDrawing view={view} transform={transform} paint={paint} />
          <LineHandles view={view} transform={transform} paint={paint} />
          <Hairline xMm={xMm} box={box} transform={transform} colour={paint.mark} />
          {view === "plan" && sight.edges ? (
            <ShownEdges edges={sight.edges} transform={transform} paint={paint} />
          ) : null}
          {sight.drawnBefore?.view === view ? (
            <DraftDrawing draft={sight.drawnBefore} transform={transform} paint={paint} />
          ) : null}
          {sight.draft?.view === view ? (
            <DraftDrawing draft={sight.draft} transform={transform} paint={paint} />
          ) : null}
          {sight.draft?.view === view && sight.typing ? (
            <SegmentFigures draft={sight.draft} transform={transform} paint={paint} />
          ) : null}
          <EditPreview view={view} transform={transform} paint={paint} />
          {sight.box?.view === view ? (
            <ChoosingBox
              fromPx={toPx(transform, sight.box.from)}
              toPx={toPx(transform, sight.box.to)}
              colour={paint.mark}
            />
          ) : null}
          {sight.snap && sight.view === view ? (
            <SnapMark snap={sight.snap} view={view} transform={transform} box={box} paint={paint} />
          ) : null}
        </View>
      ))}
      <View box={layout.ruler}>
        <HairlineTab box={layout.ruler} transform={plan} paint={paint} xMm={xMm} />
      </View>
    </Layer>
  );
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
