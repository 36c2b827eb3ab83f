import { formatMm, formatNumber } from "../foundation/index.ts";
import { bevelRange } from "./bevel-words.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import { cautionBlocks, type Hazard } from "./cautions.ts";
import { cuttingBesideWords, toolHazard } from "./cutting-words.ts";
import type { Design } from "./design.ts";
import { jointWords, taperWords } from "./edge-neighbours.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { spanOf } from "./part-data-tables.ts";
import { readingBlocks } from "./reading-blocks.ts";

const MONO_END = { face: "mono", anchor: "end" } as const;

/** The list of strips to cut, the joints between parts, and what to mind when cutting. */
export function partsSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const blocks: readonly Block[] = [
    headingBlock("Strips to cut"),
    ...stripTable(design, lettering),
    ...plateTable(design, lettering),
    ...jointTable(design, lettering),
    gapBlock(3),
    paragraphBlock(cuttingBesideWords(design.project.cutting), CONTENT_WIDTH_MM, lettering),
    ...cautionBlocks(cuttingHazards(design), lettering),
    ...readingBlocks(design, lettering),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Parts and joints",
    documentType: "parts list",
    scale: "none",
    marks,
  }));
}

const cuttingHazards = ({ project }: Design): readonly Hazard[] => [
  toolHazard(project.cutting),
  "foam dust",
  "fire",
];

function stripTable(design: Design, lettering: Lettering): readonly Block[] {
  const columns = [
    { title: "Strip", widthMm: 24, face: "mono" as const },
    { title: "Name", widthMm: 44 },
    { title: "Length", widthMm: 20, ...MONO_END },
    { title: "Width", widthMm: 20, ...MONO_END },
    { title: "Thick", widthMm: 15, ...MONO_END },
    { title: "Stock", widthMm: 31 },
    { title: "Bends", widthMm: 20 },
  ];
  const rows = design.strips.map((strip) => {
    const part = design.parts.find((candidate) => candidate.id === strip.partId);
    const stock = design.project.stock.find((candidate) => candidate.id === strip.stockId);
    return [
      strip.id,
      part?.name ?? "",
      formatMm(spanOf(strip.outlineMm.map((p) => p.u))),
      formatMm(spanOf(strip.outlineMm.map((p) => p.v))),
      part === undefined ? "" : formatMm(part.thicknessMm),
      panelOf(design, strip.id) ??
        (stock === undefined
          ? "none fits"
          : `${formatNumber(stock.lengthMm, 0)} × ${formatNumber(stock.widthMm, 0)}`),
      part?.verdict ?? "",
    ];
  });
  return tableBlocks(columns, rows, lettering);
}

/** The panel that a strip is cut from, if it is. */
const panelOf = ({ panels }: Design, stripId: string): string | undefined =>
  panels.panels.find(({ pieces }) => pieces.some((piece) => piece.stripId === stripId))?.id;

function plateTable(design: Design, lettering: Lettering): readonly Block[] {
  if (design.plates.length === 0) return [];
  const columns = [
    { title: "Plate", widthMm: 24, face: "mono" as const },
    { title: "Name", widthMm: 44 },
    { title: "Length", widthMm: 20, ...MONO_END },
    { title: "Width", widthMm: 20, ...MONO_END },
    { title: "Thick", widthMm: 15, ...MONO_END },
    { title: "Metal", widthMm: 31 },
    { title: "Bends", widthMm: 20, ...MONO_END },
  ];
  const rows = design.plates.flatMap((plate) =>
    plate.parts.map((part) => [
      part.id,
      plate.name,
      formatMm(part.lengthMm),
      formatMm(part.widthMm),
      formatMm(plate.thicknessMm),
      plate.metalName,
      formatNumber(part.bends.length, 0),
    ]),
  );
  return [headingBlock("Plates to cut and fold"), ...tableBlocks(columns, rows, lettering)];
}

function jointTable(design: Design, lettering: Lettering): readonly Block[] {
  const seams = design.seams.map((seam) => {
    const cuts = seam.stripIds.map((id) => {
      const strip = design.strips.find((candidate) => candidate.id === id);
      const edge = strip?.edges.find(({ edgeId }) => edgeId === `seam:${seam.id}`);
      const part = design.parts.find((candidate) => candidate.id === seam.partId);
      if (strip === undefined || edge === undefined || part === undefined) return "square";
      return taperWords(strip, edge.edgeId) ?? bevelRange(edge.bevels, part.kind);
    });
    return [seam.id, `seam, ${seam.runs}`, formatMm(seam.lengthMm), ...cuts];
  });
  const joints = design.joints.map((joint) => {
    const cuts = joint.partIds.map((id) => {
      const part = design.parts.find((candidate) => candidate.id === id);
      if (part === undefined) return "";
      const words = jointWords(joint, part);
      return `${id}: ${words.slice(words.indexOf(", ") + 2)}`;
    });
    return [joint.id, joint.kind, formatMm(joint.lengthMm), ...cuts];
  });
  if (seams.length + joints.length === 0) return [];
  const columns = [
    { title: "Joint", widthMm: 40, face: "mono" as const },
    { title: "Kind", widthMm: 38 },
    { title: "Length", widthMm: 20, ...MONO_END },
    { title: "Edge of the first", widthMm: 38 },
    { title: "Edge of the second", widthMm: 38 },
  ];
  return [headingBlock("Joints and seams, mm"), ...tableBlocks(columns, [...joints, ...seams], lettering)];
}
