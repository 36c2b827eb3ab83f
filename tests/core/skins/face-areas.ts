import type { Part } from "../../../core/patterns/index.ts";
import { areaOfRuled } from "../../../core/rulings/index.ts";
import {
  areaInSpace,
  bordersOf,
  type SectionSheet,
  type Sheet,
  type TransitionSheet,
} from "../../../core/surfaces/index.ts";

/** The two faces of a part's foam as cloth is laid on them, mm²; of a fence its two sides. */
export interface FaceAreas {
  readonly lowerMm2: number;
  readonly upperMm2: number;
}

/**
 * The developed faces of a part: on a bend the face inside it is shorter than the middle of the foam, the one outside
 * longer. Set-backs at joints are taken from both alike.
 */
export function faceAreas(part: Part, sheet: Sheet): FaceAreas {
  switch (sheet.kind) {
    case "section":
      return ofSection(part, sheet);
    case "transition":
      return ofTransition(part, sheet);
    case "fence":
      // Around its bends one side is longer by what the other is shorter.
      return { lowerMm2: part.spaceAreaMm2, upperMm2: part.spaceAreaMm2 };
  }
}

/** Farther than any sheet reaches, mm. */
const WHOLE_MM = 1e6;

function ofSection(part: Part, sheet: SectionSheet): FaceAreas {
  const borders = bordersOf(sheet);
  const areaAt = (offsetMm: number) =>
    areaInSpace(sheet, borders, [{ fromMm: -WHOLE_MM, toMm: WHOLE_MM, offsetMm, scale: 1 }]);
  const setBackMm2 = part.spaceAreaMm2 - areaInSpace(sheet, borders, part.stretches ?? []);
  const half = part.thicknessMm / 2;
  return { lowerMm2: areaAt(-half) + setBackMm2, upperMm2: areaAt(half) + setBackMm2 };
}

function ofTransition(part: Part, { chart, depths, strips }: TransitionSheet): FaceAreas {
  const areaAt = (depthMm: number) =>
    strips.reduce((sum, { shares }) => sum + areaOfRuled(chart.surface, depthMm, shares), 0);
  const share = part.spaceAreaMm2 / areaAt(depths.neutralMm);
  return { lowerMm2: share * areaAt(depths.coreLowerMm), upperMm2: share * areaAt(depths.coreUpperMm) };
}
