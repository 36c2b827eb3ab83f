import { svgPathProperties } from "svg-path-properties";
import { expect, it } from "vitest";
import { compilePath, type PathNode } from "../../../core/curves/index.ts";
import {
  linesAsCsv,
  linesAsSvg,
  type OutgoingLine,
  pointOnStroke,
  readDrawing,
} from "../../../core/exchange/index.ts";
import { at } from "../../../core/foundation/index.ts";

const node = (id: string, x: number, up: number, more: Partial<PathNode> = {}): PathNode => ({
  kind: "node",
  id,
  at: [x, up],
  next: "line",
  ...more,
});

function lineOf(
  name: string,
  closed: boolean,
  elements: readonly PathNode[],
): OutgoingLine & { readonly lengthMm: number } {
  const compiled = compilePath({ closed, elements });
  if (!compiled.ok) throw new Error(JSON.stringify(compiled));
  return { name, ...compiled.value };
}

const outline = lineOf("Outer floor & co", true, [
  node("a", 100, 50),
  node("b", 900, 50, { radiusMm: 120 }),
  node("c", 900, 400, { next: "curve" }),
  node("d", 500, 520, { next: "curve" }),
  node("e", 100, 430),
]);
const profile = lineOf("Ramp", false, [
  node("p", 0, 60),
  node("q", 700, 60, { radiusMm: 300 }),
  node("r", 1200, 200),
]);

it("writes an outline whose path is as long as the line, judged by another reader of paths", () => {
  const data = / d="([^"]+)"/.exec(linesAsSvg("Tray", [outline]))?.[1] ?? "";
  expect(new svgPathProperties(data).getTotalLength()).toBeCloseTo(outline.lengthMm, 1);
});

it("says its size in mm, and keeps signs that XML would take for its own", () => {
  const text = linesAsSvg("Tray", [outline]);
  expect(text).toMatch(/width="820mm"/);
  expect(text).toContain("Outer floor &amp; co");
});

it.each([outline, profile])("gives a line that is read back where it was: $name", (line) => {
  const { contours, complaints } = readDrawing(linesAsSvg("Tray", [line]), undefined);
  expect(complaints).toEqual([]);
  const [contour] = contours;
  if (!contour) throw new Error("nothing was read");
  expect(contour.closed).toBe(line.closed);
  // The page's corner is the origin of what is read: the two differ by one shift and nothing else.
  const starts = contour.strokes.map((stroke) => pointOnStroke(stroke, 0));
  const own = line.pieces.map((piece) => (piece.kind === "line" ? piece.from : undefined));
  const shifts = own.flatMap((point, i) =>
    point ? [[at(starts, i)[0] - point[0], at(starts, i)[1] - point[1]] as const] : [],
  );
  for (const [x, up] of shifts) {
    expect(x).toBeCloseTo(at(shifts, 0)[0], 3);
    expect(up).toBeCloseTo(at(shifts, 0)[1], 3);
  }
});

it("writes points that follow the line within a hundredth, and reads them back as one line", () => {
  const text = linesAsCsv([profile], ["x", "z"]);
  expect(text.split("\r\n").slice(0, 2)).toEqual(["x mm,z mm", "0,60"]);
  const { contours, complaints } = readDrawing(text, undefined);
  expect(complaints).toEqual([]);
  const strokes = at(contours, 0).strokes;
  const length = strokes.reduce((sum, { from, to }) => sum + Math.hypot(to[0] - from[0], to[1] - from[1]), 0);
  expect(length).toBeGreaterThan(profile.lengthMm - 0.05);
  expect(length).toBeLessThanOrEqual(profile.lengthMm + 1e-3);
});

it("tells several lines apart by a first column, and quotes a name that needs it", () => {
  const rows = linesAsCsv([{ ...outline, name: 'Floor, "outer"' }, profile], ["x", "y"]).split("\r\n");
  expect(rows[0]).toBe("line,x mm,y mm");
  expect(rows[1]).toBe('"Floor, ""outer""",100,50');
  expect(rows.at(-2)).toMatch(/^Ramp,1200,200$/);
});
