import type { Strip } from "../cutting/index.ts";
import { at, formatAngle, formatNumber } from "../foundation/index.ts";
import type { Part } from "../patterns/index.ts";
import { type SeatStation, seatBevelRad } from "../surfaces/index.ts";
import { halvedTable } from "./beside-columns.ts";
import { type Block, gapBlock, headingBlock, paragraphBlock } from "./blocks.ts";
import { heightOf } from "./boxes.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT } from "./page-frame.ts";

/** Rows of a seat's table are this far apart, mm. */
const ROW_STEP_MM = 100;

/**
 * How the upper edge of a fence is bevelled: along the datum, how far each foam face stands over or under the drawn
 * edge (the middle of the foam), and the bevel. Nothing where the seat is square all along.
 */
export function seatBlocks(
  strip: Strip,
  part: Part,
  datumUMm: number,
  { widthMm, lettering }: { readonly widthMm: number; readonly lettering: Lettering },
): readonly Block[] {
  const stations = stationsOf(strip, part);
  if (stations.every(({ bevelRad }) => seatBevelRad(bevelRad, part.thicknessMm) === 0)) return [];
  const figure = { face: "mono" as const, anchor: "end" as const };
  const columns = [
    { title: "Along", widthMm: 22, ...figure },
    { title: "Inboard face", widthMm: 30, ...figure },
    { title: "Outboard face", widthMm: 30, ...figure },
    { title: "Bevel", widthMm: 22, ...figure },
  ];
  const rows = stations.map((station) => {
    const { inboardMm, outboardMm } = facesOf(station, part);
    return [
      formatNumber(station.alongMm - datumUMm, 1),
      signed(inboardMm),
      signed(outboardMm),
      formatAngle(Math.abs(station.bevelRad)),
    ];
  });
  const heading = headingBlock("Upper edge, bevelled to its sheet, mm");
  const freshMm = heightOf(CONTENT) - heading.heightMm;
  return [
    heading,
    ...halvedTable(columns, withoutRepeats(rows), { freshMm, lettering }),
    gapBlock(1.5),
    paragraphBlock(
      "How far the foam stands over (+) or under (−) the drawn edge at each face; even between the rows.",
      widthMm,
      lettering,
    ),
  ];
}

/** Of rows that print the same but for their place, the first and the last. */
const withoutRepeats = (rows: readonly (readonly string[])[]): readonly (readonly string[])[] => {
  const told = (i: number) => rows[i]?.slice(1).join(" ");
  return rows.filter((_, i) => told(i) !== told(i - 1) || told(i) !== told(i + 1));
};

/** The stations that lie on the strip, at its ends and about every hundred millimetres between. */
function stationsOf(strip: Strip, part: Part): readonly SeatStation[] {
  const us = strip.outlineMm.map(({ u }) => u);
  const [from, to] = [Math.min(...us), Math.max(...us)];
  const on = part.seat.filter(({ alongMm }) => alongMm >= from - 0.01 && alongMm <= to + 0.01);
  return on.filter((station, i) => {
    if (i === 0 || i === on.length - 1) return true;
    return Math.floor(station.alongMm / ROW_STEP_MM) !== Math.floor(at(on, i - 1).alongMm / ROW_STEP_MM);
  });
}

/** The left of a fence's line looks outboard on the right hand and inboard on the left. */
function facesOf(
  { leftZMm, rightZMm, midZMm }: SeatStation,
  part: Part,
): { readonly inboardMm: number; readonly outboardMm: number } {
  const [left, right] = [leftZMm - midZMm, rightZMm - midZMm];
  return part.hand === "left"
    ? { inboardMm: left, outboardMm: right }
    : { inboardMm: right, outboardMm: left };
}

const signed = (valueMm: number): string =>
  valueMm > 0.005 ? `+${formatNumber(valueMm, 2)}` : formatNumber(valueMm, 2);
