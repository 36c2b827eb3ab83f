import { type Camera, orbited, panned, zoomed } from "./camera.ts";

/** A pointer on the picture, px from its upper left. */
export interface Touch {
  readonly id: number;
  readonly x: number;
  readonly y: number;
}

/** The pointers that are down, and whether the gesture has moved far enough to be one. */
export interface Gesture {
  readonly touches: readonly Touch[];
  readonly isPan: boolean;
  readonly hasMoved: boolean;
}

export const STILL: Gesture = { touches: [], isPan: false, hasMoved: false };

/** A press that moves less than this is a click, px. */
const CLICK_PX = 4;
/** Half a turn for a pull over so many px. */
const HALF_TURN_PX = 420;

export const touched = (gesture: Gesture, touch: Touch, isPan: boolean): Gesture => ({
  touches: [...gesture.touches.filter(({ id }) => id !== touch.id), touch],
  isPan,
  hasMoved: gesture.touches.length > 0,
});

export function lifted(gesture: Gesture, id: number): Gesture {
  const touches = gesture.touches.filter((touch) => touch.id !== id);
  return touches.length === 0 ? STILL : { ...gesture, touches };
}

/**
 * One pointer turns the picture, or moves it when it is held for that; two move it, and go nearer by as much as they
 * part.
 */
export function moved(
  gesture: Gesture,
  touch: Touch,
  camera: Camera,
  heightPx: number,
): { readonly gesture: Gesture; readonly camera: Camera } {
  const before = gesture.touches.find(({ id }) => id === touch.id);
  if (!before) return { gesture, camera };
  const touches = gesture.touches.map((one) => (one.id === touch.id ? touch : one));
  const other = gesture.touches.find(({ id }) => id !== touch.id);
  const [dx, dy] = [touch.x - before.x, touch.y - before.y];
  if (other) {
    const spread = distance(touch, other) / Math.max(1, distance(before, other));
    const nearer = zoomed(camera, spread);
    return {
      gesture: { ...gesture, touches, hasMoved: true },
      camera: panned(nearer, dx / 2 / heightPx, dy / 2 / heightPx),
    };
  }
  if (!gesture.hasMoved && Math.hypot(dx, dy) < CLICK_PX) return { gesture, camera };
  const turn = Math.PI / HALF_TURN_PX;
  return {
    gesture: { ...gesture, touches, hasMoved: true },
    camera: gesture.isPan
      ? panned(camera, dx / heightPx, dy / heightPx)
      : orbited(camera, -dx * turn, dy * turn),
  };
}

const distance = (a: Touch, b: Touch): number => Math.hypot(a.x - b.x, a.y - b.y);
