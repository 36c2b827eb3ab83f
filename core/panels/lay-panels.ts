import { allowanceOf, offsetLoops, type Strip } from "../cutting/index.ts";
import { type PackingPiece, type PackingProblem, packWithin, type SheetSize } from "../packing/index.ts";
import type { Part } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";
import { PANEL_EDGE_MM } from "../surfaces/index.ts";
import type { PanelGroup } from "./group-fences.ts";
import type { PanelPiece } from "./types.ts";

/** A panel with its pieces; x along its length, from its own corner. */
export interface LaidPanel {
  readonly stockId: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly pieces: readonly PanelPiece[];
}

/** Room between two pieces for the saw and a straight sanding block (common practice), mm. */
const SAW_MM = 6;
const SEED = 1;
/** Fences are few and slim: a short run lays them, the same each time. */
const SWEEPS = 24;
/** End for end only: the warp of the cloth keeps its way along the fence. */
const HALF_TURNS = [0, Math.PI];

/**
 * The pieces of a group on as few panels as the foam in stock gives, none with a larger face than can be laid in one go
 * (`mostMm2`) unless a piece alone needs it.
 */
export function layPanels(group: PanelGroup, mostMm2: number, project: Project): readonly LaidPanel[] {
  const pieces = group.pieces.map(({ part, strip }) => pieceOf(part, strip, project));
  const needed = {
    longMm: Math.max(...pieces.map(({ outline }) => spanOf(outline.map(({ x }) => x)))) + AROUND_MM,
    shortMm: Math.max(...pieces.map(({ outline }) => spanOf(outline.map(({ y }) => y)))) + AROUND_MM,
  };
  const problem: PackingProblem = {
    pieces,
    stock: { kind: "sheets", sizes: sizesFor(group, { ...needed, mostMm2 }, project) },
    clearanceMm: Math.max(SAW_MM, project.laying.clearanceMm, project.cutting.kerfMm),
    marginMm: PANEL_EDGE_MM,
  };
  const layout = packWithin(problem, SEED, { kind: "sweeps", sweeps: SWEEPS });
  if (layout === undefined) return [];
  return layout.sheets.map(({ sizeId }, sheet) => {
    const placed = layout.placements
      .filter((one) => one.sheet === sheet)
      .flatMap(({ pieceId, angleRad, x, y }) => {
        const piece = pieces.find(({ id }) => id === pieceId);
        const own = group.pieces.find(({ strip }) => strip.id === pieceId);
        return piece && own ? [{ piece, partId: own.part.id, angleRad, x, y }] : [];
      });
    return trimmed(sizeId ?? "", placed.map(laidPiece));
  });
}

interface PlacedPiece {
  readonly piece: PackingPiece;
  readonly partId: string;
  readonly angleRad: number;
  readonly x: number;
  readonly y: number;
}

function laidPiece({ piece, partId, angleRad, x, y }: PlacedPiece): PanelPiece {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const linesMm = [piece.outline, ...piece.holes].map((loop) =>
    loop.map((p) => ({ x: p.x * cos - p.y * sin + x, y: p.x * sin + p.y * cos + y })),
  );
  return { stripId: piece.id, partId, angleRad, x, y, linesMm };
}

/** A panel no larger than its pieces and its edges need, in whole millimetres. */
function trimmed(stockId: string, pieces: readonly PanelPiece[]): LaidPanel {
  const points = pieces.flatMap(({ linesMm }) => linesMm.flat());
  const least = (of: "x" | "y") => points.reduce((low, point) => Math.min(low, point[of]), Infinity);
  const [dx, dy] = [PANEL_EDGE_MM - least("x"), PANEL_EDGE_MM - least("y")];
  const most = (of: "x" | "y") => points.reduce((high, point) => Math.max(high, point[of]), -Infinity);
  return {
    stockId,
    lengthMm: Math.ceil(most("x") + dx + PANEL_EDGE_MM - 1e-6),
    widthMm: Math.ceil(most("y") + dy + PANEL_EDGE_MM - 1e-6),
    pieces: pieces.map((piece) => ({
      ...piece,
      x: piece.x + dx,
      y: piece.y + dy,
      linesMm: piece.linesMm.map((loop) => loop.map(({ x, y }) => ({ x: x + dx, y: y + dy }))),
    })),
  };
}

/** A strip by its lines to saw by, as wide as the wider of its faces where an edge is bevelled. */
function pieceOf({ thicknessMm }: Part, strip: Strip, project: Project): PackingPiece {
  const allowanceMm = allowanceOf(project);
  const reachMm = (edgeId: string) => {
    const edge = strip.edges.find((one) => one.edgeId === edgeId);
    const bevels = [...(edge?.bevelRad ?? []), ...(edge?.bevels.map(({ bevelRad }) => bevelRad) ?? [])];
    return Math.max(0, ...bevels.map((bevelRad) => (thicknessMm / 2) * Math.tan(Math.abs(bevelRad))));
  };
  const [outline = [], ...holes] = offsetLoops(
    strip.loops,
    (edge) => allowanceMm(edge) + reachMm(edge.edgeId),
  );
  const onPanel = ({ u, v }: { readonly u: number; readonly v: number }) => ({ x: u, y: v });
  return {
    id: strip.id,
    outline: outline.map(onPanel),
    holes: holes.map((hole) => hole.map(onPanel)),
    anglesRad: HALF_TURNS,
  };
}

/** What the largest panel may be, and what its largest piece needs with its edges. */
interface PanelLimits {
  readonly longMm: number;
  readonly shortMm: number;
  readonly mostMm2: number;
}

/** What each foam sheet gives, its longer side along the panel; where that is more than one go of laying, a narrower one. */
function sizesFor(
  { foamId, make }: PanelGroup,
  needed: PanelLimits,
  { stock, cutting }: Project,
): readonly SheetSize[] {
  const lostMm = 2 * Math.max(0, cutting.stockEdgeMm);
  return stock
    .filter((one) => one.foamId === foamId && Math.abs(one.thicknessMm - make.foamMm) < 1e-6)
    .map(({ id, lengthMm, widthMm }): SheetSize => {
      const longMm = Math.max(lengthMm, widthMm) - lostMm;
      const shortMm = Math.min(lengthMm, widthMm) - lostMm;
      if (longMm * shortMm <= needed.mostMm2)
        return { id, lengthMm: longMm, widthMm: shortMm, quantity: undefined };
      const alongMm = Math.min(longMm, needed.longMm);
      const acrossMm = Math.min(shortMm, Math.max(needed.shortMm, needed.mostMm2 / alongMm));
      return { id, lengthMm: alongMm, widthMm: acrossMm, quantity: undefined };
    });
}

/** What lies beside a piece on its panel; the packing works to a hair. */
const AROUND_MM = 2 * PANEL_EDGE_MM + 0.2;

const spanOf = (values: readonly number[]): number =>
  values.reduce((a, b) => Math.max(a, b), -Infinity) - values.reduce((a, b) => Math.min(a, b), Infinity);
