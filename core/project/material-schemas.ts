import * as v from "valibot";
import { BendTestSchema } from "./bending-schemas.ts";
import { ownedFields } from "./laying-schemas.ts";
import { Id, Name, Typed } from "./typed-fields.ts";

/** Where a default comes from (facts of the trade without a source are common practice). */
export const OriginSchema = v.picklist(["published", "published-weak", "common-practice", "memory", "typed"]);

/** Where each default of a material comes from, by field name. */
const Origins = v.record(v.string(), OriginSchema);

export const FoamSchema = v.strictObject({
  id: Id,
  name: Name,
  densityKgPerM3: Typed,
  /** Least radius of a cold bend at mid-thickness, as a multiple of the thickness. */
  leastBendRatio: Typed,
  /** A test on scrap in place of that ratio. */
  bendTest: v.exactOptional(BendTestSchema),
  /** Compression modulus along the sheet. */
  modulusMPa: Typed,
  mostCelsius: Typed,
  hotWire: v.picklist(["allowed", "never"]),
  /** What it is made of; where absent a foam that may be cut hot counts as polystyrene (`isPolystyrene`). */
  family: v.optional(v.picklist(["polystyrene", "other"])),
  origins: Origins,
});

export const ClothSchema = v.strictObject({
  id: Id,
  name: Name,
  arealKgPerM2: Typed,
  rollWidthMm: Typed,
  origins: Origins,
});

export const ResinSchema = v.strictObject({
  id: Id,
  name: Name,
  potLifeMinutes: Typed,
  filmMinutes: Typed,
  solidHours: Typed,
  densityKgPerM3: Typed,
  /** Epoxy where absent. */
  kind: v.optional(v.picklist(["epoxy", "polyester", "vinyl ester"])),
  origins: Origins,
});

export const GlueSchema = v.strictObject({
  id: Id,
  name: Name,
  openMinutes: Typed,
  clampHours: Typed,
  loadHours: Typed,
  gapLimitMm: Typed,
  spreadKgPerM2: Typed,
  /** Not to be used in a shop that is colder; see `gluingOf` where it is absent. */
  leastCelsius: v.optional(Typed),
  /** Whether the isocyanate caution belongs to it. */
  hazard: v.picklist(["isocyanate", "epoxy"]),
  origins: Origins,
});

export const BoardSchema = v.strictObject({
  id: Id,
  name: Name,
  thicknessMm: Typed,
  lengthMm: Typed,
  widthMm: Typed,
  densityKgPerM3: Typed,
  ...ownedFields,
  origins: Origins,
});

export const MetalSchema = v.strictObject({
  id: Id,
  name: Name,
  densityKgPerM3: Typed,
  /** Where the neutral fibre of a bend lies, from its inside face, as a share of the thickness. */
  kFactor: Typed,
  /** Least inside radius of a bend, as a multiple of the thickness. */
  leastRadiusRatio: Typed,
  origins: Origins,
});

export const StockSchema = v.strictObject({
  id: Id,
  foamId: Id,
  thicknessMm: Typed,
  lengthMm: Typed,
  widthMm: Typed,
  ...ownedFields,
  /** Which way the grain runs; along the length unless it is said. */
  grain: v.exactOptional(v.literal("across")),
});
