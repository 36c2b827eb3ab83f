import { type Bounds, boundsOf, heightOf, pathOf, type Spot, scaleOf, unite, widthOf } from "./scale.ts";
import { type PictureLine, pictureBounds, type TrayPicture } from "./tray-picture.ts";

/** A line of a picture as it is drawn. */
export interface DrawnLine {
  readonly kind: PictureLine["kind"];
  readonly path: string;
}

/** Lines laid into a picture of this size, px. */
export interface PictureLayout {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly lines: readonly DrawnLine[];
  /** The centre line of a plan, or the ground of a side view; empty where a plan has none. */
  readonly datum: string;
}

/** What a picture is laid into. */
interface Room {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly marginPx: number;
}

/** A room with the scale that was found for it. */
type Frame = Room & { readonly pixelsPerMm: number };

/** Plan and side view one above the other: the same scale, the same x under each other. */
export interface PairLayout {
  readonly plan: PictureLayout;
  readonly side: PictureLayout;
}

/** The plan alone, as large as it goes into the room; undefined where nothing is drawn. */
export function layOutPlan({ plan }: TrayPicture, room: Room): PictureLayout | undefined {
  const bounds = pictureBounds(plan);
  if (!bounds) return undefined;
  return planLaidOut(plan, bounds, { ...room, pixelsPerMm: scaleFor([bounds], room) });
}

/** Plan and side view at one scale in one room, x under x; undefined where one of them shows nothing. */
export function layOutPair({ plan, side }: TrayPicture, room: Room): PairLayout | undefined {
  const [planBounds, sideBounds] = [pictureBounds(plan), pictureBounds([...side, GROUND])];
  if (!planBounds || !sideBounds || side.length === 0) return undefined;
  const { left, right } = unite(planBounds, sideBounds);
  const [upper, lower] = [
    { ...planBounds, left, right },
    { ...sideBounds, left, right },
  ];
  const frame = { ...room, pixelsPerMm: scaleFor([upper, lower], room) };
  return { plan: planLaidOut(plan, upper, frame), side: laidOut(side, lower, frame) };
}

/** A plan shows a centre line where it lies on both sides of it. */
function planLaidOut(plan: readonly PictureLine[], bounds: Bounds, frame: Frame): PictureLayout {
  const layout = laidOut(plan, bounds, frame);
  return bounds.bottom < 0 && bounds.top > 0 ? layout : { ...layout, datum: "" };
}

/** The ground, so that the side view reaches down to it. */
const GROUND: PictureLine = { kind: "line", points: [[0, 0]] };

/** The largest scale at which boxes one above the other go into the room. */
function scaleFor(boxes: readonly Bounds[], { widthPx, heightPx, marginPx }: Room): number {
  const widest = Math.max(...boxes.map(widthOf), 1);
  const height = boxes.reduce((sum, box) => sum + heightOf(box), 0);
  const across = (widthPx - 2 * marginPx) / widest;
  const up = (heightPx - 2 * marginPx * boxes.length) / Math.max(height, 1);
  return Math.max(Math.min(across, up), 0.001);
}

/** Lines in a picture as wide as the room, in its middle, and as high as they need. */
function laidOut(
  lines: readonly PictureLine[],
  bounds: Bounds,
  { widthPx, marginPx, pixelsPerMm }: Frame,
): PictureLayout {
  const spareMm = Math.max((widthPx - 2 * marginPx) / pixelsPerMm - widthOf(bounds), 0) / 2;
  const wide = { ...bounds, left: bounds.left - spareMm, right: bounds.right + spareMm };
  const scale = scaleOf(wide, pixelsPerMm, marginPx);
  return {
    widthPx: scale.widthPx,
    heightPx: scale.heightPx,
    lines: [...lines].sort(byKind).map(({ kind, points }) => ({
      kind,
      path: pathOf(points, scale, kind === "sheet" || kind === "opening" ? "closed" : "open"),
    })),
    datum: pathOf(datumOf(bounds), scale, "open"),
  };
}

/** The line where the second axis is zero, a little longer than what it runs through. */
function datumOf({ left, right }: Bounds): readonly Spot[] {
  const beyondMm = (right - left) * 0.01;
  return [
    [left - beyondMm, 0],
    [right + beyondMm, 0],
  ];
}

/** Sheets lie below, openings on them, lines on top. */
const ORDER: readonly PictureLine["kind"][] = ["sheet", "opening", "edge", "line"];
const byKind = (a: PictureLine, b: PictureLine): number => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind);

/** Length and width of a tray over all, mm; undefined where nothing is drawn. */
export function sizeOverAll({
  plan,
}: TrayPicture): { readonly lengthMm: number; readonly widthMm: number } | undefined {
  const bounds = boundsOf(plan.flatMap(({ points }) => points));
  return bounds && { lengthMm: widthOf(bounds), widthMm: heightOf(bounds) };
}
