import type { Vec2 } from "../../core/foundation/index.ts";
import type { Viewport } from "../stores/index.ts";
import type { DrawingView, Place } from "../tools/index.ts";
import { contains, type Layout, planTransform, sideTransform, toMm } from "./viewport.ts";

/** How near is near: for a mouse, and for a finger, which hides what it points at. */
const MOUSE_REACH_PX = 12;
const FINGER_REACH_PX = 22;

/** What a board needs to know to turn pixels into places. */
export interface Sheet {
  readonly viewport: Viewport;
  readonly layout: Layout;
  readonly heightFactor: number;
}

/** The view that a pixel of the board lies in; undefined on ruler and cross-section. */
export function viewAt({ layout }: Sheet, px: Vec2): DrawingView | undefined {
  if (contains(layout.plan, px)) return "plan";
  return contains(layout.side, px) ? "side" : undefined;
}

/** The place in a view under a pixel of the board, also beyond the view's edge while something is dragged. */
export function placeAt(
  sheet: Sheet,
  view: DrawingView,
  px: Vec2,
  hand: { readonly isFinger: boolean; readonly snaps: boolean; readonly adds: boolean },
): Place {
  const transform =
    view === "plan"
      ? planTransform(sheet.viewport, sheet.layout)
      : sideTransform(sheet.viewport, sheet.layout, sheet.heightFactor);
  return {
    view,
    at: toMm(transform, px),
    mmPerPx: [1 / transform.pxPerMmAcross, 1 / transform.pxPerMmUp],
    reachPx: hand.isFinger ? FINGER_REACH_PX : MOUSE_REACH_PX,
    snaps: hand.snaps,
    ...(hand.adds ? { adds: true } : {}),
  };
}
