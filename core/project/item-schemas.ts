import * as v from "valibot";
import { BendChoiceSchema } from "./bending-schemas.ts";
import { EdgeRefSchema, PlanLineSchema, SideNodeSchema } from "./line-schemas.ts";
import { FencePanelSchema } from "./panel-schemas.ts";
import { Id, Name, standingFields, Typed } from "./typed-fields.ts";

/** The foam of one sheet; the tray's own if absent. */
export const CoreSchema = v.strictObject({ foamId: Id, thicknessMm: Typed });

export const ProfileSchema = v.strictObject({
  id: Id,
  name: Name,
  nodes: v.array(SideNodeSchema),
  ...standingFields,
});

export const SectionSchema = v.strictObject({
  kind: v.literal("section"),
  id: Id,
  /** The number in the part code: 2 in S2R. */
  number: v.number(),
  name: Name,
  ...standingFields,
  outline: PlanLineSchema,
  profileId: Id,
  /** The line y = pivotYMm where tilt and heading leave the profile where it is; nearest outline edge if absent. */
  pivotYMm: v.exactOptional(Typed),
  /** ψ: the rulings run rearward by tan ψ per unit y. */
  headingRad: Typed,
  /** τ: the rulings rise by tan τ per unit y. */
  tiltRad: Typed,
  /** Methods chosen for single bends, by the profile's x. */
  bends: v.exactOptional(v.array(BendChoiceSchema)),
  core: v.exactOptional(CoreSchema),
});

/** The finished lower edge: heights z(x) above ground, or depths below the sheet along the fence's own length. */
export const LowerEdgeSchema = v.variant("kind", [
  v.strictObject({ kind: v.literal("heights"), nodes: v.array(SideNodeSchema) }),
  v.strictObject({
    kind: v.literal("depths"),
    nodes: v.array(v.strictObject({ id: Id, alongMm: Typed, depthMm: Typed })),
  }),
]);

export const FenceSchema = v.strictObject({
  kind: v.literal("fence"),
  id: Id,
  number: v.number(),
  name: Name,
  ...standingFields,
  /** The fence's mid-plane, square to the ground. */
  line: PlanLineSchema,
  lowerEdge: LowerEdgeSchema,
  seat: v.picklist(["core", "skin"]),
  /** The fence stands in the jig before the sheets (upright jigs only). */
  standsFirst: v.boolean(),
  /** Methods chosen for single bends, by the length along the line. */
  bends: v.exactOptional(v.array(BendChoiceSchema)),
  core: v.exactOptional(CoreSchema),
  /** Cut from a flat panel that is laminated first; skinned in place where absent. */
  panel: v.exactOptional(FencePanelSchema),
});

/** A node of a free edge in space. */
export const SpaceNodeSchema = v.strictObject({
  id: Id,
  x: Typed,
  y: Typed,
  z: Typed,
  /** A tangent arc at this node, between two lines only, in the plane of the two. */
  radiusMm: v.exactOptional(Typed),
  /** How the two segments meet where at least one is a curve. Default: smooth between curves, corner beside a line. */
  meets: v.exactOptional(v.picklist(["smooth", "corner"])),
  next: v.picklist(["line", "curve"]),
  knotSpacingMm: v.exactOptional(Typed),
});

/** One edge of a transition: a stretch of another item's edge, or an edge of its own in space. */
export const TransitionEdgeSchema = v.variant("kind", [
  v.strictObject({ kind: v.literal("stretch"), edge: EdgeRefSchema }),
  v.strictObject({ kind: v.literal("free"), nodes: v.array(SpaceNodeSchema) }),
]);

/**
 * The ruled sheet nearest to developable between two edges. Its outline has the edges `first`, `end`, `second` and
 * `start` and the nodes `first-start`, `first-end`, `second-end`, `second-start`.
 */
export const TransitionSchema = v.strictObject({
  kind: v.literal("transition"),
  id: Id,
  number: v.number(),
  name: Name,
  ...standingFields,
  first: TransitionEdgeSchema,
  second: TransitionEdgeSchema,
  /** What its rulings are chosen for: the least twist unless it is said, or the least strain of the pressed foam. */
  rulings: v.exactOptional(v.picklist(["least twist", "least strain"])),
  /** On which side of the drawn surface the core lies: above it unless it is said. */
  coreSide: v.exactOptional(v.picklist(["above", "below"])),
  core: v.exactOptional(CoreSchema),
});

/** A wing of a plate: sheet metal bent up or down along a straight edge of the base. */
export const WingSchema = v.strictObject({
  id: Id,
  /** The element of the base's outline whose straight segment is the edge that the wing is bent along. */
  edgeId: Id,
  /** Positive bends up, away from the ground. */
  angleRad: Typed,
  insideRadiusMm: Typed,
  /** From the corner where the outer faces meet to the wing's free edge, along its outer face. */
  lengthMm: Typed,
  /** How much later the wing begins and how much earlier it ends than the edge. */
  startInsetMm: Typed,
  endInsetMm: Typed,
  /** How far its ends lean inward off square. */
  startTaperRad: Typed,
  endTaperRad: Typed,
  /** A measured deduction of this bend takes the place of the metal's K factor. */
  deductionMm: v.exactOptional(Typed),
});

/** Folded sheet metal: a flat base whose lower face is drawn, with wings. */
export const PlateSchema = v.strictObject({
  kind: v.literal("plate"),
  id: Id,
  number: v.number(),
  name: Name,
  ...standingFields,
  outline: PlanLineSchema,
  /** Height of the base's lower face above the ground. */
  zMm: Typed,
  metalId: Id,
  thicknessMm: Typed,
  wings: v.array(WingSchema),
  bond: v.strictObject({
    /** The bond line between metal and foam. */
    lineMm: Typed,
    /** How the step against the neighbouring skin is taken up. */
    step: v.picklist(["rebate", "shim", "ramp"]),
  }),
});

export const ItemSchema = v.variant("kind", [SectionSchema, FenceSchema, TransitionSchema, PlateSchema]);

/** A closed loop in plan, on the air side, that is cut out of the tray. */
export const OpeningSchema = v.strictObject({
  id: Id,
  number: v.number(),
  name: Name,
  ...standingFields,
  outline: PlanLineSchema,
  /** Plumb through everything that it crosses, or square to the one sheet that `itemId` names. */
  cut: v.picklist(["upright", "square"]),
  itemId: v.exactOptional(Id),
});
