import { memo } from "react";
import { Layer, Line, Rect } from "react-konva";
import { Grid } from "./Grid.tsx";
import { GroundLine } from "./GroundLine.tsx";
import { Letters } from "./Letters.tsx";
import type { Paint } from "./paint.ts";
import { pens } from "./pens.ts";
import { Ruler } from "./Ruler.tsx";
import { View } from "./View.tsx";
import type { Box, Layout, Transform } from "./viewport.ts";

interface PaperProps {
  readonly layout: Layout;
  readonly plan: Transform;
  readonly side: Transform;
  readonly paint: Paint;
}

/** What lies under the drawing: grids, ruler, ground and the names of the views. Drawn again on zoom and pan only. */
export const Paper = memo(function Paper({ layout, plan, side, paint }: PaperProps) {
  return (
    <Layer listening={false}>
      <Blank box={layout.plan} paint={paint} />
      <View box={layout.plan}>
        <Grid box={layout.plan} transform={plan} paint={paint} />
        <Caption box={layout.plan} text="Plan, from above" paint={paint} />
      </View>
      <Blank box={layout.side} paint={paint} />
      <View box={layout.side}>
        <Grid box={layout.side} transform={side} paint={paint} />
        <GroundLine box={layout.side} transform={side} paint={paint} />
        <Caption box={layout.side} text="Side view" paint={paint} />
      </View>
      {layout.section ? <SectionPaper box={layout.section} paint={paint} /> : null}
      <Ruler box={layout.ruler} transform={plan} paint={paint} />
    </Layer>
  );
});

function SectionPaper({ box, paint }: { readonly box: Box; readonly paint: Paint }) {
  return (
    <>
      <Blank box={box} paint={paint} />
      <Line
        points={[box.leftPx + 0.5, box.topPx, box.leftPx + 0.5, box.topPx + box.heightPx]}
        stroke={paint.rule}
        strokeWidth={pens.thin}
      />
      <Caption
        box={box}
        text={
          box.widthPx < LEAST_CAPTION_PX ? "Section, from the rear" : "Section at the hairline, from the rear"
        }
        paint={paint}
      />
    </>
  );
}

/** A narrower section has the short caption. */
const LEAST_CAPTION_PX = 290;

const Blank = ({ box, paint }: { readonly box: Box; readonly paint: Paint }) => (
  <Rect x={box.leftPx} y={box.topPx} width={box.widthPx} height={box.heightPx} fill={paint.sheet} />
);

function Caption({ box, text, paint }: { readonly box: Box; readonly text: string; readonly paint: Paint }) {
  return (
    <Letters
      x={box.leftPx + 12}
      y={box.topPx + 10}
      width={box.widthPx - 16}
      text={text.toUpperCase()}
      fontFamily={paint.sans}
      fontSize={11}
      fontStyle="600"
      letterSpacing={0.8}
      wrap="none"
      ellipsis
      fill={paint.pencil}
    />
  );
}
