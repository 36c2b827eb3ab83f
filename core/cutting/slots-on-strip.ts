import type { FlatPoint } from "../foundation/index.ts";
import { type Part, stretchesAcross } from "../patterns/index.ts";
import type { StripSlot } from "./types.ts";

/** Slots shorter than this are a corner, not a slot, mm. */
const LEAST_SLOT_MM = 1;

/** The relief slots of a part that lie on one of its strips, from front to rear, as long as the strip is wide there. */
export function slotsOnStrip(
  polygons: readonly (readonly FlatPoint[])[],
  { zones }: Part,
): readonly StripSlot[] {
  return zones.flatMap(({ bend }) => {
    const { slots } = bend ?? {};
    return (slots?.placesUMm ?? []).flatMap((uMm): readonly StripSlot[] => {
      const stretchesMm = stretchesAcross(polygons, uMm).filter(([from, to]) => to - from >= LEAST_SLOT_MM);
      if (!slots || stretchesMm.length === 0) return [];
      const lengthMm = stretchesMm.reduce((sum, [from, to]) => sum + to - from, 0);
      const { kerfMm, depthMm, face, fillMm2, filling } = slots;
      const fillMm3 = filling === "glued" ? fillMm2 * lengthMm : 0;
      return [{ uMm, stretchesMm, lengthMm, kerfMm, depthMm, face, fillMm3 }];
    });
  });
}
