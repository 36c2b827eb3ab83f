import type { Strip } from "../cutting/index.ts";
import { formatMm, formatNumber } from "../foundation/index.ts";
import { wordBend } from "../jig/index.ts";
import type { MarkingTable } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import { type Block, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";
import { zoneWords } from "./strip-piece.ts";

/** The bends that lie on the strip, measured along its datum. */
export function bendTable(
  design: Design,
  strip: Strip,
  part: Part,
  { table, lettering }: { readonly table: MarkingTable | undefined; readonly lettering: Lettering },
): readonly Block[] {
  // A transition bends along its rulings, which are drawn; what it needs is said above.
  if (part.kind === "transition") return [];
  const us = strip.outlineMm.map((p) => p.u);
  const [first, last] = [Math.min(...us), Math.max(...us)];
  const zones = part.zones.filter((zone) => zone.toUMm > first + 0.05 && zone.fromUMm < last - 0.05);
  if (zones.every((zone) => zone.leastRadiusMm === undefined)) {
    return [paragraphBlock("This strip stays flat.", CONTENT_WIDTH_MM, lettering)];
  }
  const columns = [
    { title: "From", widthMm: 22, face: "mono" as const, anchor: "end" as const },
    { title: "To", widthMm: 22, face: "mono" as const, anchor: "end" as const },
    { title: "Bend", widthMm: 72 },
    { title: "Method", widthMm: 28 },
    { title: "Strain", widthMm: 30, face: "mono" as const, anchor: "end" as const },
  ];
  const start = table?.origin.u ?? first;
  const rows = zones.map((zone) => [
    formatMm(Math.max(zone.fromUMm, first) - start),
    formatMm(Math.min(zone.toUMm, last) - start),
    zoneWords(zone),
    zone.verdict,
    `${formatNumber(zone.strain * 100, 2)} %`,
  ]);
  const holds = design.holds.filter(({ partId }) => partId === part.id);
  const words = zones.flatMap((zone) => {
    const hold = holds.find(({ fromUMm }) => fromUMm === zone.fromUMm);
    const told = wordBend(zone, hold, design.project, (u) => u - start);
    if (told.length === 0) return [];
    const from = formatMm(Math.max(zone.fromUMm, first) - start);
    return [`Bend from ${from}: ${told.join(" ")}`];
  });
  return [
    headingBlock("Bends, along the datum, mm"),
    ...tableBlocks(columns, rows, lettering),
    gapBlock(1.5),
    ...words.map((line) => paragraphBlock(line, CONTENT_WIDTH_MM, lettering)),
  ];
}
