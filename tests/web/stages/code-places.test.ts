import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { boundsOf, fitScale } from "../../../web/drawings/index.ts";
import { codePlaces } from "../../../web/stages/jig/code-places.ts";
import { readExample } from "../../read-example.ts";

const { jig } = designTray(readExample("hill-climb-floor"));
const bounds = boundsOf(jig.baseboard.corners.map(({ x, y }) => [x, y] as const));

/** Letters of 12 px, five at most in the mono face (0.6 of the em each). */
const WIDE_PX = 5 * 0.6 * 12;
const HIGH_PX = 12;

describe("the codes of the demo tray's ribs on the screen", () => {
  it.each([360, 760, 1280])("stand clear of each other and of the numbers, %d px wide", (widthPx) => {
    if (bounds === undefined) throw new Error("no baseboard");
    const scale = fitScale(bounds, { widthPx, heightPx: 420, marginPx: 56 });
    const places = codePlaces(jig, scale);
    expect(places.size).toBe(jig.ribs.length);
    const spots = [...places].flatMap(([id, { code, number }]) => [
      { words: id, x: code[0], y: code[1] },
      { words: `place of ${id}`, x: number[0], y: number[1] },
    ]);
    const over = spots.flatMap((a, i) =>
      spots
        .slice(i + 1)
        .filter((b) => Math.abs(a.x - b.x) < WIDE_PX && Math.abs(a.y - b.y) < HIGH_PX)
        .map((b) => `${a.words} over ${b.words}`),
    );
    expect(over).toEqual([]);
  });
});
