import { type Curve, flattenPiece, pointOnPiece } from "../../core/curves/index.ts";
import type { Part } from "../../core/patterns/index.ts";
import { type Project, resolveLines } from "../../core/project/index.ts";
import { type Bounds, boundsOf, type Spot } from "./scale.ts";

/** A drawn line in plan as points, for a picture of the whole tray. */
export interface PlanOutline {
  readonly spots: readonly Spot[];
  readonly closed: boolean;
}

/** Fine enough for a picture of a whole tray. */
const PICTURE_LIMITS = { chordErrorMm: 0.5, turnRad: 0.2 };

/** Outlines of sections and lines of fences in plan as they are drawn, by item id; those that compile. */
export function planOutlines(project: Project): ReadonlyMap<string, PlanOutline> {
  const lines = Object.entries(resolveLines(project).plan);
  return new Map(lines.map(([itemId, curve]) => [itemId, outlineOf(curve)]));
}

/** The outlines of a part in plan, on its own hand; both halves where it lies across the centre line. */
export function outlinesOfPart(
  part: Pick<Part, "itemId" | "hand">,
  outlines: ReadonlyMap<string, PlanOutline>,
  symmetry: Project["symmetry"],
): readonly PlanOutline[] {
  const drawn = outlines.get(part.itemId);
  if (drawn === undefined) return [];
  if (part.hand === "right") return [drawn];
  if (part.hand === "left") return [mirrored(drawn)];
  return symmetry === "mirrored" ? [drawn, mirrored(drawn)] : [drawn];
}

/** The box around the whole tray in plan, both hands; undefined while nothing is drawn. */
export function planBounds(
  outlines: ReadonlyMap<string, PlanOutline>,
  symmetry: Project["symmetry"],
): Bounds | undefined {
  const drawn = [...outlines.values()];
  const all = symmetry === "mirrored" ? [...drawn, ...drawn.map(mirrored)] : drawn;
  return boundsOf(all.flatMap(({ spots }) => spots));
}

function outlineOf(curve: Curve): PlanOutline {
  const spots = curve.pieces.flatMap((piece) =>
    flattenPiece(piece, PICTURE_LIMITS)
      .slice(1)
      .map((t): Spot => pointOnPiece(piece, t)),
  );
  const [first] = curve.pieces;
  return { spots: first && !curve.closed ? [pointOnPiece(first, 0), ...spots] : spots, closed: curve.closed };
}

const mirrored = ({ spots, closed }: PlanOutline): PlanOutline => ({
  spots: spots.map(([x, y]): Spot => [x, -y]),
  closed,
});
