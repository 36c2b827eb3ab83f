import { type KeyboardEvent, useState } from "react";
import { bisected, middleOfCorner } from "../../../core/curves/index.ts";
import { nodeLabel } from "../../../core/foundation/index.ts";
import { useLengths } from "../../controls/index.ts";
import { useDocument } from "../../stores/index.ts";
import { type CornerGrip, pulledRadius, radiusCommand } from "../../tools/index.ts";
import { DimensionField } from "../dimensions/DimensionField.tsx";
import { type Box, contains, type Transform, toPx } from "../viewport.ts";
import { stepOfKey } from "./step-of-key.ts";
import { useDragGrip } from "./use-drag-grip.ts";

interface RadiusGripProps {
  readonly grip: CornerGrip;
  readonly transform: Transform;
  readonly box: Box;
}

/** A sharp corner's grip stands so far inside it, that the node itself can be grabbed. */
const INSIDE_PX = 22;
const FIELD_PX = { width: 76, height: 24 };

/** A ring on the corner's bisector: pulled in it rounds the corner, clicked the radius is typed. */
export function RadiusGrip({ grip, transform, box }: RadiusGripProps) {
  const [isOpen, setOpen] = useState(false);
  const lengths = useLengths();
  const { corner, radiusMm, nodeId } = grip;
  const drag = useDragGrip(transform, {
    pull: (place, snaps) => [radiusCommand(grip, pulledRadius(grip, place, snaps))],
    click: () => setOpen(true),
  });
  const { bisector, halfSine } = bisected(corner);
  if (halfSine > MOST_SINE) return null;
  const [x, y] = toPx(transform, middleOfCorner(corner, radiusMm));
  const into = [bisector[0] * transform.pxPerMmAcross, -bisector[1] * transform.pxPerMmUp] as const;
  const length = Math.hypot(...into) || 1;
  const [left, top] = [x + (into[0] / length) * INSIDE_PX, y + (into[1] / length) * INSIDE_PX];
  if (!contains(box, [left, top])) return null;
  const set = (mm: number) => useDocument.getState().dispatch(radiusCommand(grip, mm));
  const onKeyDown = (event: KeyboardEvent) => {
    const step = stepOfKey(event);
    if (step !== 0) set(radiusMm + step);
    else if (event.key === "Enter") setOpen(true);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  if (isOpen)
    return (
      <DimensionField
        dimension={{
          word: `radius at node ${nodeLabel(nodeId)}`,
          valueMm: radiusMm,
          moves: "Rounds the corner; 0 makes it sharp.",
          edit: (mm) => ({ ok: true, commands: [radiusCommand(grip, mm)] }),
        }}
        place={{ ...FIELD_PX, left: left - FIELD_PX.width / 2, top: top - FIELD_PX.height / 2 }}
        testId={`radius-${nodeId}`}
        close={() => setOpen(false)}
        leave={() => setOpen(false)}
      />
    );
  return (
    <div
      className="grip radius-grip"
      style={{ left, top }}
      role="slider"
      tabIndex={0}
      aria-label={`Radius at node ${nodeLabel(nodeId)}; Enter types it`}
      aria-valuenow={radiusMm}
      aria-valuemin={0}
      aria-valuetext={radiusMm > 0 ? `${lengths.show(radiusMm)} ${lengths.spoken}` : "sharp"}
      title={`Pull to round the corner at node ${nodeLabel(nodeId)}, click to type its radius`}
      data-testid={`radius-grip-${nodeId}`}
      {...drag}
      onKeyDown={onKeyDown}
    />
  );
}

/** A corner that hardly turns has no room for an arc that is seen. */
const MOST_SINE = 0.9995;
