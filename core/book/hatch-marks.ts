import { chordsAt } from "./chords.ts";
import { type LineMark, lineMark, paper } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

/** Thin parallel lines over an area (even-odd), so far apart on paper and leaning so from the level, mm and rad. */
export function hatchMarks(
  loops: readonly (readonly PaperPoint[])[],
  apartMm: number,
  leanRad: number,
): readonly LineMark[] {
  // Turned so that the lines stand upright.
  const turnRad = Math.PI / 2 - leanRad;
  const turned = loops.map((loop) => loop.map((p) => turnedBy(p, turnRad)));
  const xs = turned.flat().map(({ x }) => x);
  if (xs.length === 0) return [];
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const lines: LineMark[] = [];
  for (let x = (Math.floor(from / apartMm) + 0.5) * apartMm; x < to; x += apartMm)
    for (const [low, high] of chordsAt(turned, x))
      if (high - low > SHORTEST_MM)
        lines.push(
          lineMark(
            [paper(x, low), paper(x, high)].map((p) => turnedBy(p, -turnRad)),
            "station",
          ),
        );
  return lines;
}

/** Shorter strokes are dots, mm. */
const SHORTEST_MM = 0.2;

const turnedBy = ({ x, y }: PaperPoint, rad: number): PaperPoint =>
  paper(x * Math.cos(rad) - y * Math.sin(rad), x * Math.sin(rad) + y * Math.cos(rad));
