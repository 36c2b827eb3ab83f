import type { EdgeMark } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import { bevelFigure } from "./bevel-words.ts";
import { lineMark, paper, type TextMark, textMark } from "./marks.ts";
import type { Mark } from "./types.ts";
import { uprightText } from "./upright-text.ts";

/** From an edge's tick outside the foam to its end inside, and where its figures stand, mm. */
const OUTSIDE_MM = 3;
const INSIDE_MM = 5;
const LANE_MM = 1.6;
const BESIDE_MM = 1.2;

/** From an edge with marks to words along it: beyond the figures, mm. */
export const BEYOND_FIGURES_MM = 6.5;

/** The ticks of an edge's marks across its lines. */
export const edgeTicks = (marks: readonly EdgeMark[]): readonly Mark[] =>
  marks.map(({ at, inward }) =>
    lineMark(
      [
        paper(at.u - inward.u * OUTSIDE_MM, at.v - inward.v * OUTSIDE_MM),
        paper(at.u + inward.u * INSIDE_MM, at.v + inward.v * INSIDE_MM),
      ],
      "thin",
      "marks",
    ),
  );

/** Beside each tick, along the edge: the number that the neighbour's mark has too, the bevel, the longer face. */
export const edgeFigures = (marks: readonly EdgeMark[], part: Part): readonly TextMark[] =>
  marks.flatMap(({ at, inward, bevelRad, joint }) => {
    const text = [joint?.label ?? "", bevelFigure(bevelRad, part.kind)]
      .filter((word) => word !== "")
      .join("  ");
    if (text === "") return [];
    // The edge runs with the foam on its left.
    const along = { u: inward.v, v: -inward.u };
    const spot = paper(
      at.u + inward.u * LANE_MM + along.u * BESIDE_MM,
      at.v + inward.v * LANE_MM + along.v * BESIDE_MM,
    );
    const turnRad = Math.atan2(along.v, along.u);
    return [uprightText(textMark(spot, text, { face: "mono", turnRad, layer: "words" }))];
  });
