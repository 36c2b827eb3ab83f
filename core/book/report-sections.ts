import { traySolids } from "../solids/index.ts";
import { boxOf, heightOf, widthOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import { endsOf, traySections } from "./tray-sections.ts";

/** A cross-section of the bare tray in the report: where it is taken, how wide and high it is, where its parts end. */
export interface ReportSection {
  readonly letter: string;
  readonly xMm: number;
  readonly widthMm: number;
  /** From the lowest to the highest point of foam and metal. */
  readonly heightMm: number;
  readonly lowestZMm: number;
  /** Both ends of every loop of every part, the lowest point there, from left to right. */
  readonly ends: readonly { readonly partId: string; readonly yMm: number; readonly zMm: number }[];
}

/** The sections that the book draws. */
export const reportSections = (design: Design): readonly ReportSection[] =>
  traySections(traySolids(design)).map(({ station, parts }) => {
    const box = boxOf(parts.flatMap(({ loops }) => loops.flat()));
    const ends = parts.flatMap(({ partId, loops }) =>
      loops.flatMap(endsOf).map(({ y, z }) => ({ partId, yMm: y, zMm: z })),
    );
    return {
      ...station,
      widthMm: widthOf(box),
      heightMm: heightOf(box),
      lowestZMm: box.bottom,
      ends: ends.sort((a, b) => a.yMm - b.yMm),
    };
  });
