import { formatMm } from "../foundation/index.ts";
import type { Gluing } from "../project/index.ts";
import type { GlueUnit } from "./glue-units.ts";
import type { StepDraft } from "./step-draft.ts";

/** The whole tray on the jig without glue, before any is opened there. */
export function dryFit(units: readonly GlueUnit[], { glue }: Gluing): StepDraft {
  const gapMm = glue?.gapLimitMm ?? 1;
  return {
    kind: "dry fit",
    place: "jig",
    title: "Fit the whole tray dry on the jig",
    come: [],
    standing: units,
    why: "Whatever does not fit is cheap to put right now, and dear once the first joint has set.",
    how: [
      "Lay every piece in the order of the steps below, without glue, and hold it to its ribs as it will be held.",
      `Feel every joint with a feeler: a gap over ${formatMm(gapMm)} mm is trued or filled. A closer stays long until its own step.`,
      "Compare the heights at the stations with the jig's page, and the diagonals. Draw a line across every joint, so that each piece comes back to its place. Then take it apart again.",
    ],
    lines: [],
  };
}
