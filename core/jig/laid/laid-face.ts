import type { RunPast } from "../../cutting/index.ts";
import type { Part } from "../../patterns/index.ts";
import { faceOver, facePast, type LyingSheet } from "../../surfaces/index.ts";
import { facetedFace } from "./faceted-face.ts";
import type { OverBend } from "./find-over-bend.ts";
import { overBentFace } from "./over-bent-line.ts";

/** How the foam lies on the jig where that is not as drawn. */
export interface Laid {
  /** What runs past edges, over ribs of its own. */
  readonly pasts: readonly RunPast[];
  /** Parts whose planks are flat. */
  readonly planked: readonly Part[];
  /** Bent too far, so that what is given back leaves the drawn shape. */
  readonly overBend?: OverBend;
}

/** Foam that lies as it is drawn. */
export const AS_DRAWN: Laid = { pasts: [], planked: [] };

type Face = ReturnType<typeof faceOver>;

/** A face of a sheet as its foam lies on the jig: flat over planks, straight on past bent edges, bent too far. */
export function laidFace(sheet: LyingSheet, depthMm: number, laid: Laid): Face {
  const own = laid.pasts.filter(({ sheetId }) => sheetId === sheet.id);
  const over = drawnFoamFace(sheet, depthMm, laid);
  if (sheet.kind !== "section" || own.length === 0) return over;
  const beyond = own.map((past) => facePast(sheet, depthMm, past));
  const line = laid.overBend?.lines.get(sheet.id);
  const bent = line ? beyond.map((face) => overBentFace(sheet, line, depthMm, face)) : beyond;
  return (p) => {
    const drawn = over(p);
    if (drawn) return drawn;
    for (const face of bent) {
      const spot = face(p);
      if (spot) return spot;
    }
    return undefined;
  };
}

/** The same up to the edges that are drawn. */
export function drawnFoamFace(sheet: LyingSheet, depthMm: number, { planked, overBend }: Laid): Face {
  const drawn = faceOver(sheet, depthMm);
  if (sheet.kind !== "section") return drawn;
  const part = planked.find(({ sheetId }) => sheetId === sheet.id);
  const faceted = part ? facetedFace(sheet, part, depthMm, drawn) : drawn;
  const line = overBend?.lines.get(sheet.id);
  return line ? overBentFace(sheet, line, depthMm, faceted) : faceted;
}

/** How the foam of a tray lies: with what runs past its edges, its planks, and bent too far where that is wanted. */
export function laidFoam(parts: readonly Part[], pasts: readonly RunPast[], overBend?: OverBend): Laid {
  const isPlanked = ({ kind, zones }: Part) =>
    kind === "section" && zones.some(({ verdict }) => verdict === "planks");
  return { pasts, planked: parts.filter(isPlanked), ...(overBend && { overBend }) };
}
