import * as v from "valibot";
import { Typed } from "./typed-fields.ts";

/** How a stretch of a sheet is brought into its bend. */
export const BendMethodSchema = v.picklist(["bend cold", "closing slots", "opening slots", "planks"]);

/** What the builder chose for one bend in place of what follows from its curvature. */
export const BendChoiceSchema = v.strictObject({
  /** A place inside the bend: of a section the profile's x, of a fence the length along its line. */
  atMm: Typed,
  method: BendMethodSchema,
});

/**
 * A scrap of the foam was bent over rounder and rounder things until it cracked: its thickness, and the radius of the last
 * thing that it went over whole. Takes the place of the least bend ratio.
 */
export const BendTestSchema = v.strictObject({ thicknessMm: Typed, radiusMm: Typed });

/** How bends are made and held, the same for the whole tray. */
export const BendingSchema = v.strictObject({
  /** What the blade that cuts relief slots takes. */
  slotKerfMm: Typed,
  /** The foam left under a slot. */
  slotWebMm: Typed,
  /** Slots on the inside of the bend close; on the outside they open. Holds where a bend has no choice of its own. */
  slotSide: v.picklist(["closing", "opening"]),
  /** Three slots cut on scrap: how deep, and how far they closed together. Corrects the kerf. */
  slotTest: v.exactOptional(v.strictObject({ depthMm: Typed, closedRad: Typed })),
  /** Whether slots are glued when bent. Open slots carry no shear. */
  slotFilling: v.picklist(["glued", "open"]),
  fillingKgPerM3: Typed,
  /** How far straights between slots, and planks, may stand off the curve. */
  sagittaMm: Typed,
  /** Stiffness of the skins, for springback. */
  skinModulusMPa: Typed,
  /** What holds a bent sheet down on the jig. */
  holdBy: v.picklist(["sandbags", "straps", "screws"]),
  sandbagKg: Typed,
  strapN: Typed,
  washerMm: Typed,
  /** What the foam bears under a washer. */
  crushMPa: Typed,
  /** What a pin was tested to hold down; pins locate and count as nothing until then. */
  pinN: Typed,
});
