import { at, type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import { loopsAreaMm2, type Part, polygonOfLoop } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";
import { cutLinesOf } from "./cut-lines.ts";
import {
  CUTTING_GROUND,
  type CuttingGround,
  type Divided,
  dividePart,
  type StockSettings,
} from "./divide-part.ts";
import { plankBevelAt } from "./divide-planks.ts";
import { foamsNotForHotWire } from "./hot-wire.ts";
import { isImage } from "./image-parts.ts";
import { allowanceOf } from "./kerf-outside.ts";
import { mirrorIsland } from "./mirror-island.ts";
import { orderPieces } from "./order-pieces.ts";
import { scarfLengthMm, tapersOf, withScarf, withScarfSpare } from "./scarfs.ts";
import { type NamedPiece, nameSeamEdges, seamsBetween } from "./seams-between.ts";
import { seamsOfTransition } from "./seams-of-transition.ts";
import { slotsOnStrip } from "./slots-on-strip.ts";
import { stripEdges } from "./strip-edges.ts";
import type { Seam, Strip } from "./types.ts";
import { stockFor, usableStock } from "./usable-stock.ts";

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

const mirrorDivision = ({ pieces, problems }: DividedPart, part: Part): Divided => ({
  pieces: pieces.map(mirrorIsland),
  problems: problems.map((problem) => ({
    ...problem,
    place: { itemId: part.itemId, partId: part.id },
    name: part.name,
  })),
});

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
