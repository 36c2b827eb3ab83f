import { allowanceOf, offsetLoops, type Strip } from "../cutting/index.ts";
import { type FlatPoint, formatNumber, roundTo } from "../foundation/index.ts";
import { boardPieces, type Jig } from "../jig/index.ts";
import { faceShiftMm } from "../marking/index.ts";
import { freeAngles, type PackingLoop, type PackingPiece, type SheetSize } from "../packing/index.ts";
import type { Panel, PanelPlan } from "../panels/index.ts";
import type { Part } from "../patterns/index.ts";
import { foamOf, type Project, ribBoardOf, type Stock } from "../project/index.ts";
import { fingerprintOf } from "./fingerprint.ts";
import type { StockGroup } from "./types.ts";

/** What is cut from stock. */
export interface Pieces {
  readonly parts: readonly Part[];
  readonly strips: readonly Strip[];
  /** Fences that are cut from a panel are laid on that, and its foam on a sheet. */
  readonly panels: Pick<PanelPlan, "panels">;
  readonly jig: Jig;
}

/** Outlines are simplified before they are laid; a piece as long as the usable sheet still fits with this to spare. */
const MARGIN_SLACK_MM = 0.2;
const HALF_TURNS = [0, Math.PI];
const QUARTER_TURNS = [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2];

/** A group by its name, and the pieces it has; `gather` makes it ready for laying, which takes a while. */
export interface GroupSketch {
  readonly id: string;
  readonly name: string;
  readonly pieceIds: readonly string[];
  readonly gather: () => StockGroup;
}

/**
 * The strips of every foam and thickness, and the ribs, with the sheets that they are laid on: sheets of no size that
 * fits are in nobody's group. A group without pieces, and one without stock, is left out.
 */
export const gatherGroups = (pieces: Pieces, project: Project): readonly StockGroup[] =>
  sketchGroups(pieces, project).map(({ gather }) => gather());

/** The same groups, not yet made ready. */
export const sketchGroups = (pieces: Pieces, project: Project): readonly GroupSketch[] => [
  ...foamGroups(pieces, project),
  ...boardGroup(pieces.jig, project),
];

/** Foam of one kind and thickness, and what is cut from it. */
interface FoamNeed {
  readonly foamId: string;
  readonly thicknessMm: number;
  readonly strips: Strip[];
  readonly panels: Panel[];
}

function foamGroups(pieces: Pieces, project: Project): readonly GroupSketch[] {
  const byKey = new Map<string, FoamNeed>();
  const needOf = ({ foamId, thicknessMm }: Pick<Stock, "foamId" | "thicknessMm">): FoamNeed => {
    const key = foamKey({ foamId, thicknessMm });
    const need = byKey.get(key) ?? { foamId, thicknessMm, strips: [], panels: [] };
    byKey.set(key, need);
    return need;
  };
  for (const strip of pieces.strips) {
    const part = pieces.parts.find(({ id }) => id === strip.partId);
    if (part !== undefined && part.panel === undefined) needOf(part).strips.push(strip);
  }
  for (const panel of pieces.panels.panels)
    needOf({ foamId: panel.foamId, thicknessMm: panel.foamMm }).panels.push(panel);
  return [...byKey].flatMap(([id, { foamId, thicknessMm, strips, panels }]) => {
    const sheets = project.stock.filter((sheet) => foamKey(sheet) === id);
    const foam = foamOf(project, foamId)?.name ?? foamId;
    const sound = strips.filter(({ outlineMm }) => outlineMm.length > 2);
    return sketchOf(project, {
      id,
      name: `${foam}, ${formatNumber(thicknessMm, 1)} mm`,
      pieceIds: [...sound, ...panels].map((piece) => piece.id),
      pieces: () => [
        ...sound.map((strip) => stripPiece(strip, thicknessMm, project)),
        ...panels.map((panel) => panelPiece(panel, project)),
      ],
      sizes: sheets.map((sheet) => sizeOf(sheet, project)),
      prices: sheets.flatMap(({ id: stockId, priceEach }) =>
        priceEach === undefined ? [] : [{ stockId, priceEach }],
      ),
    });
  });
}

const foamKey = ({ foamId, thicknessMm }: Pick<Stock, "foamId" | "thicknessMm">): string =>
  `${foamId}-${roundTo(thicknessMm, 3)}`;

/** Along the grain, a sheet is taken with its grain along x. */
function sizeOf({ id, lengthMm, widthMm, quantity, grain }: Stock, { laying }: Project): SheetSize {
  const isTurned = laying.rotation === "grain" && grain === "across";
  const [along, across] = isTurned ? [widthMm, lengthMm] : [lengthMm, widthMm];
  return { id, lengthMm: along, widthMm: across, quantity: wholeNumber(quantity) };
}

const wholeNumber = (quantity: number | undefined): number | undefined =>
  quantity === undefined ? undefined : Math.floor(quantity);

/** A strip by its lines to cut by, as wide as the wider of its faces where an edge is bevelled. */
function stripPiece(strip: Strip, thicknessMm: number, project: Project): PackingPiece {
  const allowanceMm = allowanceOf(project);
  const reachMm = (edgeId: string): number => {
    const edge = strip.edges.find((one) => one.edgeId === edgeId);
    const bevels = [...(edge?.bevelRad ?? []), ...(edge?.bevels.map(({ bevelRad }) => bevelRad) ?? [])];
    return Math.max(0, ...bevels.map((bevelRad) => Math.abs(faceShiftMm(thicknessMm, bevelRad))));
  };
  const [outline = [], ...holes] = offsetLoops(
    strip.loops,
    (edge) => allowanceMm(edge) + reachMm(edge.edgeId),
  );
  const loop = outline.map(onSheet);
  const anglesRad = project.laying.rotation === "free" ? freeAngles(loop) : HALF_TURNS;
  return { id: strip.id, outline: loop, holes: holes.map((hole) => hole.map(onSheet)), anglesRad };
}

/** The foam of a panel: a rectangle; it holds no shape by itself, so that its grain does not matter. */
function panelPiece({ id, lengthMm, widthMm }: Panel, { laying }: Project): PackingPiece {
  const outline = [
    { x: 0, y: 0 },
    { x: lengthMm, y: 0 },
    { x: lengthMm, y: widthMm },
    { x: 0, y: widthMm },
  ];
  return { id, outline, holes: [], anglesRad: laying.rotation === "free" ? QUARTER_TURNS : HALF_TURNS };
}

const onSheet = ({ u, v }: FlatPoint): { readonly x: number; readonly y: number } => ({ x: u, y: v });

function boardGroup(jig: Jig, project: Project): readonly GroupSketch[] {
  const board = ribBoardOf(project);
  if (board === undefined) return [];
  const { id: boardId, name, lengthMm, widthMm, quantity, priceEach } = board;
  const sound = boardPieces(jig).filter(({ outlineMm }) => outlineMm.length > 2);
  return sketchOf(project, {
    id: `board-${boardId}`,
    name,
    pieceIds: sound.map((piece) => piece.id),
    pieces: () =>
      sound.map(({ id, outlineMm, holesMm }) => {
        const outline: PackingLoop = outlineMm.map(onSheet);
        return { id, outline, holes: holesMm.map((hole) => hole.map(onSheet)), anglesRad: QUARTER_TURNS };
      }),
    sizes: [{ id: boardId, lengthMm, widthMm, quantity: wholeNumber(quantity) }],
    prices: priceEach === undefined ? [] : [{ stockId: boardId, priceEach }],
  });
}

interface GroupParts extends Pick<StockGroup, "id" | "name" | "prices"> {
  readonly pieceIds: readonly string[];
  readonly pieces: () => readonly PackingPiece[];
  readonly sizes: readonly SheetSize[];
}

function sketchOf({ laying, cutting }: Project, parts: GroupParts): readonly GroupSketch[] {
  const { id, name, pieceIds, pieces, sizes, prices } = parts;
  if (pieceIds.length === 0 || sizes.length === 0) return [];
  const gather = (): StockGroup => {
    const problem = {
      pieces: pieces(),
      stock: { kind: "sheets", sizes } as const,
      clearanceMm: Math.max(laying.clearanceMm, cutting.kerfMm),
      marginMm: Math.max(0, cutting.stockEdgeMm - MARGIN_SLACK_MM),
    };
    return { id, name, problem, prices, fingerprint: fingerprintOf(problem) };
  };
  return [{ id, name, pieceIds, gather }];
}
