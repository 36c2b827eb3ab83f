import { describe, expect, it } from "vitest";
import { distance2, toRadians, type Vec2 } from "../../../core/foundation/index.ts";
import {
  cornersOfPicture,
  isOnPicture,
  laidInto,
  levelled,
  movedBy,
  type Placement,
  pixelAt,
  pixelInView,
  scaledByTwoPoints,
  turnedAbout,
  type Underlay,
} from "../../../core/project/index.ts";

const ROUNDING_MM = 1e-9;

/** 400 by 300 pixels of 2 mm, upper left corner at (100, 600). */
const upright: Placement = { origin: { x: 100, up: 600 }, mmPerPx: 2, turnRad: 0 };
const picture: Underlay = {
  id: "u",
  name: "",
  view: "plan",
  picture: "data:image/png;base64,",
  widthPx: 400,
  heightPx: 300,
  opacity: 1,
  ...upright,
};
const askew: Placement = { origin: { x: -40, up: 75 }, mmPerPx: 0.37, turnRad: 1.1 };

const near = (one: Vec2 | undefined, other: Vec2) =>
  expect(one ? distance2(one, other) : Number.NaN).toBeLessThan(ROUNDING_MM);

describe("a picture that lies upright", () => {
  it("has its pixels to the right of its corner and below it", () => {
    near(pixelInView(upright, [0, 0]), [100, 600]);
    near(pixelInView(upright, [400, 300]), [900, 0]);
    near(pixelAt(upright, [500, 300]), [200, 150]);
  });

  it("is hit inside its four corners and nowhere else", () => {
    expect(cornersOfPicture(picture)).toEqual([
      [100, 600],
      [900, 600],
      [900, 0],
      [100, 0],
    ]);
    expect([
      isOnPicture(picture, [101, 1]),
      isOnPicture(picture, [99, 1]),
      isOnPicture(picture, [101, 601]),
    ]).toEqual([true, false, false]);
  });

  it("is laid into a box as large as fits, in its middle", () => {
    const laid = laidInto(picture, { left: 0, right: 2000, bottom: -600, top: 600 });
    expect(laid).toEqual({ origin: { x: 200, up: 600 }, mmPerPx: 4, turnRad: 0 });
  });
});

describe("two points of a picture and the distance between them", () => {
  // A wheelbase of 1240 px that is 2480 mm in the car; the picture was laid at any scale and any turn.
  const front: Vec2 = [130, 420];
  const rear: Vec2 = [1370, 420];

  it.each([
    ["upright", upright],
    ["askew", askew],
  ])("set its scale, and the first point stays, %s", (_title, placement) => {
    const picked = [pixelInView(placement, front), pixelInView(placement, rear)] as const;
    const scaled = scaledByTwoPoints(placement, picked, 2480);
    expect(scaled?.mmPerPx).toBeCloseTo(2, 12);
    near(scaled && pixelInView(scaled, front), picked[0]);
    expect(scaled && distance2(pixelInView(scaled, front), pixelInView(scaled, rear))).toBeCloseTo(2480, 9);
  });

  it("that are one point, or no distance, set nothing", () => {
    expect(scaledByTwoPoints(upright, [front, front], 100)).toBeUndefined();
    for (const distanceMm of [0, -5, Number.NaN, Number.POSITIVE_INFINITY])
      expect(scaledByTwoPoints(upright, [front, rear], distanceMm)).toBeUndefined();
  });
});

describe("a picture that is turned", () => {
  it("turns counter-clockwise about the place that stays", () => {
    const quarter = turnedAbout(upright, [100, 600], Math.PI / 2);
    near(pixelInView(quarter, [0, 0]), [100, 600]);
    // What was to the right is above.
    near(pixelInView(quarter, [400, 0]), [100, 1400]);
    near(pixelInView(quarter, [0, 300]), [700, 600]);
  });

  it("by a turn and back again lies where it lay", () => {
    const about: Vec2 = [333, -20];
    const back = turnedAbout(turnedAbout(askew, about, 2.5), about, -2.5);
    near([back.origin.x, back.origin.up], [askew.origin.x, askew.origin.up]);
    expect(back.turnRad).toBeCloseTo(askew.turnRad, 12);
  });

  it.each([
    ["a line that climbs gently rearward", 10],
    ["a line that climbs steeply", 80],
    ["the same line picked from its other end", 190],
    ["a line picked backward and down", 260],
  ])("is level where %s is picked, by the short way", (_title, slopeDeg) => {
    const first: Vec2 = [500, 200];
    const slope = toRadians(slopeDeg);
    const second: Vec2 = [500 + 300 * Math.cos(slope), 200 + 300 * Math.sin(slope)];
    const level = levelled(askew, [first, second]);
    const [from, to] = [first, second].map((at) => level && pixelInView(level, pixelAt(askew, at)));
    near(from, first);
    expect(to?.[1]).toBeCloseTo(first[1], 9);
    expect(from && to && distance2(from, to)).toBeCloseTo(300, 9);
    expect(Math.abs((level?.turnRad ?? 9) - askew.turnRad)).toBeLessThanOrEqual(Math.PI / 2);
  });

  it("keeps its scale and its turn when it is moved", () => {
    expect(movedBy(askew, [10, -5])).toEqual({ ...askew, origin: { x: -30, up: 70 } });
  });
});
