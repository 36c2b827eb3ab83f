import type { Seam } from "../cutting/index.ts";
import { at, type PlanPoint } from "../foundation/index.ts";
import { type Part, partPlaces, polygonOfLoop } from "../patterns/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { type DepthOf, depthIn } from "./resting-depth.ts";

/** A seam between two strips of one part, as it lies in plan on the resting face. */
export interface SeamLine {
  readonly seamId: string;
  readonly partId: string;
  readonly line: readonly PlanPoint[];
}

/** Points along a seam. */
const STEPS = 24;

/** The seams of all parts that lie on the jig, from their flat patterns back to the plan. */
export const seamLines = (
  seams: readonly Seam[],
  parts: readonly Part[],
  sheets: readonly Sheet[],
  depthOf: DepthOf,
): readonly SeamLine[] =>
  seams.flatMap((seam): SeamLine[] => {
    const part = parts.find(({ id }) => id === seam.partId);
    const sheet = sheets.find(({ id }) => id === part?.sheetId);
    if (part === undefined || sheet === undefined || sheet.kind === "fence") return [];
    const place = partPlaces(sheets, part);
    if (place === undefined) return [];
    const depthMm = depthIn(sheet, depthOf);
    const points = part.loops.flatMap(polygonOfLoop);
    const other = seam.runs === "along ruling" ? ("v" as const) : ("u" as const);
    const values = points.map((p) => p[other]);
    const [least, most] = [Math.min(...values), Math.max(...values)];
    const line = Array.from({ length: STEPS + 1 }, (_, i) => {
      const across = least + ((most - least) * i) / STEPS;
      const flat = other === "v" ? { u: seam.atMm, v: across } : { u: across, v: seam.atMm };
      const { x, y } = place(flat, depthMm);
      return { x, y };
    });
    return [{ seamId: seam.id, partId: part.id, line }];
  });

/** Where a seam crosses a line across (x = const) or along (y = const), as places along that line. */
export function crossingsMm({ line }: SeamLine, runs: "across" | "along", atMm: number): readonly number[] {
  const [other, along] = runs === "across" ? (["x", "y"] as const) : (["y", "x"] as const);
  return line.slice(1).flatMap((to, i) => {
    const from = at(line, i);
    const [a, b] = [from[other] - atMm, to[other] - atMm];
    if (a * b > 0 || a === b) return [];
    return [from[along] + (a / (a - b)) * (to[along] - from[along])];
  });
}
