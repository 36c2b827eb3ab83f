import type { Seam, Strip } from "../cutting/index.ts";
import type { Problem } from "../foundation/index.ts";
import type { GlueStep } from "../glue-up/index.ts";
import type { BendHold, Jig, Lie } from "../jig/index.ts";
import type { Joint, JointOffer } from "../joints/index.ts";
import type { MarkingTable } from "../marking/index.ts";
import type { PanelPlan } from "../panels/index.ts";
import type { Part } from "../patterns/index.ts";
import type { FoldedPlate } from "../plates/index.ts";
import type { Project } from "../project/index.ts";
import type { Schedule } from "../schedule/index.ts";
import type { LaidCloth, PatchMap, SkinPlan } from "../skins/index.ts";
import type { LaidGroup } from "../stock/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import type { Totals, Weight } from "../totals/index.ts";

/** Everything that follows from a project: plain data, recomputed at every change, never edited. */
export interface Design {
  readonly project: Project;
  readonly plates: readonly FoldedPlate[];
  readonly sheets: readonly Sheet[];
  readonly joints: readonly Joint[];
  /** Edges that lie on each other and are not joined. */
  readonly jointOffers: readonly JointOffer[];
  readonly parts: readonly Part[];
  readonly seams: readonly Seam[];
  readonly strips: readonly Strip[];
  readonly marking: readonly MarkingTable[];
  readonly jig: Jig;
  /** How the foam lies on its ribs. */
  readonly lie: Lie;
  /** How every bend is held on the jig, in the order of parts and zones. */
  readonly holds: readonly BendHold[];
  readonly glueUp: readonly GlueStep[];
  /** How the faces are laminated. */
  readonly skins: SkinPlan;
  /** Panels that are skinned on the bench first, and the fences that are cut from them. */
  readonly panels: PanelPlan;
  /** Every patch of cloth on its roll; empty until it is asked for (`layOutCloth`). */
  readonly cloth: readonly LaidCloth[];
  /** Where every patch lies on its face; empty until it is asked for (`layOutCloth`). */
  readonly patchMaps: readonly PatchMap[];
  /** What lies on which sheet, as far as it is laid out. */
  readonly stock: readonly LaidGroup[];
  /** All the work on a calendar. */
  readonly schedule: Schedule;
  readonly totals: Totals;
  /** By part and all in, with the centre of mass. */
  readonly weight: Weight;
  readonly problems: readonly Problem[];
}
