import type { SpacePoint } from "../../core/foundation/index.ts";

/** From where the tray is looked at: an eye on a sphere about a target. z is up; azimuth from rearward to the right. */
export interface Camera {
  readonly target: SpacePoint;
  readonly distanceMm: number;
  readonly azimuthRad: number;
  /** Over the level, up to straight down on the tray. */
  readonly elevationRad: number;
}

/** The box around what is looked at. */
export interface SpaceBox {
  readonly least: SpacePoint;
  readonly most: SpacePoint;
}

/** A narrow angle of view shows parallel edges nearly parallel, as on a drawing. */
export const VIEW_RAD = Math.PI / 9;

const NEAREST_MM = 60;
const FARTHEST_MM = 60_000;
/** Straight down the picture's upright would be undefined. */
const STEEPEST_RAD = Math.PI / 2 - 1e-3;

export const viewNames = ["home", "front", "side", "above", "below"] as const;
export type ViewName = (typeof viewNames)[number];

/** Front looks rearward; the side is seen with the front on the left, and so is the plan, as on the drawing board. */
const DIRECTIONS: Readonly<Record<ViewName, readonly [azimuthRad: number, elevationRad: number]>> = {
  home: [(-3 * Math.PI) / 4, 0.5],
  front: [Math.PI, 0],
  side: [-Math.PI / 2, 0],
  above: [-Math.PI / 2, STEEPEST_RAD],
  below: [-Math.PI / 2, -STEEPEST_RAD],
};

/** The camera that looks from a named side and has the whole box in the picture. `aspect` is width over height. */
export function cameraOf(name: ViewName, { least, most }: SpaceBox, aspect: number): Camera {
  const [azimuthRad, elevationRad] = DIRECTIONS[name];
  const target = { x: (least.x + most.x) / 2, y: (least.y + most.y) / 2, z: (least.z + most.z) / 2 };
  const camera = { target, distanceMm: 1, azimuthRad, elevationRad };
  const { right, up, forward } = axesOf(camera);
  const slope = Math.tan(VIEW_RAD / 2) / MARGIN;
  let distanceMm = NEAREST_MM;
  for (const corner of cornersOf({ least, most })) {
    const from = { x: corner.x - target.x, y: corner.y - target.y, z: corner.z - target.z };
    const depth = dot(from, forward);
    const needed = Math.max(Math.abs(dot(from, right)) / (slope * aspect), Math.abs(dot(from, up)) / slope);
    distanceMm = Math.max(distanceMm, needed - depth);
  }
  return { ...camera, distanceMm: clamp(distanceMm, NEAREST_MM, FARTHEST_MM) };
}

/** Room left around the box. */
const MARGIN = 1.12;

/** Where the eye is. */
export function eyeOf({ target, distanceMm, azimuthRad, elevationRad }: Camera): SpacePoint {
  const level = distanceMm * Math.cos(elevationRad);
  return {
    x: target.x + level * Math.cos(azimuthRad),
    y: target.y + level * Math.sin(azimuthRad),
    z: target.z + distanceMm * Math.sin(elevationRad),
  };
}

/** Turned about the target: positive azimuth moves the eye to the right round the tray, positive elevation upward. */
export const orbited = (camera: Camera, azimuthRad: number, elevationRad: number): Camera => ({
  ...camera,
  azimuthRad: wrapped(camera.azimuthRad + azimuthRad),
  elevationRad: clamp(camera.elevationRad + elevationRad, -STEEPEST_RAD, STEEPEST_RAD),
});

/** Moved so that what is shown goes right and down by shares of the picture's height. */
export function panned(camera: Camera, rightShare: number, downShare: number): Camera {
  const { right, up } = axesOf(camera);
  const heightMm = 2 * camera.distanceMm * Math.tan(VIEW_RAD / 2);
  const [across, above] = [-rightShare * heightMm, downShare * heightMm];
  const { target } = camera;
  return {
    ...camera,
    target: {
      x: target.x + right.x * across + up.x * above,
      y: target.y + right.y * across + up.y * above,
      z: target.z + right.z * across + up.z * above,
    },
  };
}

/** Nearer with a factor over 1. */
export const zoomed = (camera: Camera, factor: number): Camera => ({
  ...camera,
  distanceMm: clamp(camera.distanceMm / factor, NEAREST_MM, FARTHEST_MM),
});

/** On the way from one camera to another, the short way round. */
export function between(from: Camera, to: Camera, share: number): Camera {
  const mix = (a: number, b: number): number => a + (b - a) * share;
  return {
    target: {
      x: mix(from.target.x, to.target.x),
      y: mix(from.target.y, to.target.y),
      z: mix(from.target.z, to.target.z),
    },
    distanceMm: mix(from.distanceMm, to.distanceMm),
    azimuthRad: wrapped(from.azimuthRad + wrapped(to.azimuthRad - from.azimuthRad) * share),
    elevationRad: mix(from.elevationRad, to.elevationRad),
  };
}

/** The picture's right and up, and the way the eye looks; unit vectors. */
export function axesOf({ azimuthRad, elevationRad }: Camera) {
  const [sinA, cosA] = [Math.sin(azimuthRad), Math.cos(azimuthRad)];
  const [sinE, cosE] = [Math.sin(elevationRad), Math.cos(elevationRad)];
  return {
    right: { x: -sinA, y: cosA, z: 0 },
    up: { x: -sinE * cosA, y: -sinE * sinA, z: cosE },
    forward: { x: -cosE * cosA, y: -cosE * sinA, z: -sinE },
  };
}

const cornersOf = ({ least, most }: SpaceBox): readonly SpacePoint[] =>
  [least.x, most.x].flatMap((x) =>
    [least.y, most.y].flatMap((y) => [least.z, most.z].map((z) => ({ x, y, z }))),
  );

const dot = (a: SpacePoint, b: SpacePoint): number => a.x * b.x + a.y * b.y + a.z * b.z;
const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** An angle between −π and π. */
const wrapped = (angleRad: number): number => angleRad - 2 * Math.PI * Math.round(angleRad / (2 * Math.PI));
