import type { RunPast } from "../cutting/index.ts";
import type { Laid } from "./laid/laid-face.ts";
import type { RibPlace } from "./rib-places.ts";

/**
 * Where ribs stand past the trim lines of bent edges, under the foam that runs past them: E1, E2 … from the front. Edges
 * that one rib can hold share it; each stands as far out as it may.
 */
export function outboardPlaces(laid: Laid): readonly RibPlace[] {
  const places = [...standing(laid, "first"), ...standing(laid, "last")].toSorted((a, b) => a - b);
  return places.map((atMm, i) => ({ id: `E${i + 1}`, runs: "across", atMm, isOutboard: true }));
}

/** Least and greatest x at which a rib holds foam that runs past an edge, as the foam lies. */
export function outboardRoom(
  { sheetId, ribXMm: [least, most] }: RunPast,
  { overBend }: Pick<Laid, "overBend">,
): readonly [number, number] {
  const moved = (xMm: number) => overBend?.movedX(sheetId, xMm) ?? xMm;
  return [moved(least), moved(most)];
}

/** As few places as hold all edges of one end, on whole millimetres. */
function standing(laid: Laid, toward: RunPast["toward"]): readonly number[] {
  const sense = toward === "last" ? 1 : -1;
  const rooms = laid.pasts
    .filter((past) => past.toward === toward)
    .map((past) => {
      const [a, b] = outboardRoom(past, laid).map((mm) => sense * mm);
      return { near: Math.min(a ?? 0, b ?? 0), far: Math.max(a ?? 0, b ?? 0) };
    })
    .toSorted((a, b) => a.far - b.far);
  const places: number[] = [];
  for (const { near, far } of rooms) {
    const isHeld = places.some((mm) => mm >= near && mm <= far);
    if (!isHeld) places.push(Math.floor(far) < near ? far : Math.floor(far));
  }
  return places.map((mm) => sense * mm);
}
