import type { Strip } from "../cutting/index.ts";
import { formatAngle, formatMm } from "../foundation/index.ts";
import { faceShiftMm, hasBevels, isFitted } from "../marking/index.ts";
import type { Part, PartEdge } from "../patterns/index.ts";
import { type Block, gapBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import { widenedAt } from "./column-widths.ts";
import type { Design } from "./design.ts";
import { edgeWords, measuredEdge } from "./edge-neighbours.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";
import { cornerPairs } from "./strip-drawing.ts";

export function edgeTable(design: Design, strip: Strip, part: Part, lettering: Lettering): readonly Block[] {
  const pairs = cornerPairs(strip);
  const isScarfed = (strip.tapers?.length ?? 0) > 0;
  const hasLine = hasBevels(strip) || isScarfed || isFitted(strip, "gap") || isFitted(strip, "hold");
  const figure = { widthMm: hasLine ? 18 : 20, face: "mono" as const, anchor: "end" as const };
  const columns = [
    { title: "Edge", widthMm: hasLine ? 14 : 16, face: "mono" as const },
    { title: "Name", widthMm: 34 },
    { title: "Meets", widthMm: hasLine ? 36 : 44 },
    { title: "Drawn", ...figure },
    { title: "In\u00a0space", ...figure },
    { title: "Flat", ...figure },
    { title: "Bevel", ...figure },
    ...(hasLine ? [{ title: "Line", ...figure }] : []),
  ];
  const rows = strip.loops
    .flatMap((loop) => loop.edges)
    .map((edge, i) => {
      const measured = measuredEdge(strip, edge);
      const [from, to] = pairs[i] ?? [0, 0];
      const lengths = measured
        ? [measured.drawnLengthMm, measured.spaceLengthMm, measured.flatLengthMm].map(formatMm)
        : ["", "", ""];
      return [
        `${from}–${to}`,
        edge.name,
        edgeWords(design, strip, part, edge),
        ...lengths,
        measured === undefined ? "" : bevelAngles(measured),
        ...(hasLine && measured !== undefined ? [lineShift(measured, part, edge.spare?.lengthMm ?? 0)] : []),
      ];
    });
  const small = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering, { heightMm: 2.5 });
  return [
    ...tableBlocks(widenedAt("Meets", columns, rows, lettering), rows, lettering),
    gapBlock(1.5),
    ...(strip.edges.some(({ letIn }) => letIn) ? [small(LET_IN_WORDS)] : []),
    ...(isScarfed ? [small(SCARF_WORDS)] : []),
    ...(isFitted(strip, "gap") ? [small(FITTED_WORDS)] : []),
    ...(isFitted(strip, "hold") ? [small(PAST_WORDS)] : []),
  ];
}

const FITTED_WORDS =
  "Closer: the thick line with the spare is cut now, the thin net line inside it is where the drawing ends it. Cut to neither at last, but to the gap that you measure when the neighbours stand.";

const PAST_WORDS =
  "Runs past: cut by the thick line now. The foam between it and the thin net line lies over an outboard rib and is held down there, so that the bend keeps to its shape up to the edge. Trim it along the net line after the first skin.";

const LET_IN_WORDS =
  "Where an insert or a flange stands outside the foam, the drawn length is that of its outer edge, the others those of the foam with the steps at its ends.";

const SCARF_WORDS =
  "Scarf: cut the edge square where the line to cut by runs. Then plane or sand the face that is named from the taper's line to nothing at the edge; the two tapers lie on each other, and the glued strip is as thick as the foam.";

/** The bevel at an edge's start and end as angles; which face is longer stands beside the neighbour. */
function bevelAngles({ bevelRad: [start, end] }: PartEdge): string {
  const [first, last] = [formatAngle(Math.abs(start)), formatAngle(Math.abs(end))];
  if (first === last) return first === formatAngle(0) ? "square" : first;
  return `${first} ${last}`;
}

/** How far the line on the face shown lies outside the outline at mid-thickness, at an edge's start and end, mm. */
function lineShift({ bevelRad }: PartEdge, { thicknessMm }: Part, spareMm: number): string {
  const [first, last] = bevelRad.map((angleRad) => {
    const outsideMm = spareMm - faceShiftMm(thicknessMm, angleRad);
    const words = formatMm(outsideMm);
    return words === formatMm(0) ? words : outsideMm > 0 ? `+${words}` : words;
  });
  return first === last ? (first ?? "") : `${first} ${last}`;
}
