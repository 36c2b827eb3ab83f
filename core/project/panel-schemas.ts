import * as v from "valibot";
import { PlySchema } from "./laminate-schemas.ts";
import { Typed } from "./typed-fields.ts";

/** A fence that is cut from a panel: foam laminated flat on both faces, on the bench. */
export const FencePanelSchema = v.strictObject({
  /** On each face, from the foam outward; those of the lower face where absent. */
  plies: v.exactOptional(v.array(PlySchema)),
  /** The cured panel as it was measured; as its foam and plies are reckoned where absent. */
  measuredMm: v.exactOptional(Typed),
});
