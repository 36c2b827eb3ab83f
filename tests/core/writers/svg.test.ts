import { describe, expect, it } from "vitest";
import { readLettering } from "../../../core/book/index.ts";
import { writeSvg, writeSvgFiles } from "../../../core/writers/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { practiceDesign } from "../book/practice-design.ts";

const fonts = readFonts();
const LENGTH_MM = 0.01;

/** Points of the closed thick paths of a layer, as any SVG reader takes them. */
function cutPoints(svg: string): readonly (readonly [number, number])[][] {
  const layer = /<g id="cut"[^>]*>([\s\S]*?)<\/g>/.exec(svg)?.[1] ?? "";
  return [...layer.matchAll(/d="M([^"Z]+)Z"/g)].map((found) =>
    (found[1] ?? "").split("L").map((pair): readonly [number, number] => {
      const [x = Number.NaN, y = Number.NaN] = pair.split(" ").map(Number);
      return [x, y];
    }),
  );
}

const perimeter = (points: readonly (readonly [number, number])[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [px, py] = points[(i + points.length - 1) % points.length] ?? [x, y];
    return sum + Math.hypot(x - px, y - py);
  }, 0);

describe("SVG writer", () => {
  const design = practiceDesign();
  const files = writeSvgFiles(design, fonts);

  it("writes a file for each strip and each shaped rib, one millimetre a unit", () => {
    expect(files.map((file) => file.name)).toEqual(["S1R.svg", "L1R.svg"]);
    for (const { text } of files) {
      const head = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(text);
      expect(head?.[1]).toBe(head?.[3]);
      expect(head?.[2]).toBe(head?.[4]);
      expect(Number(head?.[1])).toBeGreaterThan(600);
    }
  });

  it("keeps the true length of the cut line and its sense, y down", () => {
    const [loop] = cutPoints(files[0]?.text ?? "");
    const outline = (design.strips[0]?.outlineMm ?? []).map((p): readonly [number, number] => [p.u, p.v]);
    expect(Math.abs(perimeter(loop ?? []) - perimeter(outline))).toBeLessThan(LENGTH_MM);
    const [first, second] = [loop?.[0], loop?.[1]];
    expect((second?.[0] ?? 0) - (first?.[0] ?? 0)).toBeCloseTo(600, 3);
    expect(Math.min(...(loop ?? []).map(([, y]) => y))).toBeCloseTo((first?.[1] ?? 0) - 300, 1);
  });

  it("names its layers and keeps signs of XML out of its words", () => {
    const svg = writeSvg(
      {
        name: "A & B",
        widthMm: 100,
        heightMm: 50,
        marks: [
          {
            kind: "text",
            at: { x: 10, y: 10 },
            text: 'a<b & "c"',
            heightMm: 5,
            face: "mono",
            anchor: "start",
            turnRad: Math.PI / 2,
            layer: "words",
          },
          { kind: "circle", centre: { x: 50, y: 20 }, radiusMm: 5, style: "thin", layer: "holes" },
        ],
      },
      readLettering(fonts),
    );
    expect(svg).toContain("<title>A &amp; B</title>");
    expect(svg).toContain("a&lt;b &amp; &quot;c&quot;");
    expect(svg).toContain('<g id="words"');
    expect(svg).toContain('<circle cx="50" cy="30" r="5"');
    expect(svg).toContain("rotate(-90 10 40)");
  });
});
