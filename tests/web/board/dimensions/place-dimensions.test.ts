import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clipToBox } from "../../../../web/board/dimensions/clip-to-box.ts";
import {
  boxOfNode,
  type DimensionToPlace,
  placeDimensions,
} from "../../../../web/board/dimensions/place-dimensions.ts";

const VIEW = { leftPx: 0, topPx: 0, widthPx: 800, heightPx: 500 };
const SEED = 20261125;

const place = fc.tuple(fc.integer({ min: -50, max: 850 }), fc.integer({ min: -50, max: 550 }));
const anyDimension = fc
  .record({
    kind: fc.constantFrom("straight", "arc", "radius", "axis"),
    from: place,
    to: place,
    turnRad: fc.double({ min: 0, max: 6.28, noNaN: true }),
    widthPx: fc.integer({ min: 30, max: 90 }),
    heightPx: fc.constantFrom(24, 44),
  })
  .map(({ turnRad, ...rest }) => ({
    ...rest,
    middle: rest.from,
    outward: [Math.cos(turnRad), Math.sin(turnRad)] as const,
  }));

describe("numbers of dimensions", () => {
  it("cover neither each other nor a node, and stay on the view", () => {
    const many = fc.array(anyDimension, { minLength: 1, maxLength: 25 });
    fc.assert(
      fc.property(many, fc.array(place, { maxLength: 8 }), (dimensions, nodes) => {
        const named = dimensions.map((one, index): DimensionToPlace => ({ ...one, id: `d${index}` }));
        const boxes = placeDimensions(named, VIEW, nodes.map(boxOfNode)).map(({ box }) => box);
        boxes.forEach((one, index) => {
          expect(one.leftPx >= 0 && one.leftPx + one.widthPx <= 800).toBe(true);
          expect(one.topPx >= 0 && one.topPx + one.heightPx <= 500).toBe(true);
          for (const [x, y] of nodes) {
            const isInside =
              x > one.leftPx && x < one.leftPx + one.widthPx && y > one.topPx && y < one.topPx + one.heightPx;
            expect(isInside).toBe(false);
          }
          for (const other of boxes.slice(index + 1)) {
            const wide =
              Math.min(one.leftPx + one.widthPx, other.leftPx + other.widthPx) -
              Math.max(one.leftPx, other.leftPx);
            const tall =
              Math.min(one.topPx + one.heightPx, other.topPx + other.heightPx) -
              Math.max(one.topPx, other.topPx);
            expect(wide > 0 && tall > 0).toBe(false);
          }
        });
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("of a lone straight edge: outside it, in the middle, with extension lines square to it", () => {
    const [placed] = placeDimensions(
      [
        {
          id: "one",
          kind: "straight",
          from: [200, 300],
          to: [500, 300],
          middle: undefined,
          outward: [0, -1],
          widthPx: 50,
          heightPx: 24,
        },
      ],
      VIEW,
      [],
    );
    expect(placed?.box).toEqual({ leftPx: 325, topPx: 264, widthPx: 50, heightPx: 24 });
    expect(placed?.lines.slice(0, 2).every(([a, b]) => a[0] === b[0] && a[1] > b[1])).toBe(true);
    expect(placed?.arrows.map(({ tip }) => tip)).toEqual([
      [200, 276],
      [500, 276],
    ]);
  });

  it("a line is cut where it leaves the view", () => {
    expect(clipToBox([-100, 250], [400, 250], VIEW)).toEqual([
      [0, 250],
      [400, 250],
    ]);
    expect(clipToBox([-100, 250], [-10, 300], VIEW)).toBeUndefined();
    expect(clipToBox([900, 100], [900, 400], VIEW)).toBeUndefined();
  });
});
