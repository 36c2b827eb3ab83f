import { distance2, type Vec2 } from "../foundation/index.ts";
import type { Underlay, ViewPoint } from "./schema.ts";

/** How a picture lies in its view: what scaling, turning and moving it change. */
export type Placement = Pick<Underlay, "origin" | "mmPerPx" | "turnRad">;

/** Where a pixel of a picture lies in its view; pixels count from the upper left corner, to the right and down. */
export function pixelInView({ origin, mmPerPx, turnRad }: Placement, [acrossPx, downPx]: Vec2): Vec2 {
  const [across, up] = turned([acrossPx * mmPerPx, -downPx * mmPerPx], turnRad);
  return [origin.x + across, origin.up + up];
}

/** The pixel of a picture that lies at a place of its view. */
export function pixelAt({ origin, mmPerPx, turnRad }: Placement, at: Vec2): Vec2 {
  const [across, up] = turned([at[0] - origin.x, at[1] - origin.up], -turnRad);
  return [across / mmPerPx, -up / mmPerPx];
}

/** Whether a place of the view lies on the picture. */
export function isOnPicture(underlay: Underlay, at: Vec2): boolean {
  const [across, down] = pixelAt(underlay, at);
  return across >= 0 && across <= underlay.widthPx && down >= 0 && down <= underlay.heightPx;
}

/** The corners of a picture in its view: upper left, upper right, lower right, lower left as it stands upright. */
export const cornersOfPicture = (underlay: Underlay): readonly Vec2[] =>
  [
    [0, 0] as const,
    [underlay.widthPx, 0] as const,
    [underlay.widthPx, underlay.heightPx] as const,
    [0, underlay.heightPx] as const,
  ].map((px) => pixelInView(underlay, px));

/**
 * The placement at which two places picked on the picture are a known distance apart; the first stays where it
 * is. Undefined where the two are one place, or the distance is none.
 */
export function scaledByTwoPoints(
  placement: Placement,
  [first, second]: readonly [Vec2, Vec2],
  distanceMm: number,
): Placement | undefined {
  const pickedMm = distance2(first, second);
  const factor = distanceMm / pickedMm;
  if (!(pickedMm > 0 && distanceMm > 0 && Number.isFinite(factor))) return undefined;
  const { origin } = placement;
  return {
    ...placement,
    mmPerPx: placement.mmPerPx * factor,
    origin: {
      x: first[0] + (origin.x - first[0]) * factor,
      up: first[1] + (origin.up - first[1]) * factor,
    },
  };
}

/** The placement turned about a place that stays where it is. */
export function turnedAbout(placement: Placement, about: Vec2, byRad: number): Placement {
  const [across, up] = turned([placement.origin.x - about[0], placement.origin.up - about[1]], byRad);
  return {
    ...placement,
    origin: { x: about[0] + across, up: about[1] + up },
    turnRad: withinHalfTurn(placement.turnRad + byRad),
  };
}

/**
 * The placement at which the line between two picked places is level; the first stays where it is. The line is
 * turned the short way, whichever of its ends was picked first. Undefined where the two are one place.
 */
export function levelled(
  placement: Placement,
  [first, second]: readonly [Vec2, Vec2],
): Placement | undefined {
  if (!(distance2(first, second) > 0)) return undefined;
  const slopeRad = Math.atan2(second[1] - first[1], second[0] - first[0]);
  const shortRad = slopeRad - Math.PI * Math.round(slopeRad / Math.PI);
  return turnedAbout(placement, first, -shortRad);
}

/** The placement moved by a distance of its view. */
export const movedBy = (placement: Placement, [across, up]: Vec2): Placement => ({
  ...placement,
  origin: { x: placement.origin.x + across, up: placement.origin.up + up },
});

/** The placement at which a picture lies upright in a box of its view, as large as fits, in its middle. */
export function laidInto(
  size: Pick<Underlay, "widthPx" | "heightPx">,
  box: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number },
): Placement {
  const mmPerPx = Math.min((box.right - box.left) / size.widthPx, (box.top - box.bottom) / size.heightPx);
  const origin: ViewPoint = {
    x: (box.left + box.right) / 2 - (size.widthPx * mmPerPx) / 2,
    up: (box.bottom + box.top) / 2 + (size.heightPx * mmPerPx) / 2,
  };
  return { origin, mmPerPx, turnRad: 0 };
}

function turned([across, up]: Vec2, byRad: number): Vec2 {
  const [cos, sin] = [Math.cos(byRad), Math.sin(byRad)];
  return [across * cos - up * sin, across * sin + up * cos];
}

/** The same direction, from half a turn back to half a turn on. */
const withinHalfTurn = (angleRad: number): number =>
  angleRad - 2 * Math.PI * Math.round(angleRad / (2 * Math.PI));
