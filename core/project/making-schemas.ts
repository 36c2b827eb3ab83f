import * as v from "valibot";
import { Typed } from "./typed-fields.ts";

/** How the ribs and the board under them are made; what is absent has the default of `makingOf`. */
export const MakingSchema = v.strictObject({
  /** By how much a half-lap slot is wider than the board that goes into it. */
  slotClearanceMm: v.exactOptional(Typed),
  /** How a rib stands on the baseboard. */
  foot: v.exactOptional(v.picklist(["straight", "feet", "tabs"])),
  /** Holes to reach through and to save weight; none at 0. */
  holeMm: v.exactOptional(Typed),
  /** What joins a rib that is longer than its board. */
  spliceBy: v.exactOptional(v.picklist(["plate", "dovetail"])),
  /** Width of the relief in a rib's top under a glued joint; none at 0. */
  reliefMm: v.exactOptional(Typed),
  /** The fillet between a fence and the sheet over it, which a notch leaves room for. */
  filletMm: v.exactOptional(Typed),
  /** The sheets that the baseboard is made of. */
  baseThicknessMm: v.exactOptional(Typed),
  baseLengthMm: v.exactOptional(Typed),
  baseWidthMm: v.exactOptional(Typed),
  /** Height of the baseboard's upper face in the car's frame; absent where the lowest rib sets it. */
  baseZMm: v.exactOptional(Typed),
  /** The second set of ribs, for the face that was skinned first, with soft padding on them. */
  cradle: v.exactOptional(v.strictObject({ paddingMm: Typed })),
  /** How high the board was measured over its level, at points of the plan. */
  boardHeights: v.exactOptional(v.array(v.strictObject({ x: Typed, y: Typed, heightMm: Typed }))),
});
