import { svgPathProperties } from "svg-path-properties";
import { describe, expect, it } from "vitest";
import { compilePath } from "../../../core/curves/index.ts";
import {
  type Contour,
  fitContour,
  pointOnStroke,
  readDrawing,
  rightHalf,
  wordComplaint,
} from "../../../core/exchange/index.ts";

const svg = (inner: string, head = 'viewBox="0 0 100 100" width="100mm"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${head}>\n${inner}\n</svg>`;
const read = (text: string, unitMm?: number) => readDrawing(text, unitMm);
const only = (text: string, unitMm?: number): Contour => {
  const { contours, complaints } = read(text, unitMm);
  const [contour] = contours;
  if (!contour || contours.length !== 1) throw new Error(complaints.map(wordComplaint).join(" "));
  return contour;
};
const words = (text: string) => read(text).complaints.map(wordComplaint);

/** Length along a contour by many chords. */
function lengthOf({ strokes }: Contour): number {
  let sum = 0;
  for (const stroke of strokes) {
    for (let i = 0; i < 4000; i++) {
      const [a, b] = [pointOnStroke(stroke, i / 4000), pointOnStroke(stroke, (i + 1) / 4000)];
      sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
  }
  return sum;
}

describe("paths of an SVG", () => {
  // Path data after the examples of SVG 1.1 §8.3 (from memory); lengths judged by svg-path-properties.
  it.each([
    "M 100 100 L 300 100 L 200 300 z",
    "M100,200 C100,100 250,100 250,200 S400,300 400,200",
    "M200,300 Q400,50 600,300 T1000,300",
    "M300,200 h-150 a150,150 0 1,0 150,-150 z",
    "M600,350 l 50,-25 a25,25 -30 0,1 50,-25 l 50,-25 a25,50 -30 0,1 50,-25 l 50,-25 a25,75 -30 0,1 50,-25 l 50,-25 a25,100 -30 0,1 50,-25 l 50,-25",
    "m10 10a5 5 0 0115 5v3H4",
  ])("%s is as long as another reader says", (d) => {
    const judged = new svgPathProperties(d).getTotalLength();
    const contour = only(svg(`<path d="${d}"/>`, 'viewBox="0 0 100 100" width="100mm" height="100mm"'));
    expect(Math.abs(lengthOf(contour) - judged)).toBeLessThan(1e-3 * judged);
  });

  it("lie where nested transforms put them, in mm and with y upward", () => {
    const text = svg(
      '<g transform="translate(10 20)"><g transform="rotate(90) scale(2)"><line x1="1" y1="2" x2="5" y2="2"/></g></g>',
    );
    expect(only(text).strokes[0]?.from[0]).toBeCloseTo(6, 9);
    expect(only(text).strokes[0]?.from[1]).toBeCloseTo(-22, 9);
    expect(only(text).strokes[0]?.to[1]).toBeCloseTo(-30, 9);
  });

  it.each([
    ['width="10cm" viewBox="0 0 100 50"', 1],
    ['width="4in" viewBox="0 0 4 4"', 25.4],
    ["", 25.4 / 96],
    ['width="100%"', 25.4 / 96],
  ])("have the size that %j says", (head, mmPerUnit) => {
    expect(only(svg('<line x1="0" y1="0" x2="3" y2="0"/>', head)).strokes[0]?.to[0]).toBeCloseTo(
      3 * mmPerUnit,
      9,
    );
  });

  it("are basic shapes too", () => {
    const { contours, complaints } = read(
      svg(
        '<rect width="30" height="20" rx="5"/><circle cx="9" cy="9" r="4"/><ellipse rx="3" ry="2"/><polygon points="0,0 9,0 9,9"/><polyline points="0 0 5 5 9 0"/>',
      ),
    );
    expect(complaints).toEqual([]);
    expect(contours.map(({ closed, strokes }) => [closed, strokes.length])).toEqual([
      [true, 8],
      [true, 4],
      [true, 4],
      [true, 3],
      [false, 2],
    ]);
  });
});

describe("files that are broken or odd", () => {
  it.each([
    ["", "The file is empty."],
    ["\u0000\u0001PK\u0003", "bytes that are no text"],
    ["<html></html>", "no <svg>"],
    [svg('<path id="wing" d="M0 0 L10 10 L 5 oops"/>'), "Line 2, path “wing”: its path cannot be read from"],
    [svg('<circle r="NaN"/>'), "r=“NaN” cannot be read"],
    [svg('<text x="1">hello</text>'), "is no outline"],
    [svg('<path d="M0 0 L9 9').slice(0, 90), "damaged or cut off"],
    ["x,y\n1,2\n12,4,7\n", "Line 3: “12,4,7” has"],
    ["1;2\n3;abc\n", "Line 2: “abc” is no number."],
    ["1;2\n", "a line needs two"],
    ["NaN,1\n2,3", "Line 1: “NaN” is no number."],
  ])("%j is complained of in plain words", (text, complaint) => {
    expect(words(text).join(" ")).toContain(complaint);
  });

  it("a damaged file is read up to the damage", () => {
    expect(read('<svg><path d="M0 0H9"/>\n<g><path d="M').contours).toHaveLength(1);
  });
});

describe("tables of points", () => {
  it.each([
    "x,y\r\n0,0\r\n10.5,2\r\n",
    "\uFEFFx;y\n0;0\n10,5;2\n",
    "0\t0\n10,5\t2",
    '"0","0"\n"10,5","2"',
    "0 0\n10,5 2,0",
    "n;x [mm];z [mm]\n1;0;0\n2;10,5;2",
  ])("%j is one line from 0, 0 to 10.5, 2", (text) => {
    const { strokes } = only(text);
    expect(strokes).toHaveLength(1);
    expect([strokes[0]?.from, strokes[0]?.to]).toEqual([
      [0, 0],
      [10.5, 2],
    ]);
  });

  it("50,000 rows become few nodes that miss no point by more than the tolerance", () => {
    const rows = Array.from({ length: 50_000 }, (_, i) => `${i / 25},${40 * Math.sin(i / 8000)}`).join("\n");
    for (const curvesBecome of ["curves", "lines"] as const) {
      const fitted = fitContour(only(rows), { toleranceMm: 0.1, curvesBecome });
      expect(fitted.missMm).toBeLessThanOrEqual(0.1);
      expect(fitted.nodes.length).toBeLessThan(200);
    }
  }, 30_000);
});

describe("curves as nodes of our own", () => {
  it("a circle becomes a loop of curves within the tolerance, judged by its radius", () => {
    const circle = only(
      svg('<circle cx="50" cy="50" r="40"/>', 'viewBox="0 0 100 100" width="100mm" height="100mm"'),
    );
    const { nodes, closed, missMm } = fitContour(circle, { toleranceMm: 0.05, curvesBecome: "curves" });
    const compiled = compilePath({
      closed,
      elements: nodes.map((node, i) => ({ kind: "node", id: `n${i}`, ...node })),
    });
    if (!compiled.ok) throw new Error("no path");
    expect(missMm).toBeLessThanOrEqual(0.05);
    expect(Math.abs(compiled.value.lengthMm - 80 * Math.PI)).toBeLessThan(0.2);
    expect(nodes.length).toBeLessThan(30);
  });

  it("straight edges stay straight and corners stay corners", () => {
    const { nodes } = fitContour(only(svg('<path d="M0 0H60V30C60 50 30 60 0 40Z"/>')), {
      toleranceMm: 0.1,
      curvesBecome: "curves",
    });
    expect(nodes.filter(({ next }) => next === "line")).toHaveLength(3);
    expect(nodes[0]?.at[0]).toBeCloseTo(0, 9);
  });
});

describe("the right half of an outline", () => {
  it("is cut exactly and closed along the centre line", () => {
    const half = rightHalf(only("0,-50\n100,-50\n100,50\n0,50\n0,-50"));
    const strokes = half.kind === "half" ? half.contour.strokes : [];
    const corners = strokes.map(({ from }) => from.map(Math.round));
    expect(corners).toHaveLength(4);
    expect(corners).toEqual(
      expect.arrayContaining([
        [100, 0],
        [100, 50],
        [0, 50],
        [0, 0],
      ]),
    );
  });

  it("is all of it, or nothing of it, where it lies on one side", () => {
    expect(rightHalf(only("0,0\n9,0\n9,5\n0,0")).kind).toBe("right");
    expect(rightHalf(only("0,-1\n9,-1\n9,-5\n0,-1")).kind).toBe("left");
  });
});
