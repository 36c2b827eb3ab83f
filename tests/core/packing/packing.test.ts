import { describe, expect, it } from "vitest";
import {
  bestLayout,
  freeAngles,
  packWithin,
  type RunLimit,
  startPacking,
  stepPacking,
  verifyLayout,
} from "../../../core/packing/index.ts";
import { curvedStrips } from "../../bench/curved-strips.ts";
import { onRoll, onSheets, piece, rectangle, triangle } from "./pieces.ts";

const sweeps = (count: number): RunLimit => ({ kind: "sweeps", sweeps: count });

describe("laying pieces", () => {
  it("turns triangles by half a turn and lays them in pairs", () => {
    const pieces = Array.from({ length: 8 }, (_, k) => piece(`t${k}`, triangle(100, 50)));
    const problem = onRoll(pieces, 50);
    const layout = packWithin(problem, 1, sweeps(150));
    expect(layout && verifyLayout(problem, layout)).toEqual([]);
    // Four pairs of 100 mm; without a half turn it would take 800 mm.
    expect(layout?.sheets[0]?.usedMm).toBeLessThan(420);
  });

  it("gives the same layout for the same seed however the steps are cut, and leaves what it was given as it was", () => {
    const pieces = Array.from({ length: 9 }, (_, k) => piece(`t${k}`, triangle(60 + 10 * k, 40 + 5 * k)));
    const problem = onRoll(pieces, 150, 2);
    const start = startPacking(problem, 5);
    const copy = structuredClone(start);
    const whole = stepPacking(start, { sweeps: 60, progress: 0.2 });
    let parts = startPacking(problem, 5);
    for (let k = 0; k < 12; k++) parts = stepPacking(parts, { sweeps: 5, progress: 0.2 });
    expect(start).toEqual(copy);
    expect(bestLayout(parts)).toEqual(bestLayout(whole));
    expect(bestLayout(stepPacking(startPacking(problem, 6), { sweeps: 60, progress: 0.2 }))).not.toEqual(
      bestLayout(whole),
    );
  });

  it("puts a piece into the hole of another when that is the only place", () => {
    const hole = rectangle(60, 60).map(({ x, y }) => ({ x: x + 20, y: y + 20 }));
    const frame = piece("frame", rectangle(100, 100), { holes: [hole] });
    const problem = onSheets([frame, piece("inside", triangle(50, 50))], {
      lengthMm: 110,
      widthMm: 110,
      quantity: 1,
    });
    const layout = packWithin(problem, 1, sweeps(60));
    expect(layout?.unplaced).toEqual([]);
    expect(layout && verifyLayout(problem, layout)).toEqual([]);
  });

  it("keeps blade and edge clear, uses few sheets and leaves the rest of the last one whole", () => {
    const pieces = curvedStrips(12, 2);
    const problem = onSheets(pieces, { lengthMm: 1250, widthMm: 600 });
    const layout = packWithin(problem, 1, sweeps(100));
    expect(layout && verifyLayout(problem, layout)).toEqual([]);
    expect(layout?.placements).toHaveLength(pieces.length);
    expect(layout?.sheets.length).toBeLessThanOrEqual(3);
    expect(layout?.sheets.at(-1)?.usedMm).toBeLessThan(1250);
  });

  it("names a piece larger than every sheet, and pieces that a full stock has no room for", () => {
    const pieces = [
      piece("giant", triangle(500, 500)),
      ...Array.from({ length: 4 }, (_, k) => piece(`q${k}`, [...rectangle(80, 80), { x: -5, y: 40 }])),
    ];
    const problem = onSheets(pieces, { lengthMm: 200, widthMm: 100, quantity: 1 });
    const layout = packWithin(problem, 1, sweeps(300));
    expect(layout && verifyLayout(problem, layout)).toEqual([]);
    expect(layout?.unplaced[0]).toEqual({ pieceId: "giant", why: "larger-than-stock" });
    expect(layout?.unplaced.filter(({ why }) => why === "stock-full")).toHaveLength(2);
    expect(layout?.placements).toHaveLength(2);
  });

  it("leaves a locked piece where it was put, and lays the others around it", () => {
    const lockedAt = { sheet: 0, angleRad: 0.3, x: 300, y: 200 };
    const pieces = curvedStrips(5, 4).map((strip, index) => (index === 0 ? { ...strip, lockedAt } : strip));
    const problem = { ...onSheets(pieces, { lengthMm: 1250, widthMm: 900 }) };
    const layout = packWithin(problem, 1, sweeps(100));
    const [first] = pieces;
    expect(layout?.placements.find(({ pieceId }) => pieceId === first?.id)).toEqual({
      pieceId: first?.id,
      ...lockedAt,
    });
    expect(layout && verifyLayout(problem, layout)).toEqual([]);
  });

  it("lays rectangles flush, sheet after sheet", () => {
    const pieces = Array.from({ length: 9 }, (_, k) => piece(`r${k}`, rectangle(50, 30), { anglesRad: [0] }));
    const problem = { ...onSheets(pieces, { lengthMm: 100, widthMm: 60 }), clearanceMm: 0, marginMm: 0 };
    const layout = packWithin(problem, 1, sweeps(10));
    expect(layout && verifyLayout(problem, layout)).toEqual([]);
    expect(layout?.sheets.map(({ usedMm }) => usedMm)).toEqual([100, 100, 50]);
  });

  it("turns a piece freely so that its longest side can lie along the sheet", () => {
    const tilted = triangle(100, 40).map(({ x, y }) => ({ x: x * 0.8 - y * 0.6, y: x * 0.6 + y * 0.8 }));
    const problem = onRoll([piece("t", tilted, { anglesRad: freeAngles(tilted) })], 45);
    const layout = packWithin(problem, 1, sweeps(100));
    expect(layout && verifyLayout(problem, layout)).toEqual([]);
    expect(layout?.sheets[0]?.usedMm).toBeLessThan(110);
  });
});
