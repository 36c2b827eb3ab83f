import * as v from "valibot";
import { Id, Name, Typed } from "./typed-fields.ts";

/** How many there are of a sheet or board, as many as it takes if absent, and what one costs. */
export const ownedFields = {
  quantity: v.exactOptional(Typed),
  priceEach: v.exactOptional(Typed),
};

/** How pieces are laid on stock. */
export const LayingSchema = v.strictObject({
  /** Least distance between the lines to cut by of two pieces. */
  clearanceMm: Typed,
  /** Turned at will; as drawn or end for end; or bent along the grain of the sheet. */
  rotation: v.picklist(["free", "half-turns", "grain"]),
  currency: Name,
});

const Figure = v.pipe(v.number(), v.finite());

/** Where one piece lies: turned about the origin of its pattern, which then comes to x, y of its sheet. */
const LaidPieceSchema = v.strictObject({
  /** A strip or a rib. */
  pieceId: Name,
  sheet: v.pipe(v.number(), v.integer(), v.minValue(0)),
  angleRad: Figure,
  x: Figure,
  y: Figure,
  /** The builder wants it to stay there. */
  locked: v.exactOptional(v.literal(true)),
});

/** A layout that the builder accepted: an input from then on, with the fingerprint of what it was computed from. */
export const AcceptedLayoutSchema = v.strictObject({
  /** The foam and thickness, or the board, that it is for. */
  groupId: Name,
  fingerprint: Name,
  sheets: v.array(v.strictObject({ stockId: Id, lengthMm: Figure, widthMm: Figure })),
  pieces: v.array(LaidPieceSchema),
});
