import { at, formatMm } from "../foundation/index.ts";
import type { Solid } from "../solids/index.ts";
import { type Block, headingBlock, paragraphBlock } from "./blocks.ts";
import { type Box, boxOf, widthOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import { dimensionMarks } from "./dimensions.ts";
import { flowEvenly } from "./flow-evenly.ts";
import type { Lettering } from "./lettering.ts";
import { lineMark, loopMark, paper, textMark } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { onView, type View } from "./plan-picture.ts";
import { standardScale } from "./scales.ts";
import type { SectionStation } from "./section-stations.ts";
import { thin } from "./thin-points.ts";
import { type CutPart, endsOf, lowestOver, type Told, traySections } from "./tray-sections.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** Room beside a section for the ends of its ground line, mm. */
const BESIDE_MM = 14;
/** The ground line runs so far past a section, with its word on it. */
const GROUND_MM = 12;
const HEADING_MM = 9;
/** Below the ground: two rows of figures, and the width. */
const ROW_MM = 4.2;
const BELOW_MM = 25;
/** A figure of a row needs so much room. */
const FIGURE_MM = 16;

/** Cross-sections of the bare tray where other parts are cut, seen from the rear, with widths and heights. */
export function sectionSheets(
  design: Design,
  solids: readonly Solid[],
  lettering: Lettering,
): readonly SheetBody[] {
  const sections = traySections(solids);
  if (sections.length === 0) return [];
  const points = sections.flatMap(({ parts }) => parts.flatMap(({ loops }) => loops.flat()));
  const box = boxOf([...points, paper(0, 0)]);
  const scale = standardScale(
    { widthMm: widthOf(box), heightMm: 0 },
    { widthMm: CONTENT_WIDTH_MM - 2 * BESIDE_MM, heightMm: 1 },
  );
  const isMirrored = design.project.symmetry === "mirrored";
  const blocks = [
    paragraphBlock(
      `Bare foam and metal, seen from the rear: the right-hand side is on the right. Below each: y and, of the lower face, z above the ground at the ends of the parts${isMirrored ? " on the right-hand side; the left is its image" : ""}. Where the sections lie is drawn in the plan.`,
      CONTENT_WIDTH_MM,
      lettering,
    ),
    ...sections.map(({ station, parts }) =>
      sectionBlock(station, parts, { box, scale, lettering, isMirrored }),
    ),
  ];
  return flowEvenly(blocks, CONTENT).map((marks) => ({
    title: "Cross-sections",
    documentType: "arrangement",
    scale: `1:${scale}`,
    marks,
  }));
}

interface SectionLook {
  /** Around every section, so that they lie over each other. */
  readonly box: Box;
  readonly scale: number;
  readonly lettering: Lettering;
  readonly isMirrored: boolean;
}

function sectionBlock(station: SectionStation, parts: readonly CutPart[], look: SectionLook): Block {
  const { box, scale } = look;
  const own = boxOf(parts.flatMap(({ loops }) => loops.flat()));
  const codes = codeRows(parts, look);
  const topMm = HEADING_MM + codes.rowCount * ROW_MM + 3;
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const ground = corner.y - topMm - own.top / scale;
    const left = corner.x + (CONTENT_WIDTH_MM - widthOf(box) / scale) / 2;
    const view: View = { box: { ...box, bottom: 0 }, scale, corner: paper(left, ground) };
    const spot = (p: PaperPoint) => onView(view, p);
    const [first, last] = [spot(paper(own.left, 0)), spot(paper(own.right, 0))];
    return [
      ...headingBlock(`${station.letter}–${station.letter}: x ${formatMm(station.xMm)}`).draw(corner),
      ...parts.flatMap(({ loops }) => loops.map((loop) => loopMark(thin(loop.map(spot)), "thin", "section"))),
      ...codes.marks(spot, corner.y - HEADING_MM - 2),
      lineMark([paper(first.x - GROUND_MM, ground), paper(last.x + 6, ground)], "thin", "ground"),
      textMark(paper(first.x - GROUND_MM, ground + 1), "ground"),
      ...figures(parts, spot, look),
      ...dimensionMarks(
        paper(first.x, ground - 2 * ROW_MM - 3),
        paper(last.x, ground - 2 * ROW_MM - 3),
        -8,
        widthOf(own),
      ),
    ];
  };
  return { heightMm: topMm + own.top / scale + BELOW_MM, draw };
}

/** y and z under the ends of the parts, from the outermost inward as far as there is room; extension lines to them. */
function figures(
  parts: readonly CutPart[],
  spot: (p: PaperPoint) => PaperPoint,
  { isMirrored }: SectionLook,
): readonly Mark[] {
  const told = parts.filter(({ isImage }) => !isImage).flatMap(({ loops }) => loops.flatMap(endsOf));
  const onSide = told.filter(({ y }) => !isMirrored || y >= -0.05);
  const centre = lowestOver(parts, 0);
  const inOrder = [...(centre === undefined ? [] : [{ y: 0, z: centre }]), ...onSide].sort(
    (a, b) => Math.abs(b.y) - Math.abs(a.y) || a.z - b.z,
  );
  const kept: Told[] = [];
  for (const one of inOrder) {
    const x = spot(paper(one.y, 0)).x;
    if (kept.every((other) => Math.abs(spot(paper(other.y, 0)).x - x) >= FIGURE_MM)) kept.push(one);
  }
  return kept.flatMap(({ y, z }) => {
    const [foot, top] = [spot(paper(y, 0)), spot(paper(y, z))];
    const look = { face: "mono", anchor: "middle", layer: "dimensions" } as const;
    return [
      lineMark([paper(foot.x, top.y - 0.6), paper(foot.x, foot.y - 1)], "station", "dimensions"),
      textMark(paper(foot.x, foot.y - ROW_MM - 0.8), `y ${formatMm(y)}`, look),
      textMark(paper(foot.x, foot.y - 2 * ROW_MM - 0.8), `z ${formatMm(z)}`, look),
    ];
  });
}

/** The codes of the parts over a section, in as many rows as keep them apart, each with a line to its part. */
function codeRows(
  parts: readonly CutPart[],
  { box, scale, lettering }: SectionLook,
): {
  readonly rowCount: number;
  readonly marks: (spot: (p: PaperPoint) => PaperPoint, topY: number) => readonly Mark[];
} {
  const rows: number[] = [];
  const tops: PaperPoint[] = [];
  const labelled = parts.map(({ partId, loops }) => {
    const isFree = (p: PaperPoint) => tops.every((other) => Math.abs(other.x - p.x) / scale > CODE_MM);
    const spots = SHARES.map((share) => topOf(loops, share));
    const top = spots.find(isFree) ?? at(spots, 0);
    tops.push(top);
    return { partId, top };
  });
  const placed = labelled
    .sort((a, b) => a.top.x - b.top.x)
    .map(({ partId, top }) => {
      const half = lettering.widthMm(partId, "mono", 2.5) / 2 + 0.8;
      const x = (top.x - box.left) / scale;
      const free = rows.findIndex((end) => end < x - half);
      const row = free < 0 ? rows.length : free;
      rows[row] = x + half;
      return { partId, top, row };
    });
  const marks = (spot: (p: PaperPoint) => PaperPoint, topY: number) =>
    placed.flatMap(({ partId, top, row }) => {
      const foot = spot(top);
      const y = topY - (row + 1) * ROW_MM + 0.8;
      const isUnderOther = placed.some(
        (other) =>
          other.row > row &&
          Math.abs(spot(other.top).x - foot.x) < lettering.widthMm(other.partId, "mono", 2.5) / 2 + 0.5,
      );
      return [
        textMark(paper(foot.x, y), partId, { face: "mono", anchor: "middle", layer: "words" }),
        ...(isUnderOther
          ? []
          : [lineMark([paper(foot.x, y - 0.8), paper(foot.x, foot.y + 0.4)], "station", "words")]),
      ];
    });
  return { rowCount: rows.length, marks };
}

/** Where along a part its code is led to, best first; and how far from another such place, mm of paper. */
const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8];
const CODE_MM = 3;

/** The place at a share of the way along a part's upper side. */
function topOf(loops: readonly (readonly PaperPoint[])[], share: number): PaperPoint {
  const widest = [...loops].sort((a, b) => widthOf(boxOf(b)) - widthOf(boxOf(a)))[0] ?? [];
  const box = boxOf(widest);
  const x = box.left + (box.right - box.left) * share;
  const over = widest.flatMap((b, i) => {
    const a = widest[(i + widest.length - 1) % widest.length] ?? b;
    return a.x < x === b.x < x ? [] : [a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x)];
  });
  return paper(x, over.length === 0 ? box.top : Math.max(...over));
}
