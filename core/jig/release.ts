import { at, type PlanPoint, type SpacePoint } from "../foundation/index.ts";
import type { Release, ReleaseLock } from "./board-types.ts";
import { bodyOfRib } from "./body-of-rib.ts";
import type { Stretch } from "./crossing-rib.ts";
import type { FenceBand } from "./fence-notches.ts";
import { highestWood } from "./highest-wood.ts";
import type { RestingFace } from "./resting-face.ts";
import type { Rib } from "./types.ts";

/** Wood that stands over something by less than this does not hold it, mm. */
const HOLDS_MM = 0.5;
/** Things are followed in steps of this, mm. */
const STEP_MM = 3;

/** A top that is opened for something has this much room around it, as for a fence, mm. */
const ROOM_MM = 3;
/** A place on the face of a board is in it, mm. */
const TOUCH_MM = 1e-6;
/** Wood that something touches from beside is not over it: it is told to be only where it is over both sides of it, mm. */
const BESIDE_MM = 0.5;

/** Flat patches of the shell, told by their corners. */
export interface HangingFaces {
  readonly by: "wing" | "sheet";
  readonly partId: string;
  readonly faces: readonly (readonly SpacePoint[])[];
}

/** What of the shell reaches down between or under the ribs, besides the faces that lie on them. */
export interface Hanging {
  readonly fences: readonly FenceBand[];
  readonly faces: readonly HangingFaces[];
}

export interface ReleaseSettings {
  readonly heightOf: (zMm: number) => number;
  readonly attitude: Rib["attitude"];
  readonly proudLimitMm: number;
}

/**
 * Whether the glued, skinned shell lifts straight up from the board. It does where nothing of it lies under wood: every
 * rib is looked at in vertical columns over its whole board, and a part that reaches lower than the highest wood of its
 * column locks the shell to that rib. A wing of folded metal locks it once its plate is on. Of each part under each rib the
 * deepest place is told, and how the rib's top has to be opened to let it out.
 */
export function releaseOf(
  ribs: readonly Rib[],
  face: RestingFace,
  hanging: Hanging,
  settings: ReleaseSettings,
): Release {
  // On an inverted jig fences look up: they hang over the ribs' tops.
  const fences = settings.attitude === "upright" ? hanging.fences.flatMap(fencePoints) : [];
  const locks = ribs.flatMap((rib) => [
    ...[...fences, ...hanging.faces.flatMap((faces) => pointsIn(faces, rib))].flatMap((point) =>
      lockAt(rib, point, settings),
    ),
    ...sheetLocks(rib, face, settings),
  ]);
  return {
    direction: "straight up from the board",
    steepestRad: Math.max(0, ...ribs.flatMap(slopesOf)),
    locks: onceEach(locks),
  };
}

interface HangingPoint extends SpacePoint {
  readonly by: ReleaseLock["by"];
  readonly partId: string;
}

function lockAt(rib: Rib, point: HangingPoint, settings: ReleaseSettings): readonly ReleaseLock[] {
  const { x, y, z, by, partId } = point;
  const [alongMm, besideMm] = rib.runs === "across" ? [y, x] : [x, y];
  const [fromMm, toMm] = bodyOfRib(rib);
  if (besideMm < fromMm - TOUCH_MM || besideMm > toMm + TOUCH_MM) return [];
  const heightMm = settings.heightOf(z);
  const [left, right] = [-BESIDE_MM, BESIDE_MM].map((mm) => highestWood(rib.outlineMm, alongMm + mm));
  const overMm = Math.min(left ?? 0, right ?? 0) - heightMm;
  const allowedMm = by === "sheet" ? allowedOn(rib, settings) : HOLDS_MM;
  if (overMm <= allowedMm) return [];
  return [
    { ribId: rib.id, by, partId, overMm, at: { x, y }, alongMm: [alongMm, alongMm], openToMm: heightMm },
  ];
}

/** What a top has to be opened to, with room for what comes out. */
const openingAt = (alongMm: number, heightMm: number): Pick<ReleaseLock, "alongMm" | "openToMm"> => ({
  alongMm: [alongMm - ROOM_MM, alongMm + ROOM_MM],
  openToMm: heightMm - ROOM_MM,
});

/** Wood on which a sheet lies may stand as proud as its cut has it. */
const allowedOn = (rib: Rib, { proudLimitMm }: ReleaseSettings): number =>
  HOLDS_MM + Math.max(proudLimitMm, rib.cut === "bevel" ? rib.mostProudMm : 0);

/** The lower edge of a fence over its whole thickness. */
function fencePoints({ partId, lines, lowZMm, halfMm }: FenceBand): readonly HangingPoint[] {
  const [middle = [], one = [], other = []] = lines;
  const wideMm = Math.hypot(at(one, 0).x - at(middle, 0).x, at(one, 0).y - at(middle, 0).y);
  const share = wideMm > 0 ? halfMm / wideMm : 0;
  return middle.flatMap((p, i) => {
    const next = middle[i + 1];
    if (next === undefined) return [];
    const rows = [one, other, middle].map((side) => ({
      from: mix(p, at(side, i), share),
      to: mix(next, at(side, i + 1), share),
    }));
    const z = Math.min(at(lowZMm, i), at(lowZMm, i + 1));
    return rows.flatMap(({ from, to }) =>
      stepsBetween(from, to).map((on) => ({ ...on, z, by: "fence" as const, partId })),
    );
  });
}

/** Where a board is looked at across its thickness: both faces and the middle. */
const looksAcross = ([fromMm, toMm]: Stretch): readonly number[] => [fromMm, (fromMm + toMm) / 2, toMm];

/** Patches where the planes of a rib's board cut them. */
function pointsIn({ by, partId, faces }: HangingFaces, rib: Rib): readonly HangingPoint[] {
  const axis = rib.runs === "across" ? "x" : "y";
  const body = bodyOfRib(rib);
  return faces
    .filter((corners) => reaches(corners, axis, body))
    .flatMap((corners) =>
      looksAcross(body).flatMap((planeMm) => {
        const ends = corners.flatMap((to, i) => crossing(at(corners, i - 1), to, { axis, planeMm }));
        const [first, last] = [ends[0], ends[1]];
        if (first === undefined || last === undefined) return [];
        const steps = Math.max(1, Math.ceil(distance(first, last) / STEP_MM));
        return Array.from({ length: steps + 1 }, (_, k): HangingPoint => {
          return { ...mixSpace(first, last, k / steps), by, partId };
        });
      }),
    );
}

/** Whether some corners lie on both sides of a board, or in it. */
function reaches(corners: readonly SpacePoint[], axis: "x" | "y", [fromMm, toMm]: Stretch): boolean {
  const isBefore = (p: SpacePoint) => p[axis] < fromMm;
  const isBehind = (p: SpacePoint) => p[axis] > toMm;
  return !corners.every(isBefore) && !corners.every(isBehind);
}

function crossing(
  from: SpacePoint,
  to: SpacePoint,
  { axis, planeMm }: { readonly axis: "x" | "y"; readonly planeMm: number },
): readonly SpacePoint[] {
  const [a, b] = [from[axis] - planeMm, to[axis] - planeMm];
  return a > 0 === b > 0 ? [] : [mixSpace(from, to, a / (a - b))];
}

/** Sheets that a rib's own wood stands over: none where its top was cut to the lowest face over it. */
function sheetLocks(rib: Rib, face: RestingFace, settings: ReleaseSettings): readonly ReleaseLock[] {
  const { heightOf } = settings;
  return rib.heights.flatMap(({ atMm }) =>
    looksAcross(bodyOfRib(rib)).flatMap((besideMm): readonly ReleaseLock[] => {
      const p = rib.runs === "across" ? { x: besideMm, y: atMm } : { x: atMm, y: besideMm };
      const rest = face.at(p);
      if (rest === undefined) return [];
      const heightMm = heightOf(rest.zMm);
      const overMm = highestWood(rib.outlineMm, atMm) - heightMm;
      const { partId } = rest;
      return overMm > allowedOn(rib, settings)
        ? [{ ribId: rib.id, by: "sheet", partId, overMm, at: p, ...openingAt(atMm, heightMm) }]
        : [];
    }),
  );
}

const slopesOf = ({ heights }: Rib): readonly number[] =>
  heights.flatMap(({ atMm, stationFaceMm, bevelRad, partId }, i) => {
    const before = heights[i - 1];
    if (before === undefined || before.partId !== partId || atMm - before.atMm < 1) return [];
    const along = (stationFaceMm - before.stationFaceMm) / (atMm - before.atMm);
    return [Math.atan(Math.hypot(along, Math.tan(bevelRad)))];
  });

/** One lock for each part under each rib: its deepest place, over all of the rib that it reaches under. */
function onceEach(locks: readonly ReleaseLock[]): readonly ReleaseLock[] {
  const found = new Map<string, ReleaseLock>();
  for (const lock of locks) {
    const key = `${lock.ribId} ${lock.partId}`;
    const known = found.get(key);
    const deeper = known === undefined || lock.overMm > known.overMm ? lock : known;
    found.set(key, {
      ...deeper,
      alongMm: [
        Math.min(lock.alongMm[0], known?.alongMm[0] ?? lock.alongMm[0]),
        Math.max(lock.alongMm[1], known?.alongMm[1] ?? lock.alongMm[1]),
      ],
      openToMm: Math.min(lock.openToMm, known?.openToMm ?? lock.openToMm),
    });
  }
  return [...found.values()];
}

function stepsBetween(from: PlanPoint, to: PlanPoint): readonly PlanPoint[] {
  const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / STEP_MM));
  return Array.from({ length: steps + 1 }, (_, i) => mix(from, to, i / steps));
}

const mix = (a: PlanPoint, b: PlanPoint, share: number): PlanPoint => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

const mixSpace = (a: SpacePoint, b: SpacePoint, share: number): SpacePoint => ({
  ...mix(a, b, share),
  z: a.z + (b.z - a.z) * share,
});

const distance = (a: SpacePoint, b: SpacePoint): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
