import type { Problem } from "../foundation/index.ts";
import type { FlatEdge, Part } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";
import type { StockBox } from "./choose-cuts.ts";
import { type DivideSettings, divideIsland } from "./divide-island.ts";
import { divideIntoPlanks } from "./divide-planks.ts";
import { divideAlongRulings } from "./divide-transition.ts";
import { groupIslands, type Island } from "./group-islands.ts";
import { atLeastZero } from "./kerf-outside.ts";
import { boundsOfLoops } from "./loop-measures.ts";
import { mirrorIsland } from "./mirror-island.ts";
import { divideByOwnCuts, ownCutsOf } from "./own-cuts.ts";
import { scarfLengthMm } from "./scarfs.ts";
import { fitsStock, type UsableStock } from "./usable-stock.ts";

/** More pieces than this of one part mean that the stock was typed wrongly. */
const MOST_PIECES = 100;

/** What of a project the strips of a part follow from, besides the part. */
export const CUTTING_GROUND = ["symmetry", "cutting", "stock"] as const;
export type CuttingGround = Pick<Project, (typeof CUTTING_GROUND)[number]>;

/** The sheets that a part may be cut from, and how far outside its edges it is cut. */
export interface StockSettings {
  readonly stock: readonly UsableStock[];
  readonly outwardMm: (edge: FlatEdge) => number;
}

export interface Divided {
  readonly pieces: readonly Island[];
  readonly problems: readonly Problem[];
}

/** A part in planks, where the builder cuts it, and as the stock asks; undivided where it fits no stock. */
export function dividePart(
  part: Part,
  { project, stock, outwardMm: plainMm }: StockSettings & { readonly project: CuttingGround },
): Divided {
  const scarfMm = scarfLengthMm(part, project);
  const outwardMm = (edge: FlatEdge) => plainMm(edge) + (edge.role === "seam" ? scarfMm / 2 : 0);
  const own = divideByOwnCuts(
    divideIntoPlanks(islandsOf(part), part).map((island) => orient(island, part)),
    part,
    part.kind === "transition" ? [] : ownCutsOf(part.sheetId, project),
  );
  const islands = own.pieces.map((island) => orient(island, part));
  const place = { itemId: part.itemId, partId: part.id };
  const problems: Problem[] = [...own.problems];
  if (stock.length === 0) {
    const { thicknessMm, name } = part;
    problems.push({ kind: "no-stock-for-part", place, name, thicknessMm });
    return { pieces: islands, problems };
  }
  const pieces = islands.flatMap((island): readonly Island[] => {
    if (fitsStock(island, stock, outwardMm)) return [island];
    const divided =
      part.kind === "transition"
        ? divideAlongRulings(island, part, (piece) => fitsStock(piece, stock, outwardMm))
        : divideToFit(orient(island, part), part, { project, stock, outwardMm });
    if (divided !== undefined && part.kind === "transition") return divided;
    if (divided !== undefined) return divided.map((piece) => orient(piece, part));
    problems.push({
      kind: "part-does-not-fit-stock",
      place,
      name: part.name,
      stripWidthMm: shorterSideMm(island),
      stockWidthMm: Math.max(...stock.map(({ lengthMm, widthMm }) => Math.min(lengthMm, widthMm))),
    });
    return [island];
  });
  return { pieces, problems };
}

/** A part whose loops enclose nothing is still delivered, as it is. */
function islandsOf({ loops }: Part): readonly Island[] {
  const islands = groupIslands(loops);
  return islands.length === 0 && loops.length > 0 ? [loops] : islands;
}

/** The left-hand image is worked on as if it were the right-hand one, so that both are divided alike. */
const orient = (island: Island, part: Part): Island => (part.hand === "left" ? mirrorIsland(island) : island);

function shorterSideMm(island: Island): number {
  const { leastUMm, mostUMm, leastVMm, mostVMm } = boundsOfLoops(island);
  return Math.min(mostUMm - leastUMm, mostVMm - leastVMm);
}

/** Divides with the plain allowance on every side, and with more of it where sharp corners reach farther out. */
function divideToFit(
  island: Island,
  part: Part,
  { project, stock, outwardMm }: StockSettings & { readonly project: CuttingGround },
): readonly Island[] | undefined {
  const mostMm = island.reduce(
    (most, { edges }) => edges.reduce((best, edge) => Math.max(best, outwardMm(edge)), most),
    outwardMm({ edgeId: "", name: "", role: "seam", points: [] }),
  );
  for (const factor of mostMm > 0 ? [1, 2, 4] : [1]) {
    const boxes = stock.flatMap(({ lengthMm, widthMm }): StockBox[] => {
      const [longMm, shortMm] = [lengthMm - 2 * factor * mostMm, widthMm - 2 * factor * mostMm];
      if (longMm <= 0 || shortMm <= 0) return [];
      return [
        { uMm: longMm, vMm: shortMm },
        { uMm: shortMm, vMm: longMm },
      ];
    });
    if (boxes.length === 0 || isHopeless(island, boxes)) return undefined;
    const pieces = divideIsland(island, settingsFor(island, part, boxes, project));
    if (pieces?.every((piece) => fitsStock(piece, stock, outwardMm))) return pieces;
  }
  return undefined;
}

function isHopeless(island: Island, boxes: readonly StockBox[]): boolean {
  const { leastUMm, mostUMm, leastVMm, mostVMm } = boundsOfLoops(island);
  const areaMm2 = (mostUMm - leastUMm) * (mostVMm - leastVMm);
  return areaMm2 / Math.max(...boxes.map(({ uMm, vMm }) => uMm * vMm)) > MOST_PIECES;
}

function settingsFor(
  island: Island,
  part: Part,
  boxes: readonly StockBox[],
  project: CuttingGround,
): DivideSettings {
  const { leastVMm, mostVMm } = boundsOfLoops(island);
  const hasCentre = part.kind === "section" && part.hand === "whole" && project.symmetry === "mirrored";
  return {
    boxes,
    zones: part.zones,
    staggerMm: atLeastZero(project.cutting.seamStaggerMm),
    ...(hasCentre && { centreVMm: (leastVMm + mostVMm) / 2 }),
  };
}
