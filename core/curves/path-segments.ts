import { assert, at, COINCIDENT_POINTS_MM, distance2, type Vec2 } from "../foundation/index.ts";
import { endOfPiece, startOfPiece } from "./pieces.ts";
import type { Path, PathElement } from "./types.ts";

/** What joins two elements of a path: from the end of one straight or curved to the start of the next. */
export interface PathSegment {
  readonly kind: "line" | "curve";
  /** The id of the element that the segment leaves. */
  readonly edgeId: string;
  readonly fromElement: PathElement;
  readonly toElement: PathElement;
  readonly from: Vec2;
  readonly to: Vec2;
  /** Straight distance between its ends. */
  readonly chordMm: number;
}

/**
 * The segment that leaves each element of a path, by the element's index. `undefined` where nothing leaves: the
 * last element of an open path, and a stretch whose end is already the start of the next stretch.
 */
export function segmentsOf(path: Path): (PathSegment | undefined)[] {
  return path.elements.map((fromElement, i) => {
    const toElement = elementAfter(path, i);
    if (toElement === undefined) return undefined;
    const from = endOfElement(fromElement);
    const to = startOfElement(toElement);
    const chordMm = distance2(from, to);
    const meet = fromElement.kind === "stretch" && toElement.kind === "stretch";
    if (meet && chordMm < COINCIDENT_POINTS_MM) return undefined;
    return { kind: fromElement.next, edgeId: fromElement.id, fromElement, toElement, from, to, chordMm };
  });
}

/** The index of the element before one, around the loop of a closed path. */
export function indexBefore(path: Path, index: number): number | undefined {
  if (index > 0) return index - 1;
  return path.closed ? path.elements.length - 1 : undefined;
}

function elementAfter(path: Path, index: number): PathElement | undefined {
  if (index + 1 < path.elements.length) return path.elements[index + 1];
  return path.closed ? path.elements[0] : undefined;
}

function startOfElement(element: PathElement): Vec2 {
  return element.kind === "node" ? element.at : startOfPiece(at(element.pieces, 0));
}

function endOfElement(element: PathElement): Vec2 {
  assert(element.kind === "node" || element.pieces.length > 0, "a stretch has pieces");
  return element.kind === "node" ? element.at : endOfPiece(at(element.pieces, -1));
}
