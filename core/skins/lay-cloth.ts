import {
  type PackingLoop,
  type PackingPiece,
  type PackingProblem,
  type Placement,
  packWithin,
} from "../packing/index.ts";
import { laminateOf, type Project } from "../project/index.ts";
import { clothPiece } from "./cloth-pieces.ts";
import type { LaidCloth, LaidClothLength, SkinPlan } from "./types.ts";

/** Seed and length of a run: the same on every machine, a second for a whole tray. */
const SEED = 1;
const SWEEPS = 400;
/** Cloth is rolled out and cut in lengths of so much at most, mm: what a bench holds (common practice). */
const BENCH_MM = 3000;
/** Between two pieces, for the scissors, mm (common practice). */
const SCISSORS_MM = 3;

/**
 * Every patch on the roll of its cloth, its warp along the roll and its outer side up: in lengths that a bench holds, each
 * cut off the roll where its last piece ends. Selvedges stay free. It takes about a second and is the same each time.
 */
export function layCloth(plan: SkinPlan, project: Project): readonly LaidCloth[] {
  const { selvedgeMm, longestPatchMm } = laminateOf(project);
  const patches = plan.faces.flatMap(({ fields }) =>
    fields.flatMap(({ side, patches: own }) => own.map((patch) => ({ patch, side }))),
  );
  return plan.cloths.flatMap(({ clothId, name, areaMm2 }): readonly LaidCloth[] => {
    const widthMm = project.materials.cloths.find(({ id }) => id === clothId)?.rollWidthMm;
    if (widthMm === undefined) return [];
    const pieces = patches
      .filter(({ patch }) => patch.clothId === clothId)
      .map(({ patch, side }) => clothPiece(patch, side));
    const lengthMm = Math.max(BENCH_MM, longestPatchMm + 2 * selvedgeMm);
    const problem = problemOf(pieces, { clothId, lengthMm, widthMm, selvedgeMm });
    const layout = packWithin(problem, SEED, { kind: "sweeps", sweeps: SWEEPS });
    if (layout === undefined) return [];
    const lengths = layout.sheets.map((_, index): LaidClothLength => {
      const laid = layout.placements
        .filter(({ sheet }) => sheet === index)
        .flatMap((placement) => placed(pieces, placement));
      const ends = laid.flatMap(({ linesMm }) => linesMm.flatMap((loop) => loop.map(({ x }) => x)));
      return { lengthMm: Math.max(0, ...ends) + selvedgeMm, pieces: laid };
    });
    const rollMm = lengths.reduce((sum, one) => sum + one.lengthMm, 0);
    return [
      {
        clothId,
        name,
        widthMm,
        rollMm,
        wasteShare: rollMm > 0 ? 1 - areaMm2 / (rollMm * widthMm) : 0,
        lengths,
        unplaced: layout.unplaced.map(({ pieceId }) => pieceId),
      },
    ];
  });
}

interface Roll {
  readonly clothId: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly selvedgeMm: number;
}

const problemOf = (
  pieces: readonly PackingPiece[],
  { clothId, lengthMm, widthMm, selvedgeMm }: Roll,
): PackingProblem => ({
  pieces,
  stock: { kind: "sheets", sizes: [{ id: clothId, lengthMm, widthMm, quantity: undefined }] },
  clearanceMm: Math.min(SCISSORS_MM, 2 * selvedgeMm),
  marginMm: selvedgeMm,
});

function placed(
  pieces: readonly PackingPiece[],
  { pieceId, angleRad, x, y }: Placement,
): LaidClothLength["pieces"] {
  const piece = pieces.find(({ id }) => id === pieceId);
  if (piece === undefined) return [];
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const lay = (loop: PackingLoop): PackingLoop =>
    loop.map((p) => ({ x: p.x * cos - p.y * sin + x, y: p.x * sin + p.y * cos + y }));
  return [{ patchId: pieceId, angleRad, x, y, linesMm: [piece.outline, ...piece.holes].map(lay) }];
}

/** A length of peel ply beside what the faces need: its laps and its trimmed edges (common practice). */
const PEEL_PLY_MORE = 1.1;
/** Peel ply as it is sold, mm (from memory). */
export const PEEL_PLY_WIDTH_MM = 1000;

/** How much peel ply is taken off a roll of a metre's width, mm. */
export const peelPlyMm = ({ peelPlyMm2 }: SkinPlan): number =>
  (PEEL_PLY_MORE * peelPlyMm2) / PEEL_PLY_WIDTH_MM;
