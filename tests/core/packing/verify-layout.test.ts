import { areaPathsD, FillRule, intersectD } from "clipper2-ts";
import { describe, expect, it } from "vitest";
import { type PackingPiece, verifyLayout } from "../../../core/packing/index.ts";
import { seededNumbers } from "../../bench/curved-strips.ts";
import { laid, onRoll, piece, rectangle, triangle } from "./pieces.ts";

const SIZE = { lengthMm: 100, widthMm: 100 };

const faultsOf = (
  pieces: readonly PackingPiece[],
  places: readonly (readonly [x: number, y: number, angleRad?: number])[],
  clearanceMm = 0,
): readonly string[] =>
  verifyLayout(
    onRoll(pieces, SIZE.widthMm, clearanceMm),
    laid(
      pieces.map(({ id }, index) => {
        const [x, y, angleRad = 0] = places[index] ?? [0, 0];
        return { id, x, y, angleRad };
      }),
      SIZE,
    ),
  ).map(({ kind }) => kind);

const square = piece("a", rectangle(10, 10));
const other = piece("b", rectangle(10, 10));

describe("the exact verdict over a layout", () => {
  it("lets pieces touch along a side, at a corner and with a corner on a side", () => {
    expect(
      faultsOf(
        [square, other],
        [
          [0, 0],
          [10, 0],
        ],
      ),
    ).toEqual([]);
    expect(
      faultsOf(
        [square, other],
        [
          [0, 0],
          [10, 10],
        ],
      ),
    ).toEqual([]);
    expect(
      faultsOf(
        [square, other],
        [
          [0, 0],
          [10, 3.5],
        ],
      ),
    ).toEqual([]);
  });

  it("sees an overlap of one thousandth of a millimetre", () => {
    expect(
      faultsOf(
        [square, other],
        [
          [0, 0],
          [9.999, 0],
        ],
      ),
    ).toEqual(["overlap"]);
    expect(
      faultsOf(
        [square, other],
        [
          [0, 0],
          [9.999, 9.999],
        ],
      ),
    ).toEqual(["overlap"]);
  });

  it("sees pieces that lie exactly on each other, and ones flush on two sides, though no edges cross", () => {
    expect(
      faultsOf(
        [square, other],
        [
          [0, 0],
          [0, 0],
        ],
      ),
    ).toEqual(["overlap"]);
    expect(
      faultsOf(
        [square, piece("b", rectangle(5, 10))],
        [
          [0, 0],
          [2, 0],
        ],
      ),
    ).toEqual(["overlap"]);
    expect(
      faultsOf(
        [square, piece("b", rectangle(10, 4))],
        [
          [0, 0],
          [5, 3],
        ],
      ),
    ).toEqual(["overlap"]);
  });

  it("sees a piece wholly inside another, and lets it lie in a hole that it fits", () => {
    const frame = piece("a", rectangle(40, 40), {
      holes: [rectangle(20, 20).map(({ x, y }) => ({ x: x + 10, y: y + 10 }))],
    });
    const small = piece("b", rectangle(8, 8));
    expect(
      faultsOf(
        [frame, small],
        [
          [0, 0],
          [1, 1],
        ],
      ),
    ).toEqual(["overlap"]);
    expect(
      faultsOf(
        [frame, small],
        [
          [0, 0],
          [15, 15],
        ],
      ),
    ).toEqual([]);
    expect(
      faultsOf(
        [frame, piece("b", rectangle(20, 20))],
        [
          [0, 0],
          [10, 10],
        ],
      ),
    ).toEqual([]);
    expect(
      faultsOf(
        [frame, piece("b", rectangle(20.01, 20))],
        [
          [0, 0],
          [10, 10],
        ],
      ),
    ).toEqual(["overlap"]);
  });

  it("measures the clearance between outlines, not between boxes", () => {
    const first = piece("a", triangle(20, 20));
    const second = piece("b", triangle(20, 20));
    // Two halves of a square; their long sides are 2 mm apart, their boxes lie in each other.
    const places = [
      [0, 0],
      [20 + 2 * Math.SQRT2, 20, Math.PI],
    ] as const;
    expect(faultsOf([first, second], places, 1.9)).toEqual([]);
    expect(faultsOf([first, second], places, 2.1)).toEqual(["too-near"]);
  });

  it("names pieces off the sheet, at an angle they may not have, missing and twice", () => {
    expect(faultsOf([square], [[90.001, 0]])).toEqual(["off-sheet"]);
    expect(faultsOf([square], [[90, 90]])).toEqual([]);
    expect(faultsOf([square], [[50, 50, 0.1]])).toEqual(["angle-not-allowed"]);
    const once = laid([{ id: "a", x: 0, y: 0 }], SIZE);
    expect(verifyLayout(onRoll([square, other], 100), once)).toEqual([{ kind: "missing", pieceId: "b" }]);
    const twice = laid(
      [
        { id: "a", x: 0, y: 0 },
        { id: "a", x: 50, y: 0 },
      ],
      SIZE,
    );
    expect(verifyLayout(onRoll([square], 100), twice)).toEqual([{ kind: "twice", pieceId: "a" }]);
  });

  it("agrees with the area that clipper2-ts finds two random stars to share, 300 times", () => {
    const next = seededNumbers(7);
    for (let run = 0; run < 300; run++) {
      const star = (id: string) => {
        const outline = Array.from({ length: 9 }, (_, k) => {
          const angle = (2 * Math.PI * k) / 9;
          const radius = 6 + 9 * next();
          return {
            x: Math.round(radius * Math.cos(angle) * 1000) / 1000,
            y: Math.round(radius * Math.sin(angle) * 1000) / 1000,
          };
        });
        return piece(id, outline);
      };
      const [a, b] = [star("a"), star("b")];
      const at = [40, 40] as const;
      const to = [40 + Math.round(30 * next()), 40 + Math.round(20 * next())] as const;
      const moved = (outline: typeof a.outline, [x, y]: readonly [number, number]) => [
        outline.map((p) => ({ x: p.x + x, y: p.y + y })),
      ];
      const shared = Math.abs(
        areaPathsD(intersectD(moved(a.outline, at), moved(b.outline, to), FillRule.NonZero, 4)),
      );
      const isOver = faultsOf([a, b], [at, to]).includes("overlap");
      // Slivers under this are rounding of the reference's grid.
      if (shared > 1e-3 || shared === 0) expect(isOver, `run ${run}, shared ${shared} mm²`).toBe(shared > 0);
    }
  });
});
