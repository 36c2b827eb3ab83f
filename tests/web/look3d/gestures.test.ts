import { describe, expect, it } from "vitest";
import { cameraOf, type SpaceBox } from "../../../web/look3d/camera.ts";
import { lifted, moved, STILL, touched } from "../../../web/look3d/gestures.ts";
import { wishOfKey } from "../../../web/look3d/look-keys.ts";

const TRAY: SpaceBox = { least: { x: 0, y: -720, z: 0 }, most: { x: 2000, y: 720, z: 250 } };
const camera = cameraOf("home", TRAY, 1);
const HEIGHT_PX = 400;

const finger = (id: number, x: number, y: number) => ({ id, x, y });

describe("pointers on the look", () => {
  it("leave the picture where it is until they have moved far enough to be no click", () => {
    const down = touched(STILL, finger(1, 100, 100), false);
    const hardly = moved(down, finger(1, 102, 101), camera, HEIGHT_PX);
    expect(hardly.camera).toBe(camera);
    expect(hardly.gesture.hasMoved).toBe(false);
    const far = moved(down, finger(1, 130, 100), camera, HEIGHT_PX);
    expect(far.camera).not.toBe(camera);
    expect(far.gesture.hasMoved).toBe(true);
  });

  it("turn with one, and carry the tray along: pulled to the right, the eye goes to the left round it", () => {
    const down = touched(STILL, finger(1, 100, 100), false);
    const { camera: turned } = moved(down, finger(1, 200, 100), camera, HEIGHT_PX);
    expect(turned.azimuthRad).toBeLessThan(camera.azimuthRad);
    expect(turned.target).toEqual(camera.target);
    expect(turned.distanceMm).toBe(camera.distanceMm);
  });

  it("move the tray with one that is held for that", () => {
    const down = touched(STILL, finger(1, 100, 100), true);
    const { camera: away } = moved(down, finger(1, 200, 100), camera, HEIGHT_PX);
    expect(away.target).not.toEqual(camera.target);
    expect(away.azimuthRad).toBe(camera.azimuthRad);
  });

  it("go nearer with two that part, by as much as they part, and turn nothing", () => {
    const one = touched(STILL, finger(1, 100, 100), false);
    const two = touched(one, finger(2, 200, 100), false);
    const { camera: nearer } = moved(two, finger(2, 300, 100), camera, HEIGHT_PX);
    expect(nearer.distanceMm).toBeCloseTo(camera.distanceMm / 2, 6);
    expect(nearer.azimuthRad).toBe(camera.azimuthRad);
  });

  it("are no click when two were down, and begin afresh when all are lifted", () => {
    const two = touched(touched(STILL, finger(1, 100, 100), false), finger(2, 200, 100), false);
    expect(lifted(two, 1).hasMoved).toBe(true);
    expect(lifted(lifted(two, 1), 2)).toEqual(STILL);
  });
});

describe("keys on the look", () => {
  const press = (key: string, shiftKey = false) => wishOfKey(camera, { key, shiftKey });

  it("turn with the arrows, move with Shift, go nearer with plus and away with minus, home with 0", () => {
    const turned = press("ArrowLeft");
    expect(turned && "camera" in turned && turned.camera.azimuthRad).not.toBe(camera.azimuthRad);
    const away = press("ArrowLeft", true);
    expect(away && "camera" in away && away.camera.target).not.toEqual(camera.target);
    const nearer = press("+");
    expect(nearer && "camera" in nearer && nearer.camera.distanceMm).toBeLessThan(camera.distanceMm);
    const farther = press("-");
    expect(farther && "camera" in farther && farther.camera.distanceMm).toBeGreaterThan(camera.distanceMm);
    expect(press("0")).toEqual({ view: "home" });
  });

  it("leave every other key to the rest of the page", () => {
    for (const key of ["Tab", "Escape", "a", "Delete", "Enter"]) expect(press(key)).toBeUndefined();
  });
});
