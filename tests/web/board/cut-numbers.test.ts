import { describe, expect, it } from "vitest";
import { type CutNumber, type PlacedNumber, placeCutNumbers } from "../../../web/board/cut-numbers.ts";
import type { Box, Transform } from "../../../web/board/viewport.ts";

const box: Box = { leftPx: 0, topPx: 0, widthPx: 400, heightPx: 300 };
/** One pixel a mm, y 0 at the left, the ground at 250 px. */
const transform: Transform = { originXPx: 0, originYPx: 250, pxPerMmAcross: 1, pxPerMmUp: 1 };

const fence = (y: number, z: number, text: string, stands: "left" | "right" = "left"): CutNumber => ({
  at: [y, z],
  text,
  stands,
});

const place = (numbers: readonly CutNumber[]) => placeCutNumbers(numbers, transform, box);

function overlap(one: PlacedNumber, other: PlacedNumber): boolean {
  const heightOf = ({ text }: PlacedNumber) => text.split("\n").length * 12;
  return (
    one.leftPx < other.leftPx + other.widthPx &&
    other.leftPx < one.leftPx + one.widthPx &&
    one.topPx < other.topPx + heightOf(other) &&
    other.topPx < one.topPx + heightOf(one)
  );
}

describe("numbers of the cross-section", () => {
  it("a fence alone has its number on the side that is asked for, inside the view", () => {
    expect(place([fence(100, 40, "40.0\n20.0 deep", "right")])[0]).toMatchObject({
      align: "left",
      leftPx: 108,
    });
    expect(place([fence(100, 40, "40.0\n20.0 deep")])[0]).toMatchObject({ align: "right" });
    expect(place([fence(395, 40, "40.0\n20.0 deep", "right")])[0]).toMatchObject({ align: "right" });
  });

  it("fences near each other never have their numbers over one another, nor over a foot", () => {
    for (let apart = 4; apart < 120; apart += 4) {
      const numbers = [
        fence(250, 24, "24.0\n26.0 deep", "right"),
        fence(250 - apart, 26, "26.0\n24.0 deep"),
        fence(250 - 2 * apart, 14, "14.0\n36.0 deep"),
      ];
      const placed = place(numbers);
      placed.forEach((one, i) => {
        for (const other of placed.slice(i + 1)) expect(overlap(one, other)).toBe(false);
        for (const { at } of numbers) {
          const [x, y] = [at[0], 250 - at[1]];
          const isOver =
            x > one.leftPx && x < one.leftPx + one.widthPx && y > one.topPx && y < one.topPx + 12;
          expect(isOver).toBe(false);
        }
      });
      expect(placed.length).toBeGreaterThan(0);
    }
  });

  it("where there is no room for both lines the height alone stands", () => {
    const crowded = [200, 206, 212, 218, 224].map((y) => fence(y, 30, `30.0\n${y} deep`));
    const texts = place(crowded).map(({ text }) => text);
    expect(texts.length).toBeLessThan(crowded.length);
    expect(texts[0]).toBe("30.0\n200 deep");
  });
});
