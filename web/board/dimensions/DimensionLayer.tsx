import { useMemo } from "react";
import { useLengths, useMedia } from "../../controls/index.ts";
import { contextNow, useDrawnSelection, useScene } from "../../hand/index.ts";
import { useDesign, useDocument, useDrawingAids, useView } from "../../stores/index.ts";
import { type Dimension, dimensionsOf, findLine, lineOfSelection, totalLength } from "../../tools/index.ts";
import { type Box, type Layout, type Transform, toPx } from "../viewport.ts";
import { DimensionLabel } from "./DimensionLabel.tsx";
import { DimensionLines } from "./DimensionLines.tsx";
import { boxOfNode, type DimensionToPlace, placeDimensions } from "./place-dimensions.ts";
import { wordDimension } from "./word-dimension.ts";
import "./dimensions.css";

interface DimensionLayerProps {
  readonly layout: Layout;
  readonly plan: Transform;
  readonly side: Transform;
}

/** Dimensions of what is chosen, over the board: thin lines, and numbers that can be clicked and typed over. */
export function DimensionLayer({ layout, plan, side }: DimensionLayerProps) {
  const isOn = useDrawingAids((aids) => aids.dimensions);
  const tool = useView((view) => view.tool);
  const hasRoom = layout.side.heightPx > 0 && layout.side.widthPx > 0;
  return isOn && hasRoom && tool === "select" ? <ShownDimensions {...{ layout, plan, side }} /> : null;
}

const LETTER_PX = 7.3;

function ShownDimensions({ layout, plan, side }: DimensionLayerProps) {
  const project = useDocument((state) => state.project);
  const selection = useDrawnSelection();
  const design = useDesign((state) => state.design);
  const scene = useScene();
  const lengths = useLengths();
  const isFinger = useMedia("(pointer: coarse)");
  // biome-ignore lint/correctness/useExhaustiveDependencies: the context is that of these
  const dimensions = useMemo(() => dimensionsOf(contextNow()), [project, selection, design]);
  const total = totalLength({ scene, selection });
  const line = lineOfSelection(selection);
  const nodes = (line && findLine(scene, line)?.nodes) ?? [];
  const views = [
    { view: "plan", box: layout.plan, transform: plan },
    { view: "side", box: layout.side, transform: side },
  ] as const;
  return (
    <div className="dimensions" data-testid="dimensions">
      {views.map(({ view, box, transform }) => {
        const own = dimensions.filter((dimension) => dimension.view === view);
        const placed = placeDimensions(
          own.map((one) => inPx(one, transform, { text: wordDimension(one, lengths), isFinger })),
          box,
          view === viewOf(line)
            ? [...nodes.map(({ at }) => boxOfNode(toPx(transform, at))), boxOfButtons(layout)]
            : [boxOfButtons(layout)],
        );
        return (
          <div key={view}>
            <DimensionLines box={box} placed={placed} />
            {placed.map((one) => {
              const dimension = own.find(({ id }) => id === one.id);
              return dimension ? <DimensionLabel key={one.id} dimension={dimension} box={one.box} /> : null;
            })}
          </div>
        );
      })}
      {total ? (
        <p
          className="dimension-total"
          data-testid="dimension-total"
          style={{ left: 8, top: layout.plan.topPx + layout.plan.heightPx - 26 }}
        >
          {total.word} {lengths.show(total.valueMm)} {lengths.unit}
        </p>
      ) : null}
    </div>
  );
}

/** The buttons in the upper right corner of the board. */
const boxOfButtons = ({ plan }: Layout): Box => ({
  leftPx: plan.leftPx + plan.widthPx - BUTTONS_PX.width,
  topPx: plan.topPx,
  widthPx: BUTTONS_PX.width,
  heightPx: BUTTONS_PX.height,
});
const BUTTONS_PX = { width: 300, height: 42 };

const viewOf = (line: ReturnType<typeof lineOfSelection>) =>
  line?.of === "profile" || line?.of === "lower-edge" ? "side" : line?.of === "edge" ? line.view : "plan";

function inPx(
  { id, kind, from, to, middle, outward }: Dimension,
  transform: Transform,
  { text, isFinger }: { readonly text: string; readonly isFinger: boolean },
): DimensionToPlace {
  const [ox, oy] = outwardPx({ from, to, outward, kind }, transform);
  return {
    id,
    kind,
    from: toPx(transform, from),
    to: toPx(transform, to),
    middle: middle && toPx(transform, middle),
    outward: [ox, oy],
    widthPx: Math.max(isFinger ? 44 : 28, text.length * LETTER_PX + 10),
    heightPx: isFinger ? 44 : 24,
  };
}

/** Extension lines are square to what is measured on the screen, also where heights are drawn larger. */
function outwardPx(
  { from, to, outward, kind }: Pick<Dimension, "from" | "to" | "outward" | "kind">,
  transform: Transform,
): readonly [number, number] {
  const shown = [outward[0] * transform.pxPerMmAcross, -outward[1] * transform.pxPerMmUp] as const;
  const [a, b] = [toPx(transform, from), toPx(transform, to)];
  const lengthPx = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (kind !== "straight" || lengthPx === 0) return unit(shown);
  const square = unit([-(b[1] - a[1]), b[0] - a[0]]);
  const isSameSide = square[0] * shown[0] + square[1] * shown[1] >= 0;
  return isSameSide ? square : [-square[0], -square[1]];
}

function unit([x, y]: readonly [number, number]): readonly [number, number] {
  const length = Math.hypot(x, y) || 1;
  return [x / length, y / length];
}
