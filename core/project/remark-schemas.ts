import * as v from "valibot";
import { Id, Name, standingFields, Typed } from "./typed-fields.ts";

/** A place in one of the two views, in mm: x rearward; `up` is y in plan and z in the side view. */
const ViewPoint = v.strictObject({ x: Typed, up: Typed });

const View = v.picklist(["plan", "side"]);

/**
 * One drawn line of the document: an item's line in plan, a profile, a fence's lower edge, a free edge of a
 * transition as one view shows it, or an opening's outline.
 */
export const LineRefSchema = v.variant("of", [
  v.strictObject({ of: v.literal("item"), itemId: Id }),
  v.strictObject({ of: v.literal("profile"), profileId: Id }),
  v.strictObject({ of: v.literal("lower-edge"), itemId: Id }),
  v.strictObject({
    of: v.literal("edge"),
    itemId: Id,
    side: v.picklist(["first", "second"]),
    view: View,
  }),
  v.strictObject({ of: v.literal("opening"), openingId: Id }),
]);

/** What a note is pinned to: a place in its view, or a node that takes it along when it moves. */
const PinSchema = v.variant("kind", [
  v.strictObject({ kind: v.literal("place"), at: ViewPoint }),
  v.strictObject({ kind: v.literal("node"), line: LineRefSchema, nodeId: Id }),
]);

/** The builder's own words at a place of the drawing, with a leader to it. */
export const NoteSchema = v.strictObject({
  id: Id,
  view: View,
  text: v.pipe(v.string(), v.maxLength(500)),
  /** Width of its lines on paper; on the screen as wide for its letters. */
  widthMm: Typed,
  pin: PinSchema,
  /** From the pin to the upper left corner of the text, in mm of the tray. */
  leader: ViewPoint,
});

/** A picture under the drawing, to draw over: never printed, and nothing is computed from it. */
export const UnderlaySchema = v.strictObject({
  id: Id,
  name: Name,
  view: View,
  /** The picture itself, as a data URL: a file of the project is whole, and nothing is fetched. */
  picture: v.pipe(
    v.string(),
    v.regex(/^data:image\/(png|jpeg|svg\+xml);base64,/, "a PNG, JPEG or SVG picture as a data URL"),
  ),
  widthPx: Typed,
  heightPx: Typed,
  /** The upper left corner of the picture, about which it is turned. */
  origin: ViewPoint,
  mmPerPx: Typed,
  /** From the first axis of the view toward the second: counter-clockwise on the board. */
  turnRad: Typed,
  /** 1 hides the grid under it, 0 would show nothing. */
  opacity: Typed,
  ...standingFields,
});
