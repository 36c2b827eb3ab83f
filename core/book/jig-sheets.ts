import { at, formatMm, formatNumber } from "../foundation/index.ts";
import type { Rib } from "../jig/index.ts";
import {
  type Block,
  flowBlocks,
  gapBlock,
  headingBlock,
  paragraphBlock,
  stackBlock,
  tableBlocks,
} from "./blocks.ts";
import { type Box, boxesOverlap, boxOf, growBox, heightOf, widthOf } from "./boxes.ts";
import { cautionBlocks } from "./cautions.ts";
import type { Design } from "./design.ts";
import { dimensionMarks } from "./dimensions.ts";
import { holdBlocks } from "./hold-table.ts";
import type { Lettering } from "./lettering.ts";
import { boxMark, lineMark, loopMark, paper, textMark, toPaper } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { centreLineMarks, onView, planMarks, type View } from "./plan-picture.ts";
import { partShapes, turnedOver } from "./plan-shapes.ts";
import { type RibGroup, ribGroups, ribPlaceWords, ribSeenFrom, stationFaceWords } from "./rib-piece.ts";
import { standardScale } from "./scales.ts";

import { thin } from "./thin-points.ts";
import type { Mark, PaperPoint } from "./types.ts";

const MONO_END = { face: "mono", anchor: "end" } as const;

/** The jig: baseboard plan, where every rib stands, the cutting list, and the heights of each rib. */
export function jigSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const { ribs } = design.jig;
  if (ribs.length === 0) return [];
  const groups = ribGroups(design);
  const plan = baseboardPlan(design, lettering);
  const first: readonly Block[] = [
    headingBlock(`Baseboard from above, jig ${design.jig.baseboard.attitude}, front to the left`),
    plan.block,
    paragraphBlock(attitudeWords(design), CONTENT_WIDTH_MM, lettering),
    headingBlock("Ribs and where they stand, mm"),
    ...positionTable(design, lettering),
    ...cuttingList(groups, lettering),
    ...holdBlocks(design, lettering),
    gapBlock(3),
    ...cautionBlocks(["saw"], lettering),
  ];
  const shaped = groups.filter((group) => !group.rib.straightTop);
  const heights = shaped.flatMap((group) => ribBlocks(design, group, lettering));
  return [
    ...flowBlocks(first, CONTENT).map((marks) => body("Jig", `1:${plan.scale}`, marks)),
    ...(heights.length === 0
      ? []
      : flowBlocks(heights, CONTENT).map((marks) => body("Rib heights", "as noted", marks))),
  ];
}

const body = (title: string, scale: string, marks: readonly Mark[]): SheetBody => ({
  title,
  documentType: "jig",
  scale,
  marks,
});

function attitudeWords(design: Design): string {
  const { attitude } = design.jig.baseboard;
  const turned =
    attitude === "upright"
      ? "The ribs stand under the air face; the car's ground is below the baseboard."
      : "The tray lies upside down: ribs under its upper face, what faces the ground looks up.";
  return `${turned} Tack the ribs, true them by string and by the two diagonals, then fix. Lay a batten over them and look along it for highs and lows. Each rib's station face stands on its line; the body goes the way the face does not look.`;
}

function baseboardPlan(
  design: Design,
  lettering: Lettering,
): { readonly block: Block; readonly scale: number } {
  const { baseboard, ribs } = design.jig;
  const isTurned = baseboard.attitude === "inverted";
  const seen = (p: { readonly x: number; readonly y: number }) => paper(p.x, isTurned ? -p.y : p.y);
  const box = boxOf(baseboard.corners.map(seen));
  const size = { widthMm: widthOf(box), heightMm: heightOf(box) };
  const scale = standardScale(size, { widthMm: CONTENT_WIDTH_MM - 34, heightMm: 95 });
  const [width, height] = [size.widthMm / scale, size.heightMm / scale];
  const shapes = isTurned ? partShapes(design).map(turnedOver) : partShapes(design);
  const lines = baseboard.lines.map((line) => ({ ...line, from: seen(line.from), to: seen(line.to) }));
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const left = corner.x + (CONTENT_WIDTH_MM - width) / 2;
    const view: View = { box, scale, corner: paper(left, corner.y - 8 - height) };
    const { x, y } = view.corner;
    const [above, below] = isTurned ? ["left hand", "right hand"] : ["right hand", "left hand"];
    return [
      boxMark(view.corner, width, height, "outline"),
      ...shapes.flatMap((shape) => planMarks(shape, view, "station")),
      ...(box.bottom < 0 && box.top > 0 ? centreLineMarks(view) : []),
      ...ribLines(ribs, lines, view, lettering),
      ...dimensionMarks(
        view.corner,
        paper(x + width, y),
        ribs.some((rib) => rib.runs === "across") ? -14 : -9,
        size.widthMm,
      ),
      ...dimensionMarks(view.corner, paper(x, y + height), 8, size.heightMm),
      textMark(paper(x, y + height + 1.5), above, { heightMm: 1.8, face: "bold" }),
      textMark(paper(x + width + 1.5, y - 2.5), below, { heightMm: 1.8, face: "bold" }),
    ];
  };
  return { block: { heightMm: height + 30, draw }, scale };
}

interface SeenLine {
  readonly ribId: string;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
}

/** Rib lines thick, the code at the end beyond the baseboard, codes that would collide stepped outward. */
function ribLines(
  ribs: readonly Rib[],
  lines: readonly SeenLine[],
  view: View,
  lettering: Lettering,
): readonly Mark[] {
  const ends: Box[] = [];
  return lines.flatMap((line) => {
    const rib = ribs.find((candidate) => candidate.id === line.ribId);
    const [from, to] = [onView(view, line.from), onView(view, line.to)];
    if (rib === undefined) return [];
    const width = lettering.widthMm(rib.id, "mono", 1.8);
    const spot = labelSpot(rib, view, { from, to });
    let box = { left: spot.x, right: spot.x + width, bottom: spot.y, top: spot.y + 2 };
    while (ends.some((one) => boxesOverlap(growBox(one, 0.3), box))) {
      box =
        rib.runs === "across"
          ? { ...box, bottom: box.bottom - 2.6, top: box.top - 2.6 }
          : { ...box, left: box.left + width + 1, right: box.right + width + 1 };
    }
    ends.push(box);
    return [
      lineMark([from, to], "outline", "ribs"),
      textMark(paper(box.left, box.bottom), rib.id, { heightMm: 1.8, face: "mono", layer: "ribs" }),
    ];
  });
}

function labelSpot(
  rib: Rib,
  view: View,
  line: { readonly from: PaperPoint; readonly to: PaperPoint },
): PaperPoint {
  if (rib.runs === "across") return paper(line.from.x - 2, view.corner.y - 3.2);
  return paper(view.corner.x + widthOf(view.box) / view.scale + 1.5, line.from.y - 0.9);
}

function positionTable(design: Design, lettering: Lettering): readonly Block[] {
  const columns = [
    { title: "Rib", widthMm: 16, face: "mono" as const },
    { title: "Stands at", widthMm: 24, ...MONO_END },
    { title: "Board's edge to station face", widthMm: 36, ...MONO_END },
    { title: "From", widthMm: 22, ...MONO_END },
    { title: "To", widthMm: 22, ...MONO_END },
    { title: "Station face", widthMm: 24 },
    { title: "Top", widthMm: 30 },
  ];
  const rows = design.jig.ribs.map((rib) => {
    const us = rib.outlineMm.map((p) => p.u);
    const proud = rib.mostProudMm > 0.05 ? `, proud ${formatMm(rib.mostProudMm)}` : "";
    return [
      rib.id,
      ribPlaceWords(rib),
      boardWords(design, rib),
      formatMm(Math.min(...us)),
      formatMm(Math.max(...us)),
      rib.stationFace,
      `${rib.cut}${proud}`,
    ];
  });
  return tableBlocks(columns, rows, lettering);
}

/** Distance of a rib's station face from the baseboard's front edge (across) or left edge (along). */
function boardWords(design: Design, rib: Rib): string {
  const { corners } = design.jig.baseboard;
  return rib.runs === "across"
    ? `front ${formatMm(rib.atMm - Math.min(...corners.map((p) => p.x)))}`
    : `left ${formatMm(rib.atMm - Math.min(...corners.map((p) => p.y)))}`;
}

/** Ribs with a straight top need no template: one line each. */
function cuttingList(groups: readonly RibGroup[], lettering: Lettering): readonly Block[] {
  const straight = groups.filter((group) => group.rib.straightTop);
  if (straight.length === 0) return [];
  const columns = [
    { title: "Ribs", widthMm: 44, face: "mono" as const },
    { title: "Pieces", widthMm: 16, ...MONO_END },
    { title: "Thick", widthMm: 16, ...MONO_END },
    { title: "Length", widthMm: 20, ...MONO_END },
    { title: "Height at station face, both ends", widthMm: 38, ...MONO_END },
    { title: "At other face, both ends", widthMm: 40, ...MONO_END },
  ];
  const rows = straight.map(({ rib, alike }) => {
    const box = boxOf(rib.outlineMm.map(toPaper));
    const [first, last] = [at(rib.heights, 0), at(rib.heights, -1)];
    return [
      alike.map((one) => one.id).join(" "),
      formatNumber(alike.length, 0),
      formatMm(rib.thicknessMm),
      formatMm(widthOf(box)),
      `${formatMm(first.stationFaceMm)} ${formatMm(last.stationFaceMm)}`,
      `${formatMm(first.farFaceMm)} ${formatMm(last.farFaceMm)}`,
    ];
  });
  return [
    headingBlock("Cutting list: straight ribs, no template, mm"),
    ...tableBlocks(columns, rows, lettering),
  ];
}

/** One group of ribs: a small drawing and the table of its heights. */
function ribBlocks(design: Design, group: RibGroup, lettering: Lettering): readonly Block[] {
  const { rib, alike } = group;
  const { attitude } = design.jig.baseboard;
  const axis = rib.runs === "across" ? "y" : "x";
  const title = alike.map((one) => `${one.id} (${ribPlaceWords(one)})`).join(", ");
  const drawing = ribDrawing(rib);
  const columns = [
    { title: `Along, ${axis}`, widthMm: 30, ...MONO_END },
    { title: "Station face", widthMm: 30, ...MONO_END },
    { title: "Other face", widthMm: 30, ...MONO_END },
    { title: "Bevel", widthMm: 26, ...MONO_END },
    { title: "Carries", widthMm: 30, face: "mono" as const },
  ];
  const rows = rib.heights.map((height) => [
    formatMm(height.atMm),
    formatMm(height.stationFaceMm),
    formatMm(height.farFaceMm),
    `${formatNumber((height.bevelRad * 180) / Math.PI, 1)}°`,
    height.partId,
  ]);
  return [
    {
      ...stackBlock([
        headingBlock(`Rib ${title}`),
        drawing.block,
        paragraphBlock(
          `1:${drawing.scale}, seen from the ${ribSeenFrom(rib, attitude)}. ${alike.map((one) => stationFaceWords(one, attitude)).join("; ")}. ${rib.cut === "square" ? "Cut the top square." : "Bevel the top as listed."}`,
          CONTENT_WIDTH_MM,
          lettering,
        ),
      ]),
      keepsWithNext: true,
    },
    ...tableBlocks(columns, rows, lettering),
    gapBlock(4),
  ];
}

function ribDrawing(rib: Rib): { readonly block: Block; readonly scale: number } {
  const outline = rib.outlineMm.map(toPaper);
  const box = boxOf(outline);
  const scale = standardScale(
    { widthMm: widthOf(box), heightMm: heightOf(box) },
    { widthMm: CONTENT_WIDTH_MM - 8, heightMm: 40 },
  );
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const view: View = { box, scale, corner: paper(corner.x + 2, corner.y - heightOf(box) / scale - 2) };
    const points = thin(outline.map((p) => onView(view, p)));
    const centre = onView(view, paper(0, box.bottom));
    const crossesCentre = rib.runs === "across" && box.left < 0 && box.right > 0;
    return [
      loopMark(points, "outline", "rib"),
      ...(crossesCentre
        ? [
            lineMark(
              [paper(centre.x, centre.y - 1.5), paper(centre.x, centre.y + heightOf(box) / scale + 1.5)],
              "centre",
            ),
          ]
        : []),
    ];
  };
  return { block: { heightMm: heightOf(box) / scale + 5, draw }, scale };
}
