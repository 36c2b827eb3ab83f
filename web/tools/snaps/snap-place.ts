import type { Vec2 } from "../../../core/foundation/index.ts";
import { awayPx } from "../nearest.ts";
import type { Scene } from "../scene.ts";
import type { Place, Snap } from "../types.ts";
import { alignedWith } from "./aligned-snap.ts";
import { bestOf } from "./candidate.ts";
import type { Axis, Coordinate } from "./coordinate.ts";
import { crossingCandidates } from "./crossing-snap.ts";
import { onGrid } from "./grid-snap.ts";
import { middleCandidates } from "./middle-snap.ts";
import { nearEdges } from "./near-edges.ts";
import { nodeCandidates } from "./node-snap.ts";
import { onLineSnap } from "./on-line-snap.ts";
import { fromOtherView } from "./other-view-snap.ts";
import { rayOnCoordinateCandidates, rayOnEdgeCandidates, raySnap } from "./ray-snap.ts";
import { raysOf } from "./rays.ts";
import { ALIGN_PX, otherLines, SNAP_SHARE, type SnapRequest, segmentStarts } from "./snap-request.ts";
import { onStation } from "./station-snap.ts";
import { squareCandidates, tangentCandidates } from "./touch-snap.ts";

export type { SnapRequest } from "./snap-request.ts";

/**
 * Where a place comes to lie, and why, in words and signs. Points come first (a node, a crossing, where the segment
 * touches or meets an edge squarely, a middle), then edges, then the lines along which the drawing goes on, then each
 * coordinate for itself (centre line, in line with a node, station, other view, grid). With mirroring, plan places left
 * of the centre line come onto it. While snaps are held off only that last rule holds.
 */
export function snapPlace(request: SnapRequest): Snap {
  const { place, context } = request;
  const onHalf = onDrawnHalf(place, context.scene);
  if (!place.snaps || !context.snaps.isOn) return closingSnap(request, place.snaps) ?? onHalf;
  return closingSnap(request, true) ?? pointSnap(request, onHalf.at) ?? coordinateSnap(request, onHalf.at);
}

function onDrawnHalf(place: Place, scene: Scene): Snap {
  const isLeft = place.view === "plan" && scene.mirrored && place.at[1] < 0;
  return isLeft ? { at: [place.at[0], 0], reasons: ["centre line"] } : { at: place.at, reasons: [] };
}

/** An outline can be closed by hand also while all snaps are off. */
function closingSnap({ place, draft, canClose }: SnapRequest, isHeld: boolean): Snap | undefined {
  const first = draft?.[0];
  if (!isHeld || !canClose || !first || awayPx(first.at, place.at, place.mmPerPx) > place.reachPx)
    return undefined;
  return {
    at: first.at,
    reasons: ["first node: closes the outline"],
    signs: [{ kind: "nodes", at: first.at }],
    closes: true,
  };
}

/** A point, an edge or a ray that the place lies near. */
function pointSnap(request: SnapRequest, onHalf: Vec2): Snap | undefined {
  const { place, context } = request;
  const { snaps } = context;
  const reachPx = place.reachPx * SNAP_SHARE;
  const near = nearEdges(otherLines(request), place, reachPx);
  const starts = snaps.tangents || snaps.squares ? segmentStarts(request) : [];
  const rays = raysOf(request);
  const coordinates =
    rays.length > 0 ? ([0, 1] as const).map((axis) => fixedCoordinate(request, onHalf, axis)) : [];
  const point = bestOf(
    [
      ...(snaps.nodes ? nodeCandidates(request) : []),
      ...(snaps.crossings ? crossingCandidates(near) : []),
      ...(snaps.tangents ? tangentCandidates(near, starts) : []),
      ...(snaps.squares ? squareCandidates(near, starts) : []),
      ...(snaps.middles ? middleCandidates(near) : []),
      ...(snaps.lines ? rayOnEdgeCandidates(rays, near) : []),
      ...rayOnCoordinateCandidates(rays, coordinates),
    ],
    place,
    reachPx,
  );
  const found = point ?? (snaps.lines ? onLineSnap(near) : undefined) ?? raySnap(request, rays);
  const crosses = context.scene.mirrored && place.view === "plan" && found !== undefined && found.at[1] < 0;
  return crosses ? undefined : found;
}

function coordinateSnap(request: SnapRequest, at: Vec2): Snap {
  const found = ([0, 1] as const).map((axis) => coordinateOn(request, at, axis));
  const snapped: Vec2 = [found[0]?.value ?? at[0], found[1]?.value ?? at[1]];
  const kept = found.filter((one) => one !== undefined);
  return {
    at: snapped,
    reasons: [...new Set(kept.map(({ reason }) => reason))],
    // On the grid both ways there is one sign.
    signs: kept
      .filter((one, index) => kept.findIndex(({ reason }) => reason === one.reason) === index)
      .map((one) => one.sign(snapped)),
  };
}

const coordinateOn = (request: SnapRequest, at: Vec2, axis: Axis): Coordinate | undefined =>
  fixedCoordinate(request, at, axis) ??
  (request.context.snaps.grid ? onGrid(request, at[axis], axis) : undefined);

/** A coordinate that something other than the grid fixes. */
function fixedCoordinate(request: SnapRequest, at: Vec2, axis: Axis): Coordinate | undefined {
  const { snaps } = request.context;
  const value = at[axis];
  return (
    (snaps.centreLine && axis === 1 ? onCentreLine(request, value) : undefined) ??
    (snaps.aligned ? alignedWith(request, value, axis) : undefined) ??
    (snaps.stations && axis === 0 ? onStation(request, value) : undefined) ??
    (snaps.otherView ? fromOtherView(request, value, axis) : undefined)
  );
}

function onCentreLine({ place }: SnapRequest, y: number): Coordinate | undefined {
  if (place.view !== "plan" || Math.abs(y) > ALIGN_PX * place.mmPerPx[1]) return undefined;
  return { value: 0, reason: "centre line", sign: (at) => ({ kind: "centreLine", at }) };
}
