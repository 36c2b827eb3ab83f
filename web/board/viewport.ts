import type { Vec2 } from "../../core/foundation/index.ts";
import { ScaleLimits, type Viewport } from "../stores/index.ts";

/** A rectangle of the board, px from its upper left corner. */
export interface Box {
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Where the views lie on a board. The cross-section has no box on a board too narrow for it. */
export interface Layout {
  readonly plan: Box;
  readonly ruler: Box;
  readonly side: Box;
  readonly section: Box | undefined;
}

/** From mm to px in one view: px = origin + mm × scale, with the second axis upward. */
export interface Transform {
  readonly originXPx: number;
  readonly originYPx: number;
  readonly pxPerMmAcross: number;
  readonly pxPerMmUp: number;
}

/** A box in mm, first axis to the right, second up. */
export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

const RULER_PX = 30;
const PLAN_SHARE = 0.63;
const SECTION_SHARE = 0.31;
const LEAST_SECTION_PX = 240;
const MOST_SECTION_PX = 460;
const LEAST_SIDE_PX = 320;
/** White around what is drawn when everything is fitted. */
const FIT_MARGIN_PX = 36;
/** Of a low view the margins take no more than this share on either side. */
const MOST_MARGIN = 0.2;
/** Under the cross-section stand three lines of numbers. */
const SECTION_FOOT_PX = 76;
const SECTION_MARGIN_PX = 26;

/** Plan over ruler over side view, the cross-section to the right of the side view. */
export function layoutOf(widthPx: number, heightPx: number): Layout {
  const planPx = Math.round((heightPx - RULER_PX) * PLAN_SHARE);
  const sideTopPx = planPx + RULER_PX;
  const sideHeightPx = Math.max(0, heightPx - sideTopPx);
  const wantedPx = Math.min(MOST_SECTION_PX, Math.max(LEAST_SECTION_PX, Math.round(widthPx * SECTION_SHARE)));
  const sectionPx = widthPx - wantedPx >= LEAST_SIDE_PX ? wantedPx : 0;
  const sideWidthPx = widthPx - sectionPx;
  return {
    plan: { leftPx: 0, topPx: 0, widthPx, heightPx: planPx },
    ruler: { leftPx: 0, topPx: planPx, widthPx, heightPx: RULER_PX },
    side: { leftPx: 0, topPx: sideTopPx, widthPx: sideWidthPx, heightPx: sideHeightPx },
    section:
      sectionPx === 0
        ? undefined
        : { leftPx: sideWidthPx, topPx: sideTopPx, widthPx: sectionPx, heightPx: sideHeightPx },
  };
}

/** The plan: x to the right, y (to the right of the car) upward. */
export const planTransform = (viewport: Viewport, layout: Layout): Transform => ({
  originXPx: originXPx(viewport, layout),
  originYPx: middleY(layout.plan) + viewport.planCentreYMm * viewport.pixelsPerMm,
  pxPerMmAcross: viewport.pixelsPerMm,
  pxPerMmUp: viewport.pixelsPerMm,
});

/** The side view: x as in the plan, z upward, drawn `heightFactor` times as tall. */
export const sideTransform = (viewport: Viewport, layout: Layout, heightFactor: number): Transform => ({
  originXPx: originXPx(viewport, layout),
  originYPx: middleY(layout.side) + viewport.sideCentreZMm * viewport.pixelsPerMm * heightFactor,
  pxPerMmAcross: viewport.pixelsPerMm,
  pxPerMmUp: viewport.pixelsPerMm * heightFactor,
});

/** The cross-section: y to the right, fitted to its box; z as tall against y as the side view has it against x. */
export function sectionTransform(box: Box, extent: Extent, heightFactor: number): Transform {
  const across = (box.widthPx - 2 * SECTION_MARGIN_PX) / Math.max(1, extent.right - extent.left);
  const headPx = marginPx(box.heightPx, FIT_MARGIN_PX);
  const footPx = marginPx(box.heightPx, SECTION_FOOT_PX);
  const up = (box.heightPx - headPx - footPx) / Math.max(1, extent.top - extent.bottom);
  const pxPerMm = Math.max(ScaleLimits.least, Math.min(across, up / heightFactor));
  return {
    originXPx: box.leftPx + box.widthPx / 2 - ((extent.left + extent.right) / 2) * pxPerMm,
    originYPx:
      middleY(box) + (headPx - footPx) / 2 + ((extent.bottom + extent.top) / 2) * pxPerMm * heightFactor,
    pxPerMmAcross: pxPerMm,
    pxPerMmUp: pxPerMm * heightFactor,
  };
}

const marginPx = (wholePx: number, wantedPx: number): number => Math.min(wantedPx, wholePx * MOST_MARGIN);

const middleY = (box: Box): number => box.topPx + box.heightPx / 2;
const originXPx = (viewport: Viewport, layout: Layout): number =>
  layout.side.leftPx + layout.side.widthPx / 2 - viewport.centreXMm * viewport.pixelsPerMm;

export const toPx = (transform: Transform, at: Vec2): Vec2 => [
  transform.originXPx + at[0] * transform.pxPerMmAcross,
  transform.originYPx - at[1] * transform.pxPerMmUp,
];

export const toMm = (transform: Transform, px: Vec2): Vec2 => [
  (px[0] - transform.originXPx) / transform.pxPerMmAcross,
  (transform.originYPx - px[1]) / transform.pxPerMmUp,
];

export const contains = (box: Box, [xPx, yPx]: Vec2): boolean =>
  xPx >= box.leftPx && xPx < box.leftPx + box.widthPx && yPx >= box.topPx && yPx < box.topPx + box.heightPx;

/** How the board is seen after a zoom about a point of it, which stays where it is. */
export function zoomAbout(
  viewport: Viewport,
  layout: Layout,
  px: Vec2,
  zoom: { readonly factor: number; readonly heightFactor: number },
): Viewport {
  const pixelsPerMm = clamp(viewport.pixelsPerMm * zoom.factor, ScaleLimits.least, ScaleLimits.most);
  const gain = 1 / viewport.pixelsPerMm - 1 / pixelsPerMm;
  const isInPlan = px[1] < layout.ruler.topPx;
  const isInSide = px[1] >= layout.side.topPx;
  const centreX = layout.side.leftPx + layout.side.widthPx / 2;
  const upPx = (box: Box) => middleY(box) - px[1];
  return {
    pixelsPerMm,
    centreXMm: viewport.centreXMm + (px[0] - centreX) * gain,
    planCentreYMm: viewport.planCentreYMm + (isInPlan ? upPx(layout.plan) * gain : 0),
    sideCentreZMm: viewport.sideCentreZMm + (isInSide ? (upPx(layout.side) * gain) / zoom.heightFactor : 0),
  };
}

/** How the board is seen after it was pulled by pixels; up and down moves the view that was pulled. */
export function panBy(viewport: Viewport, view: "plan" | "side", px: Vec2, heightFactor: number): Viewport {
  const byMm = [px[0] / viewport.pixelsPerMm, px[1] / viewport.pixelsPerMm] as const;
  return {
    ...viewport,
    centreXMm: viewport.centreXMm - byMm[0],
    planCentreYMm: viewport.planCentreYMm + (view === "plan" ? byMm[1] : 0),
    sideCentreZMm: viewport.sideCentreZMm + (view === "side" ? byMm[1] / heightFactor : 0),
  };
}

/** How the board is seen with everything on it. */
export function fitViews(layout: Layout, plan: Extent, side: Extent, heightFactor: number): Viewport {
  const left = Math.min(plan.left, side.left);
  const right = Math.max(plan.right, side.right);
  const room = (box: Box, mm: number, of: "widthPx" | "heightPx") =>
    Math.max(1, box[of] - 2 * marginPx(box[of], FIT_MARGIN_PX)) / Math.max(1, mm);
  const pixelsPerMm = Math.min(
    room(layout.side, right - left, "widthPx"),
    room(layout.plan, plan.top - plan.bottom, "heightPx"),
    room(layout.side, (side.top - side.bottom) * heightFactor, "heightPx"),
  );
  return {
    pixelsPerMm: clamp(pixelsPerMm, ScaleLimits.least, ScaleLimits.most),
    centreXMm: (left + right) / 2,
    planCentreYMm: (plan.bottom + plan.top) / 2,
    sideCentreZMm: (side.bottom + side.top) / 2,
  };
}

const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));
