import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { roundTo, type Vec2 } from "../../../core/foundation/index.ts";
import { useLengths } from "../../controls/index.ts";
import { contextNow } from "../../hand/index.ts";
import { depthAtStation } from "../../tools/index.ts";
import type { CutFence } from "../cross-section.ts";
import { DimensionField } from "../dimensions/DimensionField.tsx";
import { dispatchAll } from "../dispatch-all.ts";
import { stepOfKey } from "../shaping/step-of-key.ts";
import { useDragGrip } from "../shaping/use-drag-grip.ts";
import { type Box, type Transform, toPx } from "../viewport.ts";

interface FenceTipProps {
  readonly fence: CutFence;
  readonly depthMm: number;
  readonly xMm: number;
  readonly transform: Transform;
  readonly box: Box;
}

const FIELD_PX = { width: 76, height: 24 };

/** The lower tip of a fence in the cross-section: pulled up or down, or typed, it sets the fence's depth there. */
export function FenceTip({ fence, depthMm, xMm, transform, box }: FenceTipProps) {
  const [isOpen, setOpen] = useState(false);
  const lengths = useLengths();
  const { pulledMm, drag } = usePull({ fence, depthMm, xMm }, transform, () => setOpen(true));
  const shownMm = pulledMm ?? depthMm;
  const zMm = fence.finishedZMm + depthMm - shownMm;
  const [xPx, yPx] = toPx(transform, [fence.yMm, zMm]);
  const [left, top] = [xPx - box.leftPx, yPx - box.topPx];
  const place = { fence, depthMm, xMm };
  const where = `${fence.name} at station ${lengths.show(xMm)}`;
  const onKeyDown = (event: KeyboardEvent) => {
    const step = stepOfKey(event);
    // Up is toward the sheet.
    if (step !== 0) dispatchAll(commandsFor(place, depthMm - step));
    else if (event.key === "Enter") setOpen(true);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  if (isOpen)
    return (
      <DimensionField
        dimension={{
          word: `depth of ${where}`,
          valueMm: depthMm,
          moves: "Sets the lower edge here; a node is put in where there is none.",
          edit: (mm) =>
            mm > 0
              ? { ok: true, commands: commandsFor(place, mm) }
              : { ok: false, why: "A depth is more than 0." },
        }}
        place={{ ...FIELD_PX, left: left - FIELD_PX.width / 2, top: top + 8 }}
        testId={`tip-${fence.itemId}`}
        close={() => setOpen(false)}
        leave={() => setOpen(false)}
      />
    );
  return (
    <>
      <div
        className="grip fence-tip"
        style={{ left, top }}
        role="slider"
        tabIndex={0}
        aria-label={`Depth of ${where}; Enter types it`}
        aria-orientation="vertical"
        aria-valuenow={shownMm}
        aria-valuemin={0}
        aria-valuetext={`${lengths.show(shownMm)} ${lengths.spoken} below the sheet`}
        title={`Pull to set the depth of ${where}, click to type it`}
        data-testid={`fence-tip-${fence.itemId}`}
        {...drag}
        onKeyDown={onKeyDown}
      />
      {pulledMm === undefined ? null : (
        <span className="tip-number" style={{ left, top }} data-testid="tip-number">
          {lengths.show(pulledMm)} deep, z {lengths.show(zMm)}
        </span>
      )}
    </>
  );
}

interface TipPlace {
  readonly fence: CutFence;
  readonly depthMm: number;
  readonly xMm: number;
}

const commandsFor = ({ fence, depthMm, xMm }: TipPlace, wantedMm: number) =>
  depthAtStation(contextNow(), {
    fenceId: fence.itemId,
    xMm,
    yMm: fence.yMm,
    airZMm: fence.finishedZMm + depthMm,
    depthMm: wantedMm,
  });

/** What the tip is pulled to: shown at once, and until the cut has followed. */
function usePull(place: TipPlace, transform: Transform, click: () => void) {
  const [pulledMm, setPulled] = useState<number>();
  // The cut follows while the tip is pulled: what it hung from when the pull began holds.
  const start = useRef<TipPlace>(undefined);
  const { finishedZMm } = place.fence;
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is the cut that has followed
  useEffect(() => {
    if (!start.current) setPulled(undefined);
  }, [finishedZMm]);
  const grip = useDragGrip(transform, {
    pull: ([, zMm]: Vec2, snaps) => {
      const from = start.current ?? place;
      const wanted = from.fence.finishedZMm + from.depthMm - zMm;
      const depthMm = Math.max(1, roundTo(wanted, snaps ? 0 : 1));
      setPulled(depthMm);
      return commandsFor(from, depthMm);
    },
    click,
  });
  const drag: typeof grip = {
    ...grip,
    onPointerDown: (event) => {
      start.current = place;
      grip.onPointerDown(event);
    },
    onPointerUp: (event) => {
      start.current = undefined;
      grip.onPointerUp(event);
    },
    onPointerCancel: () => {
      start.current = undefined;
      setPulled(undefined);
      grip.onPointerCancel();
    },
  };
  return { pulledMm, drag };
}
