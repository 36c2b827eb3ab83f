import { describe, expect, it } from "vitest";
import { boxOfSolids } from "../../../web/look3d/box-of-solids.ts";

const solid = (...numbers: readonly number[]) => ({ positions: Float32Array.from(numbers) });

describe("the box of the 3D look", () => {
  it("goes round all parts and down to the ground", () => {
    const box = boxOfSolids([solid(0, -700, 60, 2000, 700, 80), solid(100, -20, 30, 900, 20, 150)]);
    expect(box).toEqual({ least: { x: 0, y: -700, z: 0 }, most: { x: 2000, y: 700, z: 150 } });
  });

  it("is a metre of ground where nothing is drawn", () => {
    const { least, most } = boxOfSolids([]);
    expect(most.x - least.x).toBe(1000);
  });

  it("does not run after a corner that a bad drawing has thrown far away", () => {
    const { least, most } = boxOfSolids([solid(0, 0, 60, 1000, 300, 80, 3e16, -2e17, Number.NaN)]);
    expect(most).toEqual({ x: 1000, y: 300, z: 80 });
    expect(least).toEqual({ x: 0, y: 0, z: 0 });
  });
});
