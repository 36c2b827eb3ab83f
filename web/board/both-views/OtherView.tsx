import { memo } from "react";
import { Circle, Line } from "react-konva";
import { useLengths } from "../../controls/index.ts";
import { drawnHeight, useDrawnSelection, useScene } from "../../hand/index.ts";
import { useDocument, usePointed } from "../../stores/index.ts";
import {
  chosenNodeId,
  chosenOwner,
  type DrawingView,
  findLine,
  inView,
  lineKey,
  lineOfSelection,
  ownerKey,
} from "../../tools/index.ts";
import { linePx, pointsOfLine } from "../draw-line.ts";
import { Letters } from "../Letters.tsx";
import type { Paint } from "../paint.ts";
import { dashes, pens, sizes } from "../pens.ts";
import { type Box, type Transform, toPx } from "../viewport.ts";
import { litOwners } from "./lit-owners.ts";

interface OtherViewProps {
  readonly view: DrawingView;
  readonly transform: Transform;
  readonly box: Box;
  readonly paint: Paint;
}

/** What keeps both views together: what is pointed at is lit in both, what is chosen in one is marked in the other. */
export const OtherView = memo(function OtherView(props: OtherViewProps) {
  return (
    <>
      <Lit {...props} />
      <NodeMark {...props} />
    </>
  );
});

const GLOW_PX = 7;
const LABEL_PX = 150;

/** A broad soft line under what is pointed at, and under what belongs to it in this view. */
function Lit({ view, transform, paint }: OtherViewProps) {
  const project = useDocument((state) => state.project);
  const pointed = usePointed(({ owner }) => owner);
  const chosen = chosenOwner(useDrawnSelection());
  const scene = useScene();
  const owners = new Set([
    ...(pointed ? litOwners(project, pointed) : []),
    // A chosen section is drawn as chosen with its profile already; a chosen profile lights its sections here.
    ...(chosen?.startsWith("profile/") ? litOwners(project, chosen).slice(1) : []),
  ]);
  if (owners.size === 0) return null;
  return scene.lines
    .filter((line) => line.view === view && owners.has(ownerKey(line.line)))
    .map((line) => (
      <Line
        key={lineKey(line.line)}
        points={linePx(transform, pointsOfLine(line))}
        stroke={paint.mark}
        strokeWidth={GLOW_PX}
        opacity={0.28}
        lineCap="round"
        lineJoin="round"
      />
    ));
}

/** The station of the chosen node in the view where it was not chosen, and its height where a surface lies there. */
function NodeMark({ view, transform, box, paint }: OtherViewProps) {
  const selection = useDrawnSelection();
  const scene = useScene();
  const { show } = useLengths();
  const ref = lineOfSelection(selection);
  const nodeId = chosenNodeId(selection);
  const line = ref && findLine(scene, ref);
  const at = line?.nodes.find((node) => node.nodeId === nodeId)?.at;
  // A node in space has a handle in both views.
  if (!line || !at || line.view === view || findLine(scene, inView(line.line, view))?.view === view)
    return null;
  const zMm = view === "side" ? drawnHeight(at) : undefined;
  const [xPx] = toPx(transform, [at[0], 0]);
  const zPx = zMm === undefined ? undefined : toPx(transform, [0, zMm])[1];
  const text = `x ${show(at[0])}${zMm === undefined ? "" : `  z ${show(zMm)}`}`;
  const runsOut = xPx + 8 + LABEL_PX > box.leftPx + box.widthPx;
  return (
    <>
      <Line
        points={[xPx, box.topPx, xPx, box.topPx + box.heightPx]}
        stroke={paint.mark}
        strokeWidth={pens.thin}
        dash={[...dashes.chain]}
        opacity={0.8}
      />
      {zPx === undefined ? null : (
        <Circle x={xPx} y={zPx} radius={5} stroke={paint.mark} strokeWidth={pens.handle} fill={paint.sheet} />
      )}
      <Letters
        text={text}
        x={runsOut ? xPx - 8 - LABEL_PX : xPx + 8}
        width={LABEL_PX}
        align={runsOut ? "right" : "left"}
        y={zPx === undefined ? box.topPx + box.heightPx - 22 : zPx - 26}
        fontFamily={paint.mono}
        fontSize={sizes.caption}
        fill={paint.mark}
        stroke={paint.sheet}
        strokeWidth={3}
        fillAfterStrokeEnabled
      />
    </>
  );
}
