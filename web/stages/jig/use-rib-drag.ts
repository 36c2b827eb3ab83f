import { type PointerEvent, useState } from "react";
import type { Rib } from "../../../core/jig/index.ts";
import { useSettings } from "../settings/index.ts";
import { placesWithMoved } from "./places-with-moved.ts";

/** A pull shorter than this is a click, px. */
const LEAST_PULL_PX = 4;

interface Pull {
  readonly rib: Rib;
  readonly startPx: readonly [number, number];
  readonly byMm: number;
  readonly isPulled: boolean;
}

/**
 * Pulling ribs along the baseboard: while one is pulled it follows the pointer on whole millimetres; let go, all places of
 * its direction become typed ones, with this one moved. Escape, and a pull that ends where it began, change nothing.
 */
export function useRibDrag(ribs: readonly Rib[], pixelsPerMm: number) {
  const { project, change } = useSettings();
  const [pull, setPull] = useState<Pull>();
  const end = () => {
    setPull(undefined);
    if (!pull?.isPulled || pull.byMm === 0) return;
    const { runs, atMm } = pull.rib;
    const places = placesWithMoved(ribs, pull.rib, atMm + pull.byMm);
    change({ jig: { ...project.jig, [runs]: { kind: "typed", atMm: places } } });
  };
  return {
    pull,
    handlersOf: (rib: Rib) => ({
      onPointerDown: (event: PointerEvent<SVGGElement>) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        setPull({ rib, startPx: [event.clientX, event.clientY], byMm: 0, isPulled: false });
      },
      onPointerMove: (event: PointerEvent<SVGGElement>) => {
        if (!pull) return;
        const [x, y] = pull.startPx;
        const byPx = rib.runs === "across" ? event.clientX - x : y - event.clientY;
        const isPulled = pull.isPulled || Math.abs(byPx) > LEAST_PULL_PX;
        setPull({ ...pull, byMm: Math.round(byPx / pixelsPerMm), isPulled });
      },
      onPointerUp: end,
      onPointerCancel: () => setPull(undefined),
    }),
  };
}
