import { type MouseEvent, type PointerEvent, useEffect, useRef } from "react";
import { distance2, type Vec2 } from "../../core/foundation/index.ts";
import { usePlaceMenu } from "../stores/index.ts";

/** A finger that stays so long asks what can be done. */
const HOLD_MS = 600;
/** A finger that moves farther than this means something else; skin is never quite still. */
const STILL_PX = 8;

/** Listens beside the other pointer handlers of a drawing; spread it before them and call through. */
export interface HoldHandlers {
  readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerUp: () => void;
  readonly onPointerCancel: () => void;
  readonly onContextMenu: (event: MouseEvent<HTMLElement>) => void;
}

/**
 * Opens the menu of a place where a finger is held still, or the right button is pressed. `choose` is told the
 * place first, so that what lies there is chosen; it answers whether there is a drawing at all.
 */
export function useHold(
  choose: (event: { readonly clientX: number; readonly clientY: number }) => boolean,
): HoldHandlers {
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const from = useRef<Vec2>([0, 0]);
  const stop = () => clearTimeout(timer.current);
  useEffect(() => () => clearTimeout(timer.current), []);
  return {
    onPointerDown: (event) => {
      stop();
      if (event.pointerType !== "touch" || !event.isPrimary) return;
      const place = { clientX: event.clientX, clientY: event.clientY };
      from.current = [place.clientX, place.clientY];
      timer.current = setTimeout(() => {
        if (choose(place)) usePlaceMenu.getState().openAt(place.clientX, place.clientY);
      }, HOLD_MS);
    },
    onPointerMove: (event) => {
      if (distance2(from.current, [event.clientX, event.clientY]) > STILL_PX) stop();
    },
    onPointerUp: stop,
    onPointerCancel: stop,
    onContextMenu: (event) => {
      event.preventDefault();
      if (event.button !== 2) return;
      if (choose(event)) usePlaceMenu.getState().openAt(event.clientX, event.clientY);
    },
  };
}
