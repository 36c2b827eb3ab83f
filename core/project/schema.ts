import * as v from "valibot";
import { BendChoiceSchema, BendingSchema, type BendMethodSchema, BendTestSchema } from "./bending-schemas.ts";
import { type CouponSchema, type EdgeFinishSchema, LaminateSchema } from "./laminate-schemas.ts";
import { AcceptedLayoutSchema, LayingSchema, ownedFields } from "./laying-schemas.ts";
import { AsBuiltSchema, LieSchema } from "./lie-schemas.ts";
import { MakingSchema } from "./making-schemas.ts";
import { FencePanelSchema } from "./panel-schemas.ts";
import { PaperSchema } from "./paper-schemas.ts";
import { type LineRefSchema, NoteSchema, UnderlaySchema } from "./remark-schemas.ts";
import { Id, Name, standingFields, Typed } from "./typed-fields.ts";
import { WorkingTimeSchema } from "./working-time-schema.ts";

/**
 * The project document, version 6: only what the builder gave. Lengths in mm, angles in rad, masses in kg.
 * Numbers are taken as typed, however odd; `checkDocument` turns odd ones into problems that name them, so that
 * the rest of the tray still computes.
 */
export const CURRENT_VERSION = 6;

/** Where a default comes from (facts of the trade without a source are common practice). */
export const OriginSchema = v.picklist(["published", "published-weak", "common-practice", "memory", "typed"]);

const nodeFields = {
  kind: v.literal("node"),
  id: Id,
  /** A tangent arc at this node, between two lines only. */
  radiusMm: v.exactOptional(Typed),
  /** How the two segments meet where at least one is a curve. Default: smooth between curves, corner beside a line. */
  meets: v.exactOptional(v.picklist(["smooth", "corner"])),
  /** Typed direction of travel at the end of the curve that arrives; rad from the first axis toward the second. */
  tangentInRad: v.exactOptional(Typed),
  /** Typed direction of travel at the start of the curve that leaves. */
  tangentOutRad: v.exactOptional(Typed),
  /** The segment that leaves this node. */
  next: v.picklist(["line", "curve"]),
  /** Knot spacing of the curve segment that leaves; its chord length if absent. Set when a curve is split. */
  knotSpacingMm: v.exactOptional(Typed),
  /** The builder's name for the edge that leaves. */
  edgeName: v.exactOptional(Name),
};

/** A node of a line in plan. */
export const PlanNodeSchema = v.strictObject({ ...nodeFields, x: Typed, y: Typed });
/** A node of a profile or of a lower edge in the side view. */
export const SideNodeSchema = v.strictObject({ ...nodeFields, x: Typed, z: Typed });

/** A stretch of another item's edge, from → to in that outline's own direction; `hand` names the image. */
export const EdgeRefSchema = v.strictObject({
  itemId: Id,
  fromNodeId: Id,
  toNodeId: Id,
  hand: v.picklist(["right", "left"]),
});

/** A piece of a line that follows another item's edge instead of having nodes of its own. */
export const FollowSchema = v.strictObject({
  kind: v.literal("follow"),
  id: Id,
  edge: EdgeRefSchema,
  /** Whether this line runs the referenced stretch from → to ("along") or to → from ("against"). */
  direction: v.picklist(["along", "against"]),
  /** The segment that leaves the end of the followed stretch. */
  next: v.picklist(["line", "curve"]),
  edgeName: v.exactOptional(Name),
});

const PlanElementSchema = v.variant("kind", [PlanNodeSchema, FollowSchema]);

/** A line in plan: an outline if closed, a fence line if not. */
export const PlanLineSchema = v.strictObject({
  closed: v.boolean(),
  elements: v.array(PlanElementSchema),
});

/** The foam of one sheet; the tray's own if absent. */
const CoreSchema = v.strictObject({ foamId: Id, thicknessMm: Typed });

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
const LowerEdgeSchema = v.variant("kind", [
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
const TransitionEdgeSchema = v.variant("kind", [
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

/** One edge of one item. */
const ItemEdgeSchema = v.strictObject({ itemId: Id, edgeId: Id });

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

/** A sheet of the glue-up: `S2R`, or the strip `S3-a` of one that is laid strip by strip. */
const UnitId = v.pipe(v.string(), v.maxLength(40));

/** One wish for the order of gluing: a sheet first or last of all, not before another, or not in one step with it. */
export const OrderWishSchema = v.variant("kind", [
  v.strictObject({ kind: v.picklist(["first", "last"]), unitId: UnitId }),
  v.strictObject({ kind: v.picklist(["after", "apart"]), unitId: UnitId, otherId: UnitId }),
]);

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

const RibPlacesSchema = v.variant("kind", [
  v.strictObject({ kind: v.literal("none") }),
  v.strictObject({ kind: v.literal("spacing"), spacingMm: Typed }),
  v.strictObject({ kind: v.literal("typed"), atMm: v.array(Typed) }),
  /** As few as keep the foam in shape. */
  v.strictObject({ kind: v.literal("automatic") }),
]);

export const ProjectSchema = v.strictObject({
  format: v.literal("traywright"),
  version: v.literal(CURRENT_VERSION),
  id: Id,
  title: Name,
  /** Fields after ISO 7200. */
  titleBlock: v.strictObject({
    owner: Name,
    creator: Name,
    approver: Name,
    /** yyyy-mm-dd; the only date on the pages, so that the same project gives the same bytes. */
    issuedOn: v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}$/, "a date as 2026-11-25")),
    revision: v.pipe(v.string(), v.maxLength(2)),
  }),
  symmetry: v.picklist(["mirrored", "none"]),
  drawnFace: v.picklist(["air", "neutral"]),
  /** The foam of every sheet that names none of its own. */
  core: CoreSchema,
  /** The nominal skin on each face, which the geometry uses; the laminate never moves the foam. */
  skins: v.strictObject({ lowerMm: Typed, upperMm: Typed }),
  /** How the faces are laminated; at its defaults if absent. */
  laminate: v.optional(LaminateSchema),
  profiles: v.array(ProfileSchema),
  items: v.array(ItemSchema),
  openings: v.array(OpeningSchema),
  notes: v.array(NoteSchema),
  underlays: v.array(UnderlaySchema),
  openingSettings: v.strictObject({
    /** The least web to leave between an opening and the nearest edge or joint. */
    webMm: Typed,
  }),
  materials: v.strictObject({
    foams: v.array(FoamSchema),
    cloths: v.array(ClothSchema),
    resins: v.array(ResinSchema),
    glues: v.array(GlueSchema),
    boards: v.array(BoardSchema),
    metals: v.array(MetalSchema),
  }),
  stock: v.array(StockSchema),
  laying: LayingSchema,
  layouts: v.array(AcceptedLayoutSchema),
  cutting: v.strictObject({
    tool: v.picklist(["knife", "saw", "hot-wire", "router"]),
    kerfMm: Typed,
    /**
     * Which side of the line to cut by the blade takes: the waste (the line is the finished one), half and half
     * (it lies half the kerf outside), or the part (a whole kerf outside).
     */
    bladeSide: v.picklist(["waste", "middle", "part"]),
    /** Left standing on free edges, to be trimmed after lamination. */
    trimMm: Typed,
    /** Lost on every side of a stock sheet before its edge is true. */
    stockEdgeMm: Typed,
    /** Least distance between a cross seam and its neighbour's. */
    seamStaggerMm: Typed,
    /**
     * Strips are spliced with a scarf of this length to thickness; butted if absent or not over 0. Not between planks
     * and not where twist divides a transition.
     */
    scarfRatio: v.optional(Typed),
    /** Left standing on a closer's last joint, which is fitted to the measured gap; 8 mm if absent. */
    closerSpareMm: v.optional(Typed),
    /**
     * Where the builder wants a sheet cut: along a ruling at this u or across the rulings at this v, in the flat of its
     * right or whole part. What is then still larger than the stock is divided on.
     */
    ownCuts: v.optional(v.array(v.strictObject({ sheetId: Id, axis: v.picklist(["u", "v"]), atMm: Typed }))),
  }),
  bending: BendingSchema,
  marking: v.strictObject({
    intervalMm: Typed,
    toleranceMm: Typed,
    /** Stations evenly apart, or as few rows as keep a batten within the tolerance; stations if absent. */
    rows: v.optional(v.picklist(["stations", "fewest for a batten"])),
  }),
  jig: v.strictObject({
    attitude: v.picklist(["upright", "inverted"]),
    boardId: Id,
    across: RibPlacesSchema,
    along: RibPlacesSchema,
    leastHeightMm: Typed,
    /** How far the far edge of a square-cut rib may stand proud. */
    proudLimitMm: Typed,
    lie: v.optional(LieSchema),
    /** How ribs and baseboard are made. */
    making: v.exactOptional(MakingSchema),
  }),
  asBuilt: v.optional(AsBuiltSchema),
  glue: v.strictObject({
    glueId: Id,
    /** The glue line, shared by both edges of a joint. */
    gapMm: Typed,
    pinSpacingMm: Typed,
    /** On curved joints, and at the ends of every joint. */
    pinSpacingCurvedMm: Typed,
    /** What keeps a joint shut while its glue sets; pins if absent. */
    heldBy: v.optional(v.picklist(["pins", "weights"])),
    /** No longer sheet is glued on the bench and carried to the jig as one; see `gluingOf` where it is absent. */
    mostCarriedMm: v.optional(Typed),
    /** What the builder asks of the order in which sheets come to the jig. */
    order: v.optional(v.array(OrderWishSchema)),
  }),
  /** When the work may be done; see `workingTimeOf` where anything is absent. */
  schedule: v.optional(WorkingTimeSchema),
  joints: v.strictObject({
    /** Edges of different items that lie within this of each other are one edge; farther apart is a gap. */
    toleranceMm: Typed,
    /** Edges that coincide and are to be joined, though neither follows the other. */
    joined: v.array(v.strictObject({ first: ItemEdgeSchema, second: ItemEdgeSchema })),
    /** What the builder chose for the joint at an edge in place of the cut that follows from its fold. */
    cuts: v.array(
      v.strictObject({
        edge: ItemEdgeSchema,
        cut: v.picklist(["square", "mitre", "butt"]),
        /** Of a butt: the item whose sheet runs through. */
        throughItemId: v.exactOptional(Id),
      }),
    ),
  }),
  paper: PaperSchema,
});

/** The document is never changed in place: every list and record of it is read-only. */
type DeepReadonly<T> = T extends readonly (infer Element)[]
  ? readonly DeepReadonly<Element>[]
  : T extends object
    ? { readonly [Key in keyof T]: DeepReadonly<T[Key]> }
    : T;

export type Origin = DeepReadonly<v.InferOutput<typeof OriginSchema>>;
export type PlanNode = DeepReadonly<v.InferOutput<typeof PlanNodeSchema>>;
export type SideNode = DeepReadonly<v.InferOutput<typeof SideNodeSchema>>;
export type BendMethod = DeepReadonly<v.InferOutput<typeof BendMethodSchema>>;
export type BendChoice = DeepReadonly<v.InferOutput<typeof BendChoiceSchema>>;
export type EdgeRef = DeepReadonly<v.InferOutput<typeof EdgeRefSchema>>;
export type FollowPiece = DeepReadonly<v.InferOutput<typeof FollowSchema>>;
export type PlanElement = PlanNode | FollowPiece;
export type PlanLine = DeepReadonly<v.InferOutput<typeof PlanLineSchema>>;
export type Profile = DeepReadonly<v.InferOutput<typeof ProfileSchema>>;
export type Section = DeepReadonly<v.InferOutput<typeof SectionSchema>>;
export type Fence = DeepReadonly<v.InferOutput<typeof FenceSchema>>;
export type SpaceNode = DeepReadonly<v.InferOutput<typeof SpaceNodeSchema>>;
export type TransitionEdge = DeepReadonly<v.InferOutput<typeof TransitionEdgeSchema>>;
export type Transition = DeepReadonly<v.InferOutput<typeof TransitionSchema>>;
export type Wing = DeepReadonly<v.InferOutput<typeof WingSchema>>;
export type Plate = DeepReadonly<v.InferOutput<typeof PlateSchema>>;
export type Item = Section | Fence | Transition | Plate;
export type Opening = DeepReadonly<v.InferOutput<typeof OpeningSchema>>;
/** One drawn line of the document. */
export type LineRef = DeepReadonly<v.InferOutput<typeof LineRefSchema>>;
export type Note = DeepReadonly<v.InferOutput<typeof NoteSchema>>;
export type Underlay = DeepReadonly<v.InferOutput<typeof UnderlaySchema>>;
export type ViewPoint = Note["leader"];
/** Something drawn that can be locked and hidden. */
export type ThingRef =
  | { readonly of: "item"; readonly itemId: string }
  | { readonly of: "opening"; readonly openingId: string }
  | { readonly of: "profile"; readonly profileId: string }
  | { readonly of: "underlay"; readonly underlayId: string };
export type ItemEdge = DeepReadonly<v.InferOutput<typeof ItemEdgeSchema>>;
export type OrderWish = DeepReadonly<v.InferOutput<typeof OrderWishSchema>>;
export type Metal = DeepReadonly<v.InferOutput<typeof MetalSchema>>;
export type Foam = DeepReadonly<v.InferOutput<typeof FoamSchema>>;
export type Cloth = DeepReadonly<v.InferOutput<typeof ClothSchema>>;
export type EdgeFinish = v.InferOutput<typeof EdgeFinishSchema>;
export type Coupon = DeepReadonly<v.InferOutput<typeof CouponSchema>>;
export type Resin = DeepReadonly<v.InferOutput<typeof ResinSchema>>;
export type Glue = DeepReadonly<v.InferOutput<typeof GlueSchema>>;
export type Board = DeepReadonly<v.InferOutput<typeof BoardSchema>>;
export type Stock = DeepReadonly<v.InferOutput<typeof StockSchema>>;
export type Laying = DeepReadonly<v.InferOutput<typeof LayingSchema>>;
export type AcceptedLayout = DeepReadonly<v.InferOutput<typeof AcceptedLayoutSchema>>;
export type RibPlaces = DeepReadonly<v.InferOutput<typeof RibPlacesSchema>>;
export type Project = DeepReadonly<v.InferOutput<typeof ProjectSchema>>;
