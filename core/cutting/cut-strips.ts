import { at, type FlatPoint, type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import { type FlatEdge, loopsAreaMm2, type Part, polygonOfLoop } from "../patterns/index.ts";
import type { Project, Stock } from "../project/index.ts";
import type { StockBox } from "./choose-cuts.ts";
import { cutLinesOf } from "./cut-lines.ts";
import { type DivideSettings, divideIsland } from "./divide-island.ts";
import { divideIntoPlanks, plankBevelAt } from "./divide-planks.ts";
import { divideAlongRulings } from "./divide-transition.ts";
import { groupIslands, type Island } from "./group-islands.ts";
import { foamsNotForHotWire } from "./hot-wire.ts";
import { atLeastZero, kerfOutsideMm } from "./kerf-outside.ts";
import { boundsOfLoops, boundsOfPoints } from "./loop-measures.ts";
import { mirrorIsland } from "./mirror-island.ts";
import { offsetLoops } from "./offset-loops.ts";
import { orderPieces } from "./order-pieces.ts";
import { divideByOwnCuts, ownCutsOf } from "./own-cuts.ts";
import { scarfLengthMm, tapersOf, withScarf, withScarfSpare } from "./scarfs.ts";
import { type NamedPiece, nameSeamEdges, seamsBetween } from "./seams-between.ts";
import { seamsOfTransition } from "./seams-of-transition.ts";
import { slotsOnStrip } from "./slots-on-strip.ts";
import { stripEdges } from "./strip-edges.ts";
import type { Seam, Strip } from "./types.ts";

/** More pieces than this of one part mean that the stock was typed wrongly. */
const MOST_PIECES = 100;

export interface Cutting {
  readonly strips: readonly Strip[];
  readonly seams: readonly Seam[];
  readonly problems: readonly Problem[];
}

/**
 * The strips that are cut from stock, the seams between them, and the lines to cut by. A part that fits a
 * stock sheet of its foam and thickness stays whole; others are divided (see `divideIsland`). A part on the left
 * is divided as the mirror image of the one on the right. Problems: no-stock-for-part and
 * part-does-not-fit-stock; their strips are delivered undivided; foam-not-for-hot-wire, once for each foam; own-cut-cuts-nothing; cut-line-swallows, once for each strip.
 */
export function cutStrips(
  parts: readonly Part[],
  project: CuttingGround & Pick<Project, "materials">,
  memory: Memory = NO_MEMORY,
): Cutting {
  const cuttings = bySheet(parts).map((hands) => {
    const from = [...CUTTING_GROUND.map((field) => project[field]), ...hands];
    return memory.recall(`strips of ${hands[0]?.sheetId}`, from, () => cutHands(hands, project));
  });
  const { strips, seams, problems } = joined(cuttings);
  return { strips, seams, problems: [...foamsNotForHotWire(parts, project), ...problems] };
}

/** What of a project the strips of a part follow from, besides the part. */
const CUTTING_GROUND = ["symmetry", "cutting", "stock"] as const;
type CuttingGround = Pick<Project, (typeof CUTTING_GROUND)[number]>;

const joined = (cuttings: readonly Cutting[]): Cutting => ({
  strips: cuttings.flatMap(({ strips }) => strips),
  seams: cuttings.flatMap(({ seams }) => seams),
  problems: cuttings.flatMap(({ problems }) => problems),
});

/** The parts of each sheet together, in their order: a sheet's hands follow each other. */
function bySheet(parts: readonly Part[]): readonly (readonly Part[])[] {
  const groups: Part[][] = [];
  for (const part of parts) {
    const last = groups.at(-1);
    if (last?.[0]?.sheetId === part.sheetId) last.push(part);
    else groups.push([part]);
  }
  return groups;
}

/** The strips of one sheet's parts, right before left. */
function cutHands(parts: readonly Part[], project: CuttingGround): Cutting {
  const cuttings: Cutting[] = [];
  const divided: DividedPart[] = [];
  for (const part of parts) {
    const settings = { project, stock: usableStock(part, project), outwardMm: allowanceOf(project) };
    const image = divided.find((other) => isImage(part, other.part));
    const own = image === undefined ? dividePart(part, settings) : mirrorDivision(image, part);
    divided.push({ part, ...own });
    cuttings.push(nameStrips(part, own, settings));
  }
  return joined(cuttings);
}

function nameStrips(
  part: Part,
  { pieces, problems }: Divided,
  settings: StockSettings & { readonly project: CuttingGround },
): Cutting {
  const ordered = orderPieces(pieces, part.hand);
  const named = ordered.map(
    (loops, i): NamedPiece => ({
      id: ordered.length === 1 ? part.id : `${part.id}-${letters(i)}`,
      loops,
    }),
  );
  const cutAll = (cut: readonly NamedPiece[], seams: readonly Seam[]): Cutting => {
    const made = cut.map((piece) => stripOf(piece, { part, seams }, settings));
    return {
      strips: made.map(({ strip }) => strip),
      seams,
      problems: [...problems, ...made.flatMap((one) => one.problems)],
    };
  };
  if (part.kind === "transition") {
    const { seams, pieces: joined } = seamsOfTransition(part.id, named);
    return cutAll(joined, seams);
  }
  const scarfMm = scarfLengthMm(part, settings.project);
  const seams = seamsBetween(part.id, named).map((seam): Seam => {
    const bevelRad = seam.runs === "along ruling" ? plankBevelAt(part, seam.atMm) : 0;
    return bevelRad === 0 ? withScarf(seam, scarfMm) : { ...seam, bevelRad };
  });
  return cutAll(withScarfSpare(nameSeamEdges(named, seams), part, scarfMm), seams);
}

interface DividedPart extends Divided {
  readonly part: Part;
}

/** Whether a left part is point for point the mirror image of a right one, so that its division is known. */
function isImage(left: Part, right: Part): boolean {
  if (left.hand !== "left" || right.hand !== "right" || left.sheetId !== right.sheetId) return false;
  return (
    left.loops.length === right.loops.length &&
    left.loops.every(({ edges }, i) => {
      const others = at(right.loops, i).edges.toReversed();
      return edges.length === others.length && edges.every((edge, k) => isEdgeImage(edge, at(others, k)));
    })
  );
}

/** Whether one edge, walked backward, is the image of another about v = 0. */
function isEdgeImage(left: FlatEdge, right: FlatEdge): boolean {
  const last = right.points.length - 1;
  return (
    left.edgeId === right.edgeId &&
    left.points.length === right.points.length &&
    left.points.every(({ u, v }, i) => {
      const other = at(right.points, last - i);
      return u === other.u && v === -other.v;
    })
  );
}

const mirrorDivision = ({ pieces, problems }: DividedPart, part: Part): Divided => ({
  pieces: pieces.map(mirrorIsland),
  problems: problems.map((problem) => ({
    ...problem,
    place: { itemId: part.itemId, partId: part.id },
    name: part.name,
  })),
});

/** A stock sheet with what can be used of it. */
interface UsableStock {
  readonly stockId: string;
  readonly lengthMm: number;
  readonly widthMm: number;
}

interface StockSettings {
  readonly stock: readonly UsableStock[];
  readonly outwardMm: (edge: FlatEdge) => number;
}

function usableStock(part: Part, project: CuttingGround): UsableStock[] {
  const lostMm = 2 * atLeastZero(project.cutting.stockEdgeMm);
  const isRight = ({ foamId, thicknessMm }: Stock) =>
    foamId === part.foamId && Math.abs(thicknessMm - part.thicknessMm) < 1e-6;
  return project.stock
    .filter(isRight)
    .map(({ id, lengthMm, widthMm }) => ({
      stockId: id,
      lengthMm: lengthMm - lostMm,
      widthMm: widthMm - lostMm,
    }))
    .filter(({ lengthMm, widthMm }) => lengthMm > 0 && widthMm > 0);
}

/** How far the line to cut by lies outside an edge: by kerf and blade side, with trim on free edges and its own spare. */
export function allowanceOf({ cutting }: Pick<Project, "cutting">): (edge: FlatEdge) => number {
  const kerfMm = kerfOutsideMm(cutting);
  const trimMm = atLeastZero(cutting.trimMm);
  return (edge) => kerfMm + (edge.role === "free" ? trimMm : 0) + (edge.spareMm ?? 0);
}

interface Divided {
  readonly pieces: readonly Island[];
  readonly problems: readonly Problem[];
}

function dividePart(
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

const fitsStock = (
  island: Island,
  stock: readonly UsableStock[],
  outwardMm: (edge: FlatEdge) => number,
): boolean => stockFor(offsetLoops(island, outwardMm), stock) !== undefined;

/** The smallest stock sheet that the cut lines fit on, in either position. */
function stockFor(
  cutLinesMm: readonly (readonly FlatPoint[])[],
  stock: readonly UsableStock[],
): string | undefined {
  const { leastUMm, mostUMm, leastVMm, mostVMm } = boundsOfPoints(cutLinesMm);
  const longMm = Math.max(mostUMm - leastUMm, mostVMm - leastVMm) - 1e-6;
  const shortMm = Math.min(mostUMm - leastUMm, mostVMm - leastVMm) - 1e-6;
  const fitting = stock.filter(
    ({ lengthMm, widthMm }) =>
      Math.max(lengthMm, widthMm) >= longMm && Math.min(lengthMm, widthMm) >= shortMm,
  );
  const [smallest] = fitting.sort((a, b) => a.lengthMm * a.widthMm - b.lengthMm * b.widthMm);
  return smallest?.stockId;
}

function stripOf(
  { id, loops }: NamedPiece,
  { part, seams }: { readonly part: Part; readonly seams: readonly Seam[] },
  { stock, outwardMm }: StockSettings,
): CutStrip {
  const outlines = loops.map(polygonOfLoop);
  const { linesMm, swallowed } = cutLinesOf(loops, outwardMm);
  const stockId = stockFor(linesMm, stock);
  const tapers = tapersOf(id, loops, seams, part);
  const slots = slotsOnStrip(outlines, part);
  const strip: Strip = {
    id,
    partId: part.id,
    loops,
    outlineMm: at(outlines, 0),
    holesMm: outlines.slice(1),
    cutLinesMm: linesMm,
    edges: stripEdges(loops, part),
    areaMm2: loopsAreaMm2(loops),
    ...(slots.length > 0 && { slots }),
    ...(stockId !== undefined && { stockId }),
    ...(tapers.length > 0 && { tapers }),
  };
  const [edge] = swallowed;
  if (!edge) return { strip, problems: [] };
  const place = { itemId: part.itemId, partId: part.id };
  const allowanceMm = outwardMm(edge);
  return {
    strip,
    problems: [{ kind: "cut-line-swallows", place, name: id, edgeName: edge.name, allowanceMm }],
  };
}

interface CutStrip {
  readonly strip: Strip;
  readonly problems: readonly Problem[];
}

/** 0 → a, 25 → z, 26 → aa. */
function letters(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}
