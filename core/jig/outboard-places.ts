import type { RunPast } from "../cutting/index.ts";
import type { RibPlace } from "./rib-places.ts";

/**
 * Where ribs stand past the trim lines of bent edges, under the foam that runs past them: E1, E2 … from the front. Edges
 * that one rib can hold share it; each stands as far out as it may.
 */
export function outboardPlaces(pasts: readonly RunPast[]): readonly RibPlace[] {
  const places = [...standing(pasts, "first"), ...standing(pasts, "last")].toSorted((a, b) => a - b);
  return places.map((atMm, i) => ({ id: `E${i + 1}`, runs: "across", atMm, isOutboard: true }));
}

/** As few places as hold all edges of one end, on whole millimetres. */
function standing(pasts: readonly RunPast[], toward: RunPast["toward"]): readonly number[] {
  const sense = toward === "last" ? 1 : -1;
  const rooms = pasts
    .filter((past) => past.toward === toward)
    .map(({ ribXMm }) => {
      const [a, b] = [sense * ribXMm[0], sense * ribXMm[1]];
      return { near: Math.min(a, b), far: Math.max(a, b) };
    })
    .toSorted((a, b) => a.far - b.far);
  const places: number[] = [];
  for (const { near, far } of rooms) {
    const isHeld = places.some((mm) => mm >= near && mm <= far);
    if (!isHeld) places.push(Math.floor(far) < near ? far : Math.floor(far));
  }
  return places.map((mm) => sense * mm);
}
