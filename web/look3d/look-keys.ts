import { type Camera, orbited, panned, type ViewName, zoomed } from "./camera.ts";

/** What a key asks of the look: another camera, or a named view. */
export type KeyWish = { readonly camera: Camera } | { readonly view: ViewName };

const TURN_RAD = Math.PI / 18;
const PAN_SHARE = 0.06;
const ZOOM = 1.2;

/** Arrows turn the tray's picture, with Shift they move it; + and − go nearer and away, 0 goes home. */
export function wishOfKey(
  camera: Camera,
  { key, shiftKey }: { readonly key: string; readonly shiftKey: boolean },
): KeyWish | undefined {
  const way = ARROWS[key];
  if (way) {
    const [right, up] = way;
    return {
      camera: shiftKey
        ? panned(camera, right * PAN_SHARE, -up * PAN_SHARE)
        : orbited(camera, -right * TURN_RAD, -up * TURN_RAD),
    };
  }
  if (key === "+" || key === "=") return { camera: zoomed(camera, ZOOM) };
  if (key === "-" || key === "−") return { camera: zoomed(camera, 1 / ZOOM) };
  if (key === "0" || key === "Home") return { view: "home" };
  return undefined;
}

/** Right and up. */
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
