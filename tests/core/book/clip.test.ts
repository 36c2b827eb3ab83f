import { describe, expect, it } from "vitest";
import { clipLine } from "../../../core/book/clip.ts";
import { lineMark, loopMark, paper } from "../../../core/book/marks.ts";

const box = { left: 0, bottom: 0, right: 10, top: 10 };

describe("clipping at a page's window", () => {
  it("cuts a line exactly at the border", () => {
    const [piece] = clipLine(lineMark([paper(-5, 5), paper(15, 5)], "cut"), box);
    expect(piece?.points).toEqual([paper(0, 5), paper(10, 5)]);
  });

  it("keeps a closed line inside whole and closed", () => {
    const loop = loopMark([paper(1, 1), paper(9, 1), paper(5, 8)], "cut");
    expect(clipLine(loop, box)).toEqual([loop]);
  });

  it("joins the two ends of a closed line that starts inside", () => {
    const loop = loopMark([paper(5, 5), paper(15, 5), paper(15, 20), paper(5, 20)], "cut");
    const pieces = clipLine(loop, box);
    expect(pieces).toHaveLength(1);
    expect(pieces[0]?.points).toEqual([paper(5, 10), paper(5, 5), paper(10, 5)]);
  });

  it("gives a piece for each time a line comes in, and none for one that only touches a corner", () => {
    const zigzag = lineMark([paper(-1, 2), paper(11, 2), paper(11, 8), paper(-1, 8)], "cut");
    expect(clipLine(zigzag, box)).toHaveLength(2);
    expect(clipLine(lineMark([paper(-1, 1), paper(1, -1)], "cut"), box)).toHaveLength(0);
  });

  it("keeps the length of a line cut into a chequer of windows", () => {
    const points = Array.from({ length: 200 }, (_, i) =>
      paper(50 + 45 * Math.cos(i / 9), 50 + 45 * Math.sin(i / 5)),
    );
    const line = lineMark(points, "cut");
    let sum = 0;
    for (let i = 0; i < 10; i++) {
      for (let j = 0; j < 10; j++) {
        const window = { left: i * 10, right: i * 10 + 10, bottom: j * 10, top: j * 10 + 10 };
        for (const piece of clipLine(line, window)) sum += lengthOf(piece.points);
      }
    }
    expect(sum).toBeCloseTo(lengthOf(points), 6);
  });
});

const lengthOf = (points: readonly { readonly x: number; readonly y: number }[]): number =>
  points.slice(1).reduce((sum, p, i) => {
    const before = points[i] ?? p;
    return sum + Math.hypot(p.x - before.x, p.y - before.y);
  }, 0);
