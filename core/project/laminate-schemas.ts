import * as v from "valibot";
import { Id, Name, Typed } from "./typed-fields.ts";

/** One layer of cloth: which, and how its warp lies to the forward line. */
export const PlySchema = v.strictObject({ clothId: Id, warpRad: Typed });

/** A coupon that the builder laid and weighed: `film` or glass under it shows what plies hold, `foam` what it drinks. */
export const CouponSchema = v.strictObject({
  on: v.picklist(["film", "foam"]),
  clothId: Id,
  plies: Typed,
  lengthMm: Typed,
  widthMm: Typed,
  /** Cloth and what it lies on, without resin; and the same when it has cured and the peel ply is off. */
  dryKg: Typed,
  curedKg: Typed,
});

/** How a free edge is finished: rounded and wrapped, chamfered to a flange of solid laminate, let in, or trimmed and sealed. */
export const EdgeFinishSchema = v.picklist(["wrapped", "flange", "insert", "trimmed"]);

/** Where a zone of reinforcement lies: round or square about a place in plan, or a band along an edge of an item. */
export const ZoneShapeSchema = v.variant("kind", [
  v.strictObject({ kind: v.literal("spot"), x: Typed, y: Typed, radiusMm: Typed }),
  v.strictObject({
    kind: v.literal("rectangle"),
    x: Typed,
    y: Typed,
    lengthMm: Typed,
    widthMm: Typed,
    /** Its length from the forward line; along it where absent. */
    turnRad: v.optional(Typed),
  }),
  v.strictObject({ kind: v.literal("band"), itemId: Id, edgeId: Id, widthMm: Typed }),
]);

/** Further plies on a part of a face: at a mount, under a skid, along an edge. Each is smaller than the one below by the step. */
export const ZoneSchema = v.strictObject({
  id: Id,
  name: Name,
  face: v.picklist(["lower", "upper"]),
  shape: ZoneShapeSchema,
  clothId: Id,
  warpRad: Typed,
  plies: Typed,
  /** On every side, of a band on its inner one. */
  stepMm: v.optional(Typed),
});

/** The plies of each face from the foam outward, and how they are laid; what is absent is at its default (`laminateOf`). */
export const LaminateSchema = v.strictObject({
  lower: v.optional(v.array(PlySchema)),
  upper: v.optional(v.array(PlySchema)),
  zones: v.optional(v.array(ZoneSchema)),
  resinId: v.optional(Id),
  /** Share of fibre in the mass of the laminate: of a weighed coupon, else the usual for hand lay-up. */
  fibreMassShare: v.optional(Typed),
  /** Lost in cups, brushes and rollers, as a share of what is mixed. */
  wasteShare: v.optional(Typed),
  /** What bare foam takes before the first ply. */
  preWetKgPerM2: v.optional(Typed),
  /** What peel ply takes from the last ply; 0 where none is laid. */
  peelPlyKgPerM2: v.optional(Typed),
  /** No more is mixed in one pot. */
  potKg: v.optional(Typed),
  /** Hardener to 100 parts of resin by mass, from the supplier's sheet; no card can be written without it. */
  hardenerPer100: v.optional(Typed),
  /** Pigment to the mass of the mix. */
  pigmentShare: v.optional(Typed),
  /** In the shop while it is laid, and below what the resin is not to be used. */
  shopCelsius: v.optional(Typed),
  leastCelsius: v.optional(Typed),
  hands: v.optional(Typed),
  /** Relative humidity of the air in the shop. */
  humidityShare: v.optional(Typed),
  /** Weighed: what they show takes the place of the typed share of fibre and pre-wet. */
  coupons: v.optional(v.array(CouponSchema)),
  /** Of a roll of cloth, lost on each side. */
  selvedgeMm: v.optional(Typed),
  /** How far one piece of cloth laps over the next. */
  overlapMm: v.optional(Typed),
  /** The longest piece of cloth that is carried and laid in one. */
  longestPatchMm: v.optional(Typed),
  /** How far the hands reach in from the edge of the tray. */
  reachMm: v.optional(Typed),
  /** Radius of the fillet in inside corners; none where it is 0. */
  filletMm: v.optional(Typed),
  /** Of all free edges; those listed have one of their own (an edge by the id of the element that it leaves). */
  edgeFinish: v.optional(EdgeFinishSchema),
  edgeFinishes: v.optional(v.array(v.strictObject({ itemId: Id, edgeId: Id, finish: EdgeFinishSchema }))),
  /** Width of solid laminate along an edge with a flange. */
  flangeMm: v.optional(Typed),
  /** The foam behind a flange is chamfered over so many times its thickness. */
  chamferRun: v.optional(Typed),
  /** Width of the strip that is glued along an edge in place of foam, and its density. */
  insertMm: v.optional(Typed),
  insertKgPerM3: v.optional(Typed),
});
