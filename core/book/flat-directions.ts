import type { FlatPoint, SpacePoint } from "../foundation/index.ts";
import type { Part } from "../patterns/index.ts";

/** Where the car's front and its centre line lie from a part's flat pattern, rad from +u toward +v. */
export interface FlatDirections {
  readonly forwardRad: number;
  /** Absent on a part that lies across the centre line, on a fence, and where the part stands too steep to tell. */
  readonly centreRad?: number;
}

/**
 * Sections and fences lie with their front at −u on every part: the left hand is the mirror image about the u axis, so
 * a left fence stands on its head on paper. A transition may run any way; where its front is follows from its rulings.
 */
export function flatDirections(part: Part): FlatDirections {
  if (part.kind === "transition") return directionsOfRulings(part);
  if (part.kind === "fence" || part.hand === "whole") return { forwardRad: Math.PI };
  return { forwardRad: Math.PI, centreRad: part.hand === "right" ? -Math.PI / 2 : Math.PI / 2 };
}

/** Changes in space by less than this for one on the flat give no direction. */
const LEAST_CHANGE = 0.2;

function directionsOfRulings({ rulings, hand }: Part): FlatDirections {
  const places = rulings.flatMap(({ from, to, fromSpace, toSpace }): Place[] => [
    { flat: from, space: fromSpace },
    { flat: to, space: toSpace },
  ]);
  const rearward = changeOf(places, ({ x }) => x);
  const outward = changeOf(places, ({ y }) => Math.abs(y));
  const isTold = Math.hypot(rearward.u, rearward.v) > LEAST_CHANGE;
  const forwardRad = isTold ? Math.atan2(-rearward.v, -rearward.u) : Math.PI;
  if (hand === "whole" || Math.hypot(outward.u, outward.v) < LEAST_CHANGE) return { forwardRad };
  return { forwardRad, centreRad: Math.atan2(-outward.v, -outward.u) };
}

interface Place {
  readonly flat: FlatPoint;
  readonly space: SpacePoint;
}

/** How a coordinate changes over the flat: the plane of least squares through all places. */
function changeOf(places: readonly Place[], measure: (space: SpacePoint) => number): FlatPoint {
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / (values.length || 1);
  const [u0, v0] = [mean(places.map(({ flat }) => flat.u)), mean(places.map(({ flat }) => flat.v))];
  const w0 = mean(places.map(({ space }) => measure(space)));
  let [uu, uv, vv, uw, vw] = [0, 0, 0, 0, 0];
  for (const { flat, space } of places) {
    const [u, v, w] = [flat.u - u0, flat.v - v0, measure(space) - w0];
    uu += u * u;
    uv += u * v;
    vv += v * v;
    uw += u * w;
    vw += v * w;
  }
  const det = uu * vv - uv * uv;
  return det === 0 ? { u: 0, v: 0 } : { u: (uw * vv - vw * uv) / det, v: (vw * uu - uw * uv) / det };
}
