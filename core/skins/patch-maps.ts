import { at, type FlatPoint, type PlanPoint } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import type { Part } from "../patterns/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { facesToPlan, overJoint } from "./face-places.ts";
import { type FaceRegion, faceRegions } from "./face-regions.ts";
import { type FaceJoint, faceJoints } from "./joint-lines.ts";
import { lapsBetween } from "./laps-between.ts";
import type { MappedLap, MappedPatch, MappedPly, PatchMap } from "./map-types.ts";
import { type Area, areaMm2, isWithin, thinned } from "./polygons.ts";
import { roomiestPlace } from "./roomiest-place.ts";
import type { SkinFace, SkinPatch, SkinPlan } from "./types.ts";

/** What the patches lie on. */
interface Ground {
  readonly sheets: readonly Sheet[];
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
}

/** A face whose plan is so much smaller than itself is drawn laid flat as well. */
const STEEP_SHARE = 0.9;

/**
 * Where every patch lies: each lying face in plan, parts of it that stand steeply also laid flat, and the sides of fences
 * laid flat; each seen from its outer side, as whoever lays the cloth sees it: the lower face from below with the front
 * to the left still, the outboard side of a fence from outboard.
 */
export function patchMaps({ sheets, parts, joints }: Ground, { faces }: SkinPlan): readonly PatchMap[] {
  const regions = faceRegions(sheets, parts, joints);
  return faces.flatMap((face): readonly PatchMap[] => {
    const own = regions.filter((region) => region.face === face.face);
    const lines = faceJoints(own, joints);
    const flats = (of: readonly FaceRegion[]) => of.map((region) => flatMap(face, region, lines));
    if (face.face === "fence sides") return flats(own);
    const plan = planMap(face, own, lines, sheets);
    const steep = own.filter((region) => {
      const seen = plan.grounds.find(({ partId }) => partId === region.part.id)?.loopsMm ?? [];
      return Math.abs(areaMm2(seen.map(asArea))) < STEEP_SHARE * areaMm2(region.area);
    });
    return [plan, ...flats(steep)];
  });
}

const asArea = (loop: readonly PlanPoint[]): readonly FlatPoint[] => loop.map(({ x, y }) => ({ u: x, v: y }));
const asLoop = (loop: readonly FlatPoint[]): readonly PlanPoint[] => loop.map(({ u, v }) => ({ x: u, y: v }));

function planMap(
  face: SkinFace,
  regions: readonly FaceRegion[],
  joints: readonly FaceJoint[],
  sheets: readonly Sheet[],
): PatchMap {
  const toPlan = facesToPlan(regions, joints, sheets);
  const turned = face.face === "lower face" ? -1 : 1;
  const seenOn = (region: FaceRegion) => {
    const place = toPlan(region);
    return place && ((flat: FlatPoint) => turnedOver(place(flat), turned));
  };
  return {
    id: face.face,
    face: face.face,
    frame: "plan",
    front: "left",
    partIds: regions.map(({ part }) => part.id),
    grounds: regions.flatMap((region) => {
      const seen = seenOn(region);
      return seen ? [{ partId: region.part.id, loopsMm: loopsSeen(region.area, seen) }] : [];
    }),
    plies: pliesOf(face, (patch) => {
      const region = regionOf(patch, regions);
      const seen = region && seenOn(region);
      return region && seen ? mapped(face, patch, region, seen) : undefined;
    }),
  };
}

const turnedOver = ({ x, y }: PlanPoint, turned: 1 | -1): PlanPoint => ({ x, y: turned * y });

function flatMap(face: SkinFace, region: FaceRegion, joints: readonly FaceJoint[]): PatchMap {
  const { part, side } = region;
  const seen = seenFromOutside(part, side);
  const fieldIds = face.fields.filter((one) => one.partId === part.id && one.side === side);
  const [{ id = part.id } = {}] = fieldIds;
  return {
    id: id.replace(/\d+$/, fieldIds.length > 1 ? "" : "$&"),
    face: face.face,
    frame: "flat",
    front: seen({ u: 0, v: 0 }).x < seen({ u: 1, v: 0 }).x ? "left" : "right",
    partIds: [part.id],
    grounds: [{ partId: part.id, loopsMm: loopsSeen(region.area, seen) }],
    plies: pliesOf(face, (patch) => {
      const isOwn = fieldIds.some((field) => field.id === patch.fieldId);
      if (isOwn) return mapped(face, patch, region, seen);
      // Of a neighbour what laps onto this face.
      const neighbour = joints
        .filter(({ regions }) => regions.includes(region))
        .flatMap(({ regions }) => regions)
        .find((one) => one !== region && one.part.id === patch.partId);
      return neighbour && reaching(face, patch, { neighbour, region, joints }, seen);
    }),
  };
}

/** A face laid flat as it is seen from its outer side, a fence with its lower edge down. */
function seenFromOutside({ hand }: Part, side: FaceRegion["side"]): (flat: FlatPoint) => PlanPoint {
  // The pattern of a fence on the left is the image of the right one: its v runs down.
  const up = hand === "left" ? -1 : 1;
  switch (side) {
    case "inboard face":
      return ({ u, v }) => ({ x: up * u, y: up * v });
    case "outboard face":
      return ({ u, v }) => ({ x: -up * u, y: up * v });
    case "lower face":
      return ({ u, v }) => ({ x: u, y: -v });
    case "upper face":
      return ({ u, v }) => ({ x: u, y: v });
  }
}

interface Beside {
  readonly neighbour: FaceRegion;
  readonly region: FaceRegion;
  readonly joints: readonly FaceJoint[];
}

/** What a neighbour's patch covers of a face that it laps onto; undefined where it does not reach it. */
function reaching(
  face: SkinFace,
  patch: SkinPatch,
  { neighbour, region, joints }: Beside,
  seen: (flat: FlatPoint) => PlanPoint,
): MappedPatch | undefined {
  const between = joints.filter(({ regions }) => regions.includes(region) && regions.includes(neighbour));
  const onto = stepped(patch.outlineMm).flatMap((place) => {
    if (isWithin(neighbour.area, place)) return [];
    const over = overJoint(neighbour, between, place);
    return over?.region === region ? [over.place] : [];
  });
  if (onto.length < 3 || Math.abs(areaMm2([onto])) < LEAST_MM2) return undefined;
  return {
    ...mapped(face, patch, region, seen),
    isOfNeighbour: true,
    loopsMm: loopsSeen([onto], seen),
  };
}

/** Less of a neighbour's cloth is not worth drawing, mm². */
const LEAST_MM2 = 200;

const regionOf = (patch: SkinPatch, regions: readonly FaceRegion[]): FaceRegion | undefined =>
  regions.find(({ part }) => part.id === patch.partId);

function mapped(
  face: SkinFace,
  patch: SkinPatch,
  region: FaceRegion,
  seen: (flat: FlatPoint) => PlanPoint,
): MappedPatch {
  const foot = insideOf(patch, region);
  const [from, to] = [
    seen(foot),
    seen({ u: foot.u + Math.cos(patch.warpRad), v: foot.v + Math.sin(patch.warpRad) }),
  ];
  return {
    patchId: patch.id,
    partId: patch.partId,
    session: 1 + face.sessions.findIndex(({ fieldIds }) => fieldIds.includes(patch.fieldId)),
    loopsMm: loopsSeen([patch.outlineMm, ...patch.holesMm], seen),
    warpRad: Math.atan2(to.y - from.y, to.x - from.x),
    middle: from,
    roomMm: 0,
  };
}

/** A place of a patch on its own face, near its middle. */
function insideOf({ outlineMm }: SkinPatch, region: FaceRegion): FlatPoint {
  const mean = {
    u: outlineMm.reduce((sum, { u }) => sum + u, 0) / outlineMm.length,
    v: outlineMm.reduce((sum, { v }) => sum + v, 0) / outlineMm.length,
  };
  if (isWithin(region.area, mean)) return mean;
  return outlineMm.find((place) => isWithin(region.area, place)) ?? region.area[0]?.[0] ?? mean;
}

/** Steps along an outline between which a picture is straight, and how far it may then be off, mm. */
const [STEP_MM, OFF_MM] = [20, 0.3];

const stepped = (loop: readonly FlatPoint[]): readonly FlatPoint[] =>
  loop.flatMap((a, i) => {
    const b = at(loop, (i + 1) % loop.length);
    const count = Math.max(1, Math.ceil(Math.hypot(b.u - a.u, b.v - a.v) / STEP_MM));
    return Array.from({ length: count }, (_, k) => ({
      u: a.u + ((b.u - a.u) * k) / count,
      v: a.v + ((b.v - a.v) * k) / count,
    }));
  });

const loopsSeen = (area: Area, seen: (flat: FlatPoint) => PlanPoint): readonly (readonly PlanPoint[])[] =>
  thinned(
    area.map((loop) => asArea(stepped(loop).map(seen))),
    OFF_MM,
  )
    .filter((loop) => loop.length > 2)
    .map(asLoop);

/** The plies of a face with their patches as they are seen, and where two of them lap. */
function pliesOf(face: SkinFace, place: (patch: SkinPatch) => MappedPatch | undefined): readonly MappedPly[] {
  const patches = face.fields.flatMap((field) => field.patches);
  const numbers = [...new Set(patches.map(({ ply }) => ply))].sort((a, b) => a - b);
  return numbers.flatMap((ply): readonly MappedPly[] => {
    const seen = patches.filter((patch) => patch.ply === ply).flatMap((patch) => place(patch) ?? []);
    if (seen.length === 0) return [];
    const laps = lapsBetween(seen);
    return [{ ply, name: nameOfPly(ply, face), patches: seen.map((patch) => withRoom(patch, laps)), laps }];
  });
}

const nameOfPly = (ply: number, { plies }: SkinFace): string =>
  ply <= plies.length ? `${ply}` : `reinforcement ${ply - plies.length}`;

function withRoom(patch: MappedPatch, laps: readonly MappedLap[]): MappedPatch {
  const own = laps.filter(({ patchIds }) => patchIds.includes(patch.patchId));
  const { place, roomMm } = roomiestPlace(
    patch.loopsMm,
    own.flatMap(({ loopsMm }) => loopsMm),
  );
  return { ...patch, middle: place, roomMm };
}
