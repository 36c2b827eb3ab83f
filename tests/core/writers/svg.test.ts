import { svgPathProperties } from "svg-path-properties";
import { describe, expect, it } from "vitest";
import { readLettering } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import type { FlatPoint } from "../../../core/foundation/index.ts";
import { shownFace } from "../../../core/marking/index.ts";
import { writeSvg, writeSvgFiles } from "../../../core/writers/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";
import { practiceDesign } from "../book/practice-design.ts";

const fonts = readFonts();
const LENGTH_MM = 0.01;
/** A loop of a thousand points, each kept to a ten-thousandth. */
const LOOP_MM = 0.02;

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

/** Lengths of the thick paths of a drawing, by a library that knows nothing of it. */
const cutLengths = (svg: string): readonly number[] =>
  [...(/<g id="cut"[^>]*>([\s\S]*?)<\/g>/.exec(svg)?.[1]?.matchAll(/ d="([^"]+)"/g) ?? [])].map((found) =>
    new svgPathProperties(found[1] ?? "").getTotalLength(),
  );

const perimeterOf = (loop: readonly FlatPoint[]): number =>
  perimeter(loop.map(({ u, v }): readonly [number, number] => [u, v]));

describe.each([
  ["a knife", {}],
  ["a hot wire", { tool: "hot-wire", kerfMm: 1.2, bladeSide: "middle" }],
] as const)("the SVG drawings of the demo tray, cut with %s", (_, changes) => {
  const project = readExample("hill-climb-floor");
  const demo = designTray({ ...project, cutting: { ...project.cutting, ...changes } });
  const files = new Map(writeSvgFiles(demo, fonts).map(({ name, text }) => [name, text]));

  it("have every loop of every strip in its true length, bevels and kerf in it", () => {
    for (const strip of demo.strips) {
      const thicknessMm = demo.parts.find(({ id }) => id === strip.partId)?.thicknessMm ?? 0;
      const wanted = shownFace(strip, thicknessMm, demo.project).cutLinesMm.map(perimeterOf);
      const found = cutLengths(files.get(`${strip.id}.svg`) ?? "");
      expect(found, strip.id).toHaveLength(wanted.length);
      wanted.forEach((lengthMm, i) => {
        expect(Math.abs((found[i] ?? 0) - lengthMm), strip.id).toBeLessThan(LOOP_MM);
      });
    }
  });

  it("have every rib that is not straight in its true length, once for all alike", () => {
    const shaped = demo.jig.ribs.filter(({ straightTop, sameAs, id }) => !straightTop && sameAs === id);
    expect(shaped.length).toBeGreaterThan(3);
    for (const { id, outlineMm } of shaped) {
      const [found = 0] = cutLengths(files.get(`${id}.svg`) ?? "");
      expect(Math.abs(found - perimeterOf(outlineMm)), id).toBeLessThan(LOOP_MM);
    }
  });
});

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
