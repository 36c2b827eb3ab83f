import type { KeyboardEvent } from "react";
import { formatAngle, nodeLabel, toRadians } from "../../../core/foundation/index.ts";
import { useDocument } from "../../stores/index.ts";
import { pulledDirection, type TangentGrip, tangentCommand } from "../../tools/index.ts";
import { type Box, contains, type Transform, toPx } from "../viewport.ts";
import { stepOfKey } from "./step-of-key.ts";
import { useDragGrip } from "./use-drag-grip.ts";

interface TangentHandleProps {
  readonly grip: TangentGrip;
  readonly transform: Transform;
  readonly box: Box;
}

const ARM_PX = 58;

/** A handle on an arm from the node: pulled round it sets the direction of the curve's end. Filled once it is set. */
export function TangentHandle({ grip, transform, box }: TangentHandleProps) {
  const { at, directionRad, end, nodeId, isTyped } = grip;
  const drag = useDragGrip(transform, {
    pull: (place, snaps) => [tangentCommand(grip, pulledDirection(grip, place, snaps))],
    click: () => undefined,
  });
  const [x, y] = toPx(transform, at);
  const sign = end === "out" ? 1 : -1;
  const arm = [
    sign * Math.cos(directionRad) * transform.pxPerMmAcross,
    -sign * Math.sin(directionRad) * transform.pxPerMmUp,
  ] as const;
  const length = Math.hypot(...arm) || 1;
  const [left, top] = [x + (arm[0] / length) * ARM_PX, y + (arm[1] / length) * ARM_PX];
  if (!contains(box, [left, top])) return null;
  const set = (rad: number | undefined) => useDocument.getState().dispatch(tangentCommand(grip, rad));
  const onKeyDown = (event: KeyboardEvent) => {
    const step = stepOfKey(event);
    if (step !== 0) set(directionRad + toRadians(step));
    else if (event.key === "Delete" || event.key === "Backspace") set(undefined);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const word = end === "in" ? "arrives" : "leaves";
  return (
    <>
      <svg className="tangent-arm" aria-hidden>
        <line x1={x} y1={y} x2={left} y2={top} />
      </svg>
      <div
        className="grip tangent-handle"
        data-typed={isTyped ? "" : undefined}
        style={{ left, top }}
        role="slider"
        tabIndex={0}
        aria-label={`Direction in which the curve ${word} at node ${nodeLabel(nodeId)}; Delete lets it go free`}
        aria-valuenow={Math.round((directionRad * 180) / Math.PI)}
        aria-valuemin={-180}
        aria-valuemax={180}
        aria-valuetext={`${formatAngle(directionRad)}${isTyped ? "" : ", free"}`}
        title={`Pull to set the direction in which the curve ${word}: ${formatAngle(directionRad)}${isTyped ? "" : ", free now"}`}
        data-testid={`tangent-${end}-${nodeId}`}
        {...drag}
        onDoubleClick={() => set(undefined)}
        onKeyDown={onKeyDown}
      />
    </>
  );
}
