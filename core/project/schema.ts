import * as v from "valibot";
import { type BendChoiceSchema, BendingSchema, type BendMethodSchema } from "./bending-schemas.ts";
import {
  CoreSchema,
  type FenceSchema,
  ItemSchema,
  OpeningSchema,
  type PlateSchema,
  ProfileSchema,
  type SectionSchema,
  type SpaceNodeSchema,
  type TransitionEdgeSchema,
  type TransitionSchema,
  type WingSchema,
} from "./item-schemas.ts";
import { type CouponSchema, type EdgeFinishSchema, LaminateSchema } from "./laminate-schemas.ts";
import { AcceptedLayoutSchema, LayingSchema } from "./laying-schemas.ts";
import { AsBuiltSchema, LieSchema } from "./lie-schemas.ts";
import type {
  EdgeRefSchema,
  FollowSchema,
  PlanLineSchema,
  PlanNodeSchema,
  SideNodeSchema,
} from "./line-schemas.ts";
import { MakingSchema } from "./making-schemas.ts";
import {
  BoardSchema,
  ClothSchema,
  FoamSchema,
  GlueSchema,
  MetalSchema,
  type OriginSchema,
  ResinSchema,
  StockSchema,
} from "./material-schemas.ts";
import { PaperSchema } from "./paper-schemas.ts";
import { type LineRefSchema, NoteSchema, UnderlaySchema } from "./remark-schemas.ts";
import { BoughtSchema } from "./shopping-schemas.ts";
import { Id, Name, Typed } from "./typed-fields.ts";
import { WorkingTimeSchema } from "./working-time-schema.ts";

/**
 * The project document, version 6: only what the builder gave. Lengths in mm, angles in rad, masses in kg.
 * Numbers are taken as typed, however odd; `checkDocument` turns odd ones into problems that name them, so that
 * the rest of the tray still computes.
 */
export const CURRENT_VERSION = 6;

/** One edge of one item. */
const ItemEdgeSchema = v.strictObject({ itemId: Id, edgeId: Id });

/** A sheet of the glue-up: `S2R`, or the strip `S3-a` of one that is laid strip by strip. */
const UnitId = v.pipe(v.string(), v.maxLength(40));

/** One wish for the order of gluing: a sheet first or last of all, not before another, or not in one step with it. */
export const OrderWishSchema = v.variant("kind", [
  v.strictObject({ kind: v.picklist(["first", "last"]), unitId: UnitId }),
  v.strictObject({ kind: v.picklist(["after", "apart"]), unitId: UnitId, otherId: UnitId }),
]);

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
  /** What is known of things to be bought, each once; the rest is at its default. */
  shopping: v.optional(v.array(BoughtSchema)),
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
