import type { Vec2 } from "../../../core/foundation/index.ts";
import type { SnapKind } from "../../tools/index.ts";

/** A sign as strokes, and rings by their radius, px about its place; `along` are unit directions on the screen. */
export interface SignShape {
  readonly strokes: readonly (readonly Vec2[])[];
  readonly ringsPx: readonly number[];
}

/**
 * The shape of each sign, after what a draughtsman would pencil there: equal ticks on both halves for a middle, lines
 * that overrun each other at a crossing, the small square in a right angle.
 */
export function signShape(kind: SnapKind, along: readonly Vec2[]): SignShape {
  const line = along[0] ?? [1, 0];
  const other = along[1] ?? across(line);
  switch (kind) {
    case "nodes":
      return { strokes: [], ringsPx: [8, 1.5] };
    case "middles":
      return { strokes: [tick(line, 9), tick(line, -9)], ringsPx: [1.5] };
    case "crossings":
      return { strokes: [...overrun(line), ...overrun(other)], ringsPx: [1.5] };
    case "lines":
      return { strokes: [tick(line, 0)], ringsPx: [1.5] };
    case "tangents":
      return { strokes: [[times(line, -18), times(line, 18)]], ringsPx: [4] };
    case "squares":
      return { strokes: [corner(line, other)], ringsPx: [1.5] };
    case "centreLine":
      return {
        strokes: [
          [
            [-22, 0],
            [-9, 0],
          ],
          [
            [-5, 0],
            [5, 0],
          ],
          [
            [9, 0],
            [22, 0],
          ],
        ],
        ringsPx: [],
      };
    case "stations":
      return {
        strokes: [
          [
            [0, -9],
            [0, 9],
          ],
        ],
        ringsPx: [1.5],
      };
    case "aligned":
      return { strokes: [], ringsPx: [3] };
    case "otherView":
      return {
        strokes: [
          [
            [-6, 0],
            [6, 0],
          ],
          [
            [0, -6],
            [0, 6],
          ],
        ],
        ringsPx: [4],
      };
    case "grid":
      return {
        strokes: [
          [
            [-5, 0],
            [5, 0],
          ],
          [
            [0, -5],
            [0, 5],
          ],
        ],
        ringsPx: [],
      };
  }
}

const times = (a: Vec2, by: number): Vec2 => [a[0] * by, a[1] * by];
const across = ([x, y]: Vec2): Vec2 => [-y, x];

/** A short stroke over a line, so far along it. */
function tick(line: Vec2, byPx: number): readonly Vec2[] {
  const side = across(line);
  return [-6, 6].map((px): Vec2 => [line[0] * byPx + side[0] * px, line[1] * byPx + side[1] * px]);
}

const overrun = (line: Vec2): readonly (readonly Vec2[])[] => [
  [times(line, -14), times(line, -4)],
  [times(line, 4), times(line, 14)],
];

function corner(one: Vec2, other: Vec2): readonly Vec2[] {
  const [a, b] = [times(one, 9), times(other, 9)];
  return [a, [a[0] + b[0], a[1] + b[1]], b];
}
