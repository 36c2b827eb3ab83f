import { type PointerEvent, type RefObject, useEffect, useRef } from "react";
import { type Camera, zoomed } from "./camera.ts";
import { type Gesture, lifted, moved, STILL, type Touch, touched } from "./gestures.ts";

interface GestureTargets {
  readonly camera: Camera;
  readonly look: (camera: Camera) => void;
  /** A click, px from the picture's upper left. */
  readonly pick: (xPx: number, yPx: number) => void;
  readonly heightPx: number;
}

/** A turn of the wheel by one notch goes nearer by about a tenth. */
const ZOOM_PER_PX = 0.001;

/** Pointers on the picture: one turns it, with Shift or another button it moves it; two move it and go nearer. */
export function useGestures(picture: RefObject<HTMLElement | null>, targets: GestureTargets) {
  const gesture = useRef<Gesture>(STILL);
  const now = useRef(targets);
  now.current = targets;
  useEffect(() => {
    const element = picture.current;
    // React's own wheel listener is passive and could not keep the page still.
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      const { camera, look } = now.current;
      look(zoomed(camera, Math.exp(-event.deltaY * ZOOM_PER_PX)));
    };
    element?.addEventListener("wheel", onWheel, { passive: false });
    return () => element?.removeEventListener("wheel", onWheel);
  }, [picture]);
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      event.currentTarget.setPointerCapture(event.pointerId);
      gesture.current = touched(gesture.current, touchOf(event), event.shiftKey || event.button !== 0);
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const { camera, look, heightPx } = now.current;
      const next = moved(gesture.current, touchOf(event), camera, Math.max(1, heightPx));
      gesture.current = next.gesture;
      if (next.camera !== camera) look(next.camera);
    },
    onPointerUp: (event: PointerEvent<HTMLElement>) => {
      const isClick = gesture.current.touches.length === 1 && !gesture.current.hasMoved;
      gesture.current = lifted(gesture.current, event.pointerId);
      const { x, y } = touchOf(event);
      if (isClick) now.current.pick(x, y);
    },
    onPointerCancel: (event: PointerEvent<HTMLElement>) => {
      gesture.current = lifted(gesture.current, event.pointerId);
    },
    onContextMenu: (event: { readonly preventDefault: () => void }) => event.preventDefault(),
  };
}

function touchOf({ pointerId, clientX, clientY, currentTarget }: PointerEvent<HTMLElement>): Touch {
  const { left, top } = currentTarget.getBoundingClientRect();
  return { id: pointerId, x: clientX - left, y: clientY - top };
}
