import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from "react";
import type { Vec2 } from "../../../core/foundation/index.ts";
import type { Command } from "../../../core/project/index.ts";
import { useDocument } from "../../stores/index.ts";
import { type Transform, toMm } from "../viewport.ts";

interface GripDrag {
  /** What pulling it to a place does; the whole pull is one step. */
  readonly pull: (place: Vec2, snaps: boolean) => readonly Command[];
  /** A press without a pull. */
  readonly click: () => void;
}

/** A press that moves less than this is a click, px. */
const DRAG_PX = 3;

/** Pointer handlers for a grip that lies over the board: it is dragged by itself, and the board hears nothing of it. */
export function useDragGrip(transform: Transform, { pull, click }: GripDrag) {
  const pressed = useRef<Vec2>(undefined);
  const isDragged = useRef(false);
  const placeOf = (event: PointerEvent<HTMLElement>): Vec2 => {
    const box = event.currentTarget.closest(".drawing")?.getBoundingClientRect();
    return toMm(transform, [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)]);
  };
  const takeBack = (): boolean => {
    const wasHeld = pressed.current !== undefined && isDragged.current;
    if (wasHeld) useDocument.getState().cancelGesture();
    pressed.current = undefined;
    return wasHeld;
  };
  // A grip that goes away while it is held leaves no step half open.
  useEffect(
    () => () => {
      if (pressed.current && isDragged.current) useDocument.getState().endGesture();
    },
    [],
  );
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      event.stopPropagation();
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      pressed.current = [event.clientX, event.clientY];
      isDragged.current = false;
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const from = pressed.current;
      if (!from) return;
      event.stopPropagation();
      const awayPx = Math.hypot(event.clientX - from[0], event.clientY - from[1]);
      if (!isDragged.current && awayPx < DRAG_PX) return;
      isDragged.current = true;
      const { dispatchInGesture } = useDocument.getState();
      for (const command of pull(placeOf(event), !event.altKey)) dispatchInGesture(command);
    },
    onPointerUp: (event: PointerEvent<HTMLElement>) => {
      event.stopPropagation();
      if (pressed.current && isDragged.current) useDocument.getState().endGesture();
      pressed.current = undefined;
    },
    onPointerCancel: () => {
      takeBack();
    },
    /** Escape while it is held puts back what was there. */
    onKeyDownCapture: (event: KeyboardEvent) => {
      if (event.key !== "Escape" || !takeBack()) return;
      event.preventDefault();
      event.stopPropagation();
    },
    onClick: () => {
      if (!isDragged.current) click();
      isDragged.current = false;
    },
  };
}
