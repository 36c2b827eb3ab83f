import * as v from "valibot";
import { Typed } from "./typed-fields.ts";

export const PaperNames = ["A4", "A3", "Letter", "Tabloid", "A1", "A0", "roll"] as const;
export type PaperName = (typeof PaperNames)[number];

/** How a part is marked out: whole from a template, from a template of its curves and corners, or from its table. */
export const TemplateWays = ["full", "curves", "table"] as const;
export type TemplateWay = (typeof TemplateWays)[number];

/** The paper that templates go on, how parts are marked out with them, and what a test print says of the printer. */
export const PaperSchema = v.strictObject({
  size: v.picklist(PaperNames),
  rollWidthMm: Typed,
  marginMm: Typed,
  overlapMm: Typed,
  /** What a test print needs: printed length × correction = true length, 0.98 to 1.02. */
  correctionX: Typed,
  correctionY: Typed,
  /** The way of all parts, and of those that have one of their own, by code; see `template-ways.ts` where absent. */
  templateWay: v.optional(v.picklist(TemplateWays)),
  templateWays: v.optional(v.array(v.strictObject({ partId: v.string(), way: v.picklist(TemplateWays) }))),
});
