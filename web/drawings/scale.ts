/** A box in mm around something drawn: first axis to the right, second upward. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** A point in the order of its axes: to the right, upward. */
export type Spot = readonly [number, number];

/** From mm to the pixels of one picture, whose first axis runs right and whose second runs up. */
export interface Scale {
  readonly pixelsPerMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly toPx: (spot: Spot) => Spot;
}

/** The box around all spots; undefined for none. */
export function boundsOf(spots: Iterable<Spot>): Bounds | undefined {
  let bounds: Bounds | undefined;
  for (const [right, up] of spots)
    bounds = bounds ? grown(bounds, right, up) : { left: right, right, bottom: up, top: up };
  return bounds;
}

export const widthOf = (bounds: Bounds): number => bounds.right - bounds.left;
export const heightOf = (bounds: Bounds): number => bounds.top - bounds.bottom;

export const middleOf = (bounds: Bounds): Spot => [
  (bounds.left + bounds.right) / 2,
  (bounds.bottom + bounds.top) / 2,
];

/** The box around two boxes. */
export const unite = (one: Bounds, other: Bounds): Bounds => ({
  left: Math.min(one.left, other.left),
  right: Math.max(one.right, other.right),
  bottom: Math.min(one.bottom, other.bottom),
  top: Math.max(one.top, other.top),
});

/** The box with `mm` more on every side. */
export const widen = (bounds: Bounds, mm: number): Bounds => ({
  left: bounds.left - mm,
  right: bounds.right + mm,
  bottom: bounds.bottom - mm,
  top: bounds.top + mm,
});

/** A scale with so many pixels to the mm; the picture is as large as the box with a margin around it. */
export function scaleOf(bounds: Bounds, pixelsPerMm: number, marginPx: number): Scale {
  return {
    pixelsPerMm,
    widthPx: widthOf(bounds) * pixelsPerMm + 2 * marginPx,
    heightPx: heightOf(bounds) * pixelsPerMm + 2 * marginPx,
    toPx: ([right, up]) => [
      marginPx + (right - bounds.left) * pixelsPerMm,
      marginPx + (bounds.top - up) * pixelsPerMm,
    ],
  };
}

/** The largest scale at which the box with its margin goes into a picture of this size. */
export function fitScale(
  bounds: Bounds,
  room: { readonly widthPx: number; readonly heightPx: number; readonly marginPx: number },
): Scale {
  const across = (room.widthPx - 2 * room.marginPx) / Math.max(widthOf(bounds), 1);
  const up = (room.heightPx - 2 * room.marginPx) / Math.max(heightOf(bounds), 1);
  return scaleOf(bounds, Math.max(Math.min(across, up), 0.001), room.marginPx);
}

/** The path of a line through spots, for an SVG `d`. */
export function pathOf(spots: readonly Spot[], scale: Scale, end: "open" | "closed"): string {
  const steps = spots.map((spot, index) => {
    const [right, down] = scale.toPx(spot);
    return `${index === 0 ? "M" : "L"}${right.toFixed(2)} ${down.toFixed(2)}`;
  });
  return steps.length === 0 ? "" : steps.join("") + (end === "closed" ? "Z" : "");
}

const grown = (bounds: Bounds, right: number, up: number): Bounds => ({
  left: Math.min(bounds.left, right),
  right: Math.max(bounds.right, right),
  bottom: Math.min(bounds.bottom, up),
  top: Math.max(bounds.top, up),
});
