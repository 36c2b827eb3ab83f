import { backPiece, needsBack } from "./back-piece.ts";
import type { Design } from "./design.ts";
import type { Piece } from "./piece.ts";
import { platePiece } from "./plate-piece.ts";
import { ribGroups, ribPiece } from "./rib-piece.ts";
import { stripPiece } from "./strip-piece.ts";

/** Every strip, every plate, and one rib of each outline whose top is not one straight line. */
export function templatePieces(design: Design): readonly Piece[] {
  const strips = design.strips.flatMap((strip) => {
    const part = design.parts.find((candidate) => candidate.id === strip.partId);
    if (part === undefined) return [];
    const front = stripPiece(design, strip, part);
    return needsBack(design, strip, part) ? [front, backPiece(design, strip, part)] : [front];
  });
  const plates = design.plates.flatMap((plate) => plate.parts.map((part) => platePiece(plate, part)));
  return [...strips, ...plates, ...templateRibs(design).map((group) => ribPiece(group))];
}

/** One rib of each outline whose top is not one straight line. */
export const templateRibs = (design: Design) => ribGroups(design).filter((group) => !group.rib.straightTop);
