import type { GlueTimes } from "./glue-times.ts";
import { isLoading } from "./loads.ts";
import type { StepDraft } from "./step-draft.ts";
import type { StepWait } from "./types.ts";

/**
 * What a step waits for. Work on the jig goes in the order of the steps. A sheet glued on the bench is carried once it bears
 * load. A joint next to another on the same piece waits until that one's pins may come out; it waits until that bears load
 * where a piece hangs on its neighbours, is pressed in between them, or stands on them.
 */
export function stepWaits(
  drafts: readonly StepDraft[],
  index: number,
  times: GlueTimes,
): readonly StepWait[] {
  const own = drafts[index];
  if (own === undefined || own.place === "bench") return [];
  const waits = drafts.slice(0, index).flatMap((earlier, i): readonly StepWait[] => {
    const hours = waitHours(own, earlier, times);
    return hours === undefined ? [] : [{ step: i + 1, waitHours: hours }];
  });
  const isNext = drafts[index - 1]?.place === "jig" && !waits.some(({ step }) => step === index);
  return isNext ? [...waits, { step: index, waitHours: 0 }] : waits;
}

/** How long the joints of an earlier step have to have set; undefined where the step does not touch them. */
function waitHours(own: StepDraft, earlier: StepDraft, times: GlueTimes): number | undefined {
  if (earlier.lines.length === 0) return undefined;
  if (own.kind === "dry fit" || own.kind === "turn") return times.loadHours;
  if (earlier.place === "bench") {
    return own.come.some((unit) => earlier.come.includes(unit)) ? times.loadHours : undefined;
  }
  const touched = own.lines.flatMap(({ units }) => units).filter((unit) => !own.come.includes(unit));
  const shared = touched.filter((unit) => earlier.lines.some(({ units }) => units.includes(unit)));
  if (shared.length === 0) return undefined;
  return isLoading(own.kind, own.come, shared) ? times.loadHours : times.clampHours;
}
