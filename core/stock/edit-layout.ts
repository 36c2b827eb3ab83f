import type { AcceptedLayout } from "../project/index.ts";

/** What can be changed on a laid piece by hand. */
export interface PieceChange {
  /** By so much along the sheet and across it, mm. */
  readonly by?: readonly [xMm: number, yMm: number];
  readonly sheet?: number;
  /** End for end about a point of the sheet. */
  readonly halfTurnAbout?: { readonly x: number; readonly y: number };
  readonly locked?: boolean;
}

/** Places are kept to this: a thousandth of a millimetre. */
const PLACES = 1000;

/** The layouts with one piece of one of them changed; a piece that is not there changes nothing. */
export function changePiece(
  layouts: readonly AcceptedLayout[],
  groupId: string,
  pieceId: string,
  change: PieceChange,
): readonly AcceptedLayout[] {
  return layouts.map((layout) =>
    layout.groupId === groupId
      ? {
          ...layout,
          pieces: layout.pieces.map((piece) => (piece.pieceId === pieceId ? changed(piece, change) : piece)),
        }
      : layout,
  );
}

type Piece = AcceptedLayout["pieces"][number];

function changed({ locked, ...piece }: Piece, change: PieceChange): Piece {
  const [byX, byY] = change.by ?? [0, 0];
  const about = change.halfTurnAbout;
  const angleRad = about === undefined ? piece.angleRad : (piece.angleRad + Math.PI) % (2 * Math.PI);
  const turned = about === undefined ? piece : { x: 2 * about.x - piece.x, y: 2 * about.y - piece.y };
  const isLocked = change.locked ?? locked ?? false;
  return {
    ...piece,
    sheet: change.sheet ?? piece.sheet,
    angleRad,
    x: Math.round((turned.x + byX) * PLACES) / PLACES,
    y: Math.round((turned.y + byY) * PLACES) / PLACES,
    ...(isLocked ? { locked: true } : {}),
  };
}
