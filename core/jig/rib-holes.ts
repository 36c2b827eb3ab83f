import { at, type FlatPoint } from "../foundation/index.ts";
import { type Stretch, sharedMm } from "./crossing-rib.ts";
import type { RibEdges } from "./rib-outline.ts";
import { heightOnTop } from "./simplify-top.ts";

/** Wood that stays around a hole, mm (common practice). */
const WEB_MM = 25;
/** A place for a hole is looked for this often, mm. */
const STEP_MM = 5;
/** Corners of a hole: at 200 mm its flats lie 0.12 mm inside the circle. */
const CORNERS = 64;

/**
 * Round holes along a rib to reach through and to save weight, each loop clockwise: as many as have their web of 25 mm
 * above, below and between them, and keep clear of `busy` stretches (notches, slots, splices).
 */
export function ribHoles(
  { top, foot }: RibEdges,
  diameterMm: number,
  busy: readonly Stretch[],
): readonly (readonly FlatPoint[])[] {
  if (diameterMm <= 0) return [];
  const radiusMm = diameterMm / 2;
  const lastMm = at(top, -1).u;
  const centres: FlatPoint[] = [];
  let u = at(top, 0).u + radiusMm + WEB_MM;
  while (u + radiusMm + WEB_MM <= lastMm) {
    const v = centreAt({ top, foot }, u, radiusMm);
    const own: Stretch = [u - radiusMm - WEB_MM, u + radiusMm + WEB_MM];
    if (v === undefined || busy.some((one) => sharedMm(one, own) > 0)) u += STEP_MM;
    else {
      centres.push({ u, v });
      u += diameterMm + WEB_MM;
    }
  }
  return evened(centres, { top, foot }, { radiusMm, busy }).map((centre) => circle(centre, radiusMm));
}

/** The middle of the room over a place; undefined where the hole and its webs have none. */
function centreAt({ top, foot }: RibEdges, u: number, radiusMm: number): number | undefined {
  let [most, least] = [Number.POSITIVE_INFINITY, 0];
  const reachMm = radiusMm + WEB_MM;
  for (let du = -reachMm; du <= reachMm; du += STEP_MM) {
    most = Math.min(most, heightOnTop(top, u + du));
    least = Math.max(least, heightOnTop(foot, u + du));
  }
  return most - least < 2 * reachMm ? undefined : (most + least) / 2;
}

/** A row that begins at the left end is moved to the middle where there is as much room on the right. */
function evened(
  centres: readonly FlatPoint[],
  edges: RibEdges,
  { radiusMm, busy }: { readonly radiusMm: number; readonly busy: readonly Stretch[] },
): readonly FlatPoint[] {
  const [first, last] = [centres[0], centres[centres.length - 1]];
  if (first === undefined || last === undefined) return centres;
  const asideMm = (at(edges.top, 0).u + at(edges.top, -1).u - first.u - last.u) / 2;
  const moved = centres.map(({ u }) => ({ u: u + asideMm, v: centreAt(edges, u + asideMm, radiusMm) }));
  const sound = moved.flatMap(({ u, v }) => {
    const own: Stretch = [u - radiusMm - WEB_MM, u + radiusMm + WEB_MM];
    return v === undefined || busy.some((one) => sharedMm(one, own) > 0) ? [] : [{ u, v }];
  });
  return sound.length === centres.length ? sound : centres;
}

const circle = ({ u, v }: FlatPoint, radiusMm: number): FlatPoint[] =>
  Array.from({ length: CORNERS }, (_, i) => {
    const angle = (-2 * Math.PI * i) / CORNERS;
    return { u: u + radiusMm * Math.cos(angle), v: v + radiusMm * Math.sin(angle) };
  });
