import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import type { Design } from "../../../core/design.ts";
import { formatMm } from "../../../core/foundation/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { Bounds, Scale } from "../../drawings/index.ts";
import { useDocument } from "../../stores/index.ts";
import { cutsOfPart, type PartCut, withCut } from "./own-cuts.ts";

interface CutGripsProps {
  readonly part: Part;
  readonly design: Design;
  readonly bounds: Bounds;
  readonly scale: Scale;
}

/** How far beside it a cut is taken hold of. */
const REACH_PX = 12;

/** The cuts through a part, each to be dragged or pushed by the arrow keys; a drag is one step. */
export function CutGrips(props: CutGripsProps) {
  const { part, design } = props;
  const cutting = useDocument((state) => state.project.cutting);
  if (part.kind === "transition") return null;
  return cutsOfPart(part, design.seams, cutting).map((cut, index) => (
    <CutGrip key={`${cut.axis}/${index}`} cut={cut} {...props} />
  ));
}

function CutGrip({ cut, part, bounds, scale }: CutGripsProps & { readonly cut: PartCut }) {
  const { axis, atMm } = cut;
  const grip = useRef<{ readonly startPx: number; readonly atMm: number }>(undefined);
  const last = useRef(atMm);
  const [pulledMm, setPulled] = useState<number>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is the part that has followed
  useEffect(() => {
    if (!grip.current) setPulled(undefined);
  }, [atMm]);
  const shownMm = pulledMm ?? atMm;
  const [leastMm, mostMm] = axis === "u" ? [bounds.left, bounds.right] : [bounds.bottom, bounds.top];
  const put = (wantedMm: number) => {
    const toMm = Math.min(mostMm - 1, Math.max(leastMm + 1, wantedMm));
    const { project, dispatchInGesture } = useDocument.getState();
    const cutting = withCut(project.cutting, part, axis, { fromMm: last.current, toMm });
    last.current = toMm;
    setPulled(toMm);
    dispatchInGesture({ kind: "change-settings", changes: { cutting } });
  };
  const take = (event: PointerEvent<SVGGElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    grip.current = { startPx: axis === "u" ? event.clientX : event.clientY, atMm };
    last.current = atMm;
  };
  const pull = (event: PointerEvent<SVGGElement>) => {
    const held = grip.current;
    if (!held) return;
    const byPx = axis === "u" ? event.clientX - held.startPx : held.startPx - event.clientY;
    if (pulledMm === undefined && Math.abs(byPx) < 3) return;
    put(Math.round(held.atMm + byPx / scale.pixelsPerMm));
  };
  const letGo = () => {
    grip.current = undefined;
    useDocument.getState().endGesture();
  };
  const push = (event: KeyboardEvent) => {
    const [more, less] = axis === "u" ? ["ArrowRight", "ArrowLeft"] : ["ArrowUp", "ArrowDown"];
    if (event.key !== more && event.key !== less) return;
    event.preventDefault();
    last.current = shownMm;
    put(shownMm + (event.key === more ? 1 : -1) * (event.shiftKey ? 10 : 1));
    useDocument.getState().endGesture();
  };
  const [x1, y1] = scale.toPx(axis === "u" ? [shownMm, bounds.top] : [bounds.left, shownMm]);
  const [x2, y2] = scale.toPx(axis === "u" ? [shownMm, bounds.bottom] : [bounds.right, shownMm]);
  return (
    <g
      className="cut-grip"
      data-axis={axis}
      data-own={cut.isOwn || undefined}
      data-testid={`cut-grip-${axis}`}
      role="slider"
      tabIndex={0}
      aria-label={`Cut ${axis === "u" ? "along a ruling" : "across the rulings"} of ${part.id}`}
      aria-orientation={axis === "u" ? "horizontal" : "vertical"}
      aria-valuenow={Math.round(shownMm)}
      aria-valuemin={Math.round(leastMm)}
      aria-valuemax={Math.round(mostMm)}
      aria-valuetext={`${axis} ${formatMm(shownMm)} mm${cut.isOwn ? ", yours" : ""}`}
      onPointerDown={take}
      onPointerMove={pull}
      onPointerUp={letGo}
      onPointerCancel={letGo}
      onKeyDown={push}
    >
      <rect
        className="reach"
        x={Math.min(x1, x2) - (axis === "u" ? REACH_PX : 0)}
        y={Math.min(y1, y2) - (axis === "v" ? REACH_PX : 0)}
        width={axis === "u" ? 2 * REACH_PX : Math.abs(x2 - x1)}
        height={axis === "v" ? 2 * REACH_PX : Math.abs(y2 - y1)}
      />
      <line className="shown" x1={x1} y1={y1} x2={x2} y2={y2} />
      {pulledMm === undefined ? null : (
        <text className="code" x={x1 + 8} y={y1 + 14}>
          {`${axis} ${formatMm(pulledMm)}`}
        </text>
      )}
    </g>
  );
}
