import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SpacePoint } from "../../../core/foundation/index.ts";
import {
  axesOf,
  between,
  type Camera,
  cameraOf,
  eyeOf,
  orbited,
  panned,
  type SpaceBox,
  VIEW_RAD,
  viewNames,
  zoomed,
} from "../../../web/look3d/camera.ts";

const SEED = 20261125;
const SAME = 1e-9;

const TRAY: SpaceBox = { least: { x: 0, y: -720, z: 0 }, most: { x: 2000, y: 720, z: 250 } };

const minus = (a: SpacePoint, b: SpacePoint): SpacePoint => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const dot = (a: SpacePoint, b: SpacePoint): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** Where a point comes to lie on the picture, from −1 to 1 in its height; right and up are positive. */
function seenAt(camera: Camera, p: SpacePoint): readonly [right: number, up: number] {
  const { right, up, forward } = axesOf(camera);
  const from = minus(p, eyeOf(camera));
  const depth = dot(from, forward) * Math.tan(VIEW_RAD / 2);
  return [dot(from, right) / depth, dot(from, up) / depth];
}

describe("the camera", () => {
  it("has the whole tray in the picture from every side, in a wide and in a narrow picture", () => {
    for (const name of viewNames) {
      for (const aspect of [0.5, 1, 2.5]) {
        const camera = cameraOf(name, TRAY, aspect);
        for (const x of [0, 2000])
          for (const y of [-720, 720])
            for (const z of [0, 250]) {
              const [right, up] = seenAt(camera, { x, y, z });
              expect(Math.abs(right), `${name} ${aspect}`).toBeLessThan(aspect);
              expect(Math.abs(up), `${name} ${aspect}`).toBeLessThan(1);
            }
      }
    }
  });

  it("shows rearward to the right and the right hand up from above, as the plan does", () => {
    const camera = cameraOf("above", TRAY, 1.5);
    const [rear] = seenAt(camera, { x: 2000, y: 0, z: 0 });
    const [, rightHand] = seenAt(camera, { x: 1000, y: 500, z: 0 });
    expect(rear).toBeGreaterThan(0.3);
    expect(rightHand).toBeGreaterThan(0.1);
  });

  it("shows the front on the left and up as up from the side, and looks rearward from the front", () => {
    const side = cameraOf("side", TRAY, 1.5);
    expect(seenAt(side, { x: 0, y: 0, z: 0 })[0]).toBeLessThan(-0.3);
    expect(seenAt(side, { x: 1000, y: 0, z: 2000 })[1]).toBeGreaterThan(0.3);
    const { forward } = axesOf(cameraOf("front", TRAY, 1.5));
    expect(forward.x).toBeCloseTo(1, 9);
    expect(axesOf(cameraOf("below", TRAY, 1.5)).forward.z).toBeGreaterThan(0.99);
  });

  it("keeps its target in the middle and its distance while it turns, and never tips over", () => {
    const angle = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(angle, angle, (azimuthRad, elevationRad) => {
        const before = cameraOf("home", TRAY, 1);
        const camera = orbited(before, azimuthRad, elevationRad);
        const [right, up] = seenAt(camera, before.target);
        expect(Math.hypot(right, up)).toBeLessThan(SAME);
        const from = minus(eyeOf(camera), camera.target);
        expect(Math.sqrt(dot(from, from)) / before.distanceMm).toBeCloseTo(1, 9);
        expect(axesOf(camera).up.z).toBeGreaterThan(0);
      }),
      { seed: SEED },
    );
  });

  it("moves what is shown by just as much of the picture as it is asked for", () => {
    const share = fc.double({ min: -0.4, max: 0.4, noNaN: true });
    fc.assert(
      fc.property(share, share, fc.constantFrom(...viewNames), (rightShare, downShare, name) => {
        const camera = cameraOf(name, TRAY, 1);
        const [right, up] = seenAt(panned(camera, rightShare, downShare), camera.target);
        expect(right).toBeCloseTo(2 * rightShare, 9);
        expect(up).toBeCloseTo(-2 * downShare, 9);
      }),
      { seed: SEED },
    );
  });

  it("goes nearer and away by the same factor, and neither into the tray nor out of sight", () => {
    const camera = cameraOf("home", TRAY, 1);
    expect(zoomed(zoomed(camera, 1.25), 0.8).distanceMm).toBeCloseTo(camera.distanceMm, 6);
    expect(zoomed(camera, 1e9).distanceMm).toBeGreaterThan(0);
    expect(zoomed(camera, 1e-9).distanceMm).toBeLessThan(1e6);
  });

  it("glides from one view to another the short way round", () => {
    const [from, to] = [cameraOf("front", TRAY, 1), cameraOf("home", TRAY, 1)];
    for (const [share, there] of [
      [0, from],
      [1, to],
    ] as const) {
      const miss = minus(eyeOf(between(from, to, share)), eyeOf(there));
      expect(Math.sqrt(dot(miss, miss))).toBeLessThan(1e-6);
    }
    const half = between(from, to, 0.5);
    const turn = Math.abs(
      Math.atan2(Math.sin(half.azimuthRad - from.azimuthRad), Math.cos(half.azimuthRad - from.azimuthRad)),
    );
    expect(turn).toBeLessThan(Math.PI / 4);
  });
});
