import { type Curve, type CurvePiece, endOfPiece, mirrorPiece, startOfPiece } from "../curves/index.ts";
import { ON_CENTRE_LINE_MM } from "../foundation/index.ts";
import { edgeNames } from "./edge-names.ts";
import type { EdgeRole } from "./types.ts";

/** One piece of an outline as it is walked: `reversed` walks its parameter from 1 to 0. */
export interface DrawnPiece {
  readonly piece: CurvePiece;
  readonly reversed: boolean;
  readonly edgeId: string;
  readonly name: string;
  readonly role: EdgeRole;
  /** Square to the sheet, its foot on the plan curve; or upright, over the plan curve at every depth. */
  readonly wall: "square" | "upright";
  /** The opening that it belongs to, if to one. */
  readonly openingId?: string;
}

/** The loop of an outline as drawn, counter-clockwise; pieces on the centre line have the role "centre". */
export function drawnLoop(
  outline: Curve,
  typedNames: Readonly<Record<string, string>>,
  isMirrored: boolean,
): readonly DrawnPiece[] {
  const names = edgeNames(outline, typedNames);
  return outline.pieces.map((piece) => ({
    piece,
    reversed: false,
    edgeId: piece.edgeId,
    name: names[piece.edgeId] ?? piece.edgeId,
    role: isMirrored && liesOnCentreLine(piece) ? "centre" : "free",
    wall: "square",
  }));
}

/** Whether a piece runs along y = 0. */
export function liesOnCentreLine(piece: CurvePiece): boolean {
  return (
    piece.kind === "line" &&
    Math.abs(startOfPiece(piece)[1]) <= ON_CENTRE_LINE_MM &&
    Math.abs(endOfPiece(piece)[1]) <= ON_CENTRE_LINE_MM
  );
}

/**
 * The loops of an outline joined to its image: what lies on the centre line falls away, and each run between
 * two such stretches closes with its own image. The run round the outside gives the outline, the others holes.
 * Edges of the left half have the id of the drawn edge with `.left` behind it.
 */
export function joinToImage(loop: readonly DrawnPiece[]): readonly (readonly DrawnPiece[])[] {
  const firstCentre = loop.findIndex((drawn) => drawn.role === "centre");
  if (firstCentre < 0) return [loop];
  const turned = [...loop.slice(firstCentre), ...loop.slice(0, firstCentre)];
  const runs: DrawnPiece[][] = [];
  let run: DrawnPiece[] = [];
  for (const drawn of turned) {
    if (drawn.role !== "centre") {
      run.push(drawn);
    } else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length > 0) runs.push(run);
  return runs.map((half) => [
    ...half.map((drawn) => ({ ...drawn, name: `${drawn.name}, right` })),
    ...half.toReversed().map(imageOf),
  ]);
}

/** The image of a piece across the centre line, walked so that what lay on its left does so still. */
export const imageOf = (drawn: DrawnPiece): DrawnPiece => ({
  piece: mirrorPiece(drawn.piece),
  reversed: !drawn.reversed,
  edgeId: `${drawn.edgeId}.left`,
  name: `${drawn.name}, left`,
  role: drawn.role,
  wall: drawn.wall,
  ...(drawn.openingId !== undefined && { openingId: drawn.openingId }),
});

/** The plan polygon of a loop, from parameters that flatten each piece. */
export function polygonOf(
  loop: readonly DrawnPiece[],
  parameters: (piece: CurvePiece) => readonly number[],
  pointOn: (piece: CurvePiece, t: number) => readonly [number, number],
): readonly { readonly x: number; readonly y: number }[] {
  return loop.flatMap((drawn) => {
    const along = drawn.reversed ? parameters(drawn.piece).toReversed() : parameters(drawn.piece);
    return along.slice(0, -1).map((t) => {
      const [x, y] = pointOn(drawn.piece, t);
      return { x, y };
    });
  });
}

/** Where a drawn piece begins and ends as it is walked. */
export const walkEnds = (drawn: DrawnPiece): readonly [from: number, to: number] =>
  drawn.reversed ? [1, 0] : [0, 1];
