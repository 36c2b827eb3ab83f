import { type FlatPoint, type PlanPoint, toPlan } from "../foundation/index.ts";
import { partPlaces } from "../patterns/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { besideLine, placeBeside } from "./across-joint.ts";
import type { FaceRegion } from "./face-regions.ts";
import { inwardOf } from "./joint-laps.ts";
import type { FaceJoint } from "./joint-lines.ts";
import { isWithin, lengthMm } from "./polygons.ts";

/** Where a place on a face laid flat comes to lie in plan. */
export type FaceToPlan = (place: FlatPoint) => PlanPoint;

/** Rounds to find the place of the pattern under a place on the face, which is nearly the same. */
const ROUNDS = 12;
/** As near as a picture shows it, mm. */
const NEAR_MM = 0.02;
/** How far inside an edge the sheet's slope there is looked at, mm. */
const INSIDE_MM = 4;

/**
 * Where the faces of the tray lie in plan. Beyond a joint a place lies on the neighbour, as far beyond it as on the flat;
 * beyond a free edge the face is carried straight on. Undefined where a part has no sheet.
 */
export function facesToPlan(
  regions: readonly FaceRegion[],
  joints: readonly FaceJoint[],
  sheets: readonly Sheet[],
): (region: FaceRegion) => FaceToPlan | undefined {
  const onFaces = new Map(regions.map((region) => [region, onFace(region, sheets)]));
  return (region) => {
    const own = onFaces.get(region);
    if (own === undefined) return undefined;
    return (place) => {
      if (isWithin(region.area, place)) return own(place);
      const over = overJoint(region, joints, place);
      const theirs = over && onFaces.get(over.region);
      if (over === undefined || theirs === undefined) return straightOn(region, own, place);
      return isWithin(over.region.area, over.place)
        ? theirs(over.place)
        : straightOn(over.region, theirs, over.place);
    };
  };
}

function onFace({ part, fromFlat }: FaceRegion, sheets: readonly Sheet[]): FaceToPlan | undefined {
  const toSpace = partPlaces(sheets, part);
  if (toSpace === undefined) return undefined;
  return (place) => {
    let flat = place;
    for (let round = 0; round < ROUNDS; round++) {
      const seen = fromFlat(flat);
      const [du, dv] = [place.u - seen.u, place.v - seen.v];
      flat = { u: flat.u + du, v: flat.v + dv };
      if (Math.hypot(du, dv) < NEAR_MM) break;
    }
    return toPlan(toSpace(flat, 0));
  };
}

/** The place on the neighbour, where the border of the face that is nearest is a joint. */
export function overJoint(
  region: FaceRegion,
  joints: readonly FaceJoint[],
  place: FlatPoint,
): { readonly region: FaceRegion; readonly place: FlatPoint } | undefined {
  const borderMm = nearestOnBorder(region, place).awayMm;
  const beside = joints.flatMap(({ regions, lines }) => {
    const side = regions[0] === region ? 0 : regions[1] === region ? 1 : undefined;
    if (side === undefined) return [];
    const [own, other] = side === 0 ? lines : [lines[1], lines[0]];
    return [{ own, other, neighbour: regions[1 - side], ...besideLine(own, place) }];
  });
  const [nearest] = beside.toSorted((a, b) => a.awayMm - b.awayMm);
  if (!nearest?.neighbour || nearest.awayMm > borderMm + 1) return undefined;
  const beyondMm = -inwardOf(nearest.own, region.area) * nearest.leftMm;
  const inward = inwardOf(nearest.other, nearest.neighbour.area);
  const share = nearest.alongMm / lengthMm(nearest.own);
  return {
    region: nearest.neighbour,
    place: placeBeside(nearest.other, share, inward * beyondMm),
  };
}

/** Beyond a free edge as the sheet leans just inside it. */
function straightOn(region: FaceRegion, toPlanOn: FaceToPlan, place: FlatPoint): PlanPoint {
  const { foot, awayMm } = nearestOnBorder(region, place);
  if (awayMm < NEAR_MM) return toPlanOn(foot);
  const [du, dv] = [(place.u - foot.u) / awayMm, (place.v - foot.v) / awayMm];
  const here = toPlanOn(foot);
  const inside = toPlanOn({ u: foot.u - INSIDE_MM * du, v: foot.v - INSIDE_MM * dv });
  const scale = awayMm / INSIDE_MM;
  return { x: here.x + (here.x - inside.x) * scale, y: here.y + (here.y - inside.y) * scale };
}

function nearestOnBorder(
  { area }: FaceRegion,
  { u, v }: FlatPoint,
): { readonly foot: FlatPoint; readonly awayMm: number } {
  let best = { foot: { u, v }, awayMm: Number.POSITIVE_INFINITY };
  for (const loop of area) {
    let a = loop[loop.length - 1];
    for (const b of loop) {
      if (a) {
        const [du, dv] = [b.u - a.u, b.v - a.v];
        const share = Math.min(1, Math.max(0, ((u - a.u) * du + (v - a.v) * dv) / (du * du + dv * dv || 1)));
        const foot = { u: a.u + share * du, v: a.v + share * dv };
        const awayMm = Math.hypot(u - foot.u, v - foot.v);
        if (awayMm < best.awayMm) best = { foot, awayMm };
      }
      a = b;
    }
  }
  return best;
}
