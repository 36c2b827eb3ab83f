import type { FlatPoint } from "../foundation/index.ts";
import { developRuled } from "../rulings/index.ts";
import {
  bendLine,
  type FenceSheet,
  fibreOf,
  type SectionSheet,
  type Sheet,
  type TransitionSheet,
} from "../surfaces/index.ts";
import { ruledPlaces } from "./ruled-places.ts";
import type { Part } from "./types.ts";

/** A point of a part's flat pattern on a face of its foam laid flat. */
export type FlatToFace = (flat: FlatPoint) => FlatPoint;

/**
 * A part's pattern as a face of its foam is developed, `awayMm` from the middle of the foam toward the inward normal
 * (of a fence: to the left of its line): outside a bend longer, inside it shorter. Same frame and same view as the
 * pattern's. Along a bend it is exact; a transition that twist divides comes out whole, as its face is once it is glued.
 */
export function faceDevelopment(sheets: readonly Sheet[], part: Part, awayMm: number): FlatToFace {
  const sheet = sheets.find(({ id }) => id === part.sheetId);
  if (sheet === undefined) return (flat) => flat;
  const right = sheet.kind === "transition" ? onRuled(sheet, awayMm) : alongBend(sheet, part, awayMm);
  if (part.hand !== "left") return right;
  return ({ u, v }) => {
    const image = right({ u, v: -v });
    return { u: image.u, v: -image.v };
  };
}

function alongBend(sheet: SectionSheet | FenceSheet, part: Part, awayMm: number): FlatToFace {
  const { middleAt } = fibreOf(sheet, part.stretches);
  const { turnAt } = bendLine(sheet);
  return ({ u, v }) => {
    const middleMm = middleAt(u);
    return { u: middleMm - awayMm * turnAt(middleMm), v };
  };
}

function onRuled(sheet: TransitionSheet, awayMm: number): FlatToFace {
  const placeAt = ruledPlaces(sheet);
  const { flatAt } = developRuled(sheet.chart.surface, sheet.depths.neutralMm + awayMm);
  return (flat) => {
    const { sMm, t, beyond } = placeAt(flat);
    const onSheet = flatAt({ sMm, t });
    if (beyond === 0 || (t > 0 && t < 1)) return onSheet;
    // Set back outward, past the drawn edge: straight on along the ruling.
    const [from, to] = [flatAt({ sMm, t: 0 }), flatAt({ sMm, t: 1 })];
    return {
      u: onSheet.u + beyond * (to.u - from.u),
      v: onSheet.v + beyond * (to.v - from.v),
    };
  };
}
