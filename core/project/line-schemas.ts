import * as v from "valibot";
import { Id, Name, Typed } from "./typed-fields.ts";

export const nodeFields = {
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
