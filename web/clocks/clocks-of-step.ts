import type { GlueStep } from "../../core/glue-up/index.ts";
import type { Span } from "./clock.ts";

/** What is timed in a step of the glue-up: each go while its glue is open, and how long what holds it stays and it waits. */
export function clocksOfStep(step: GlueStep, workId: string): readonly Span[] {
  if (step.rounds.length === 0) return [];
  const idOf = (what: string) => `${workId}-${step.step}-${what}`;
  const goes = step.rounds.map(
    ({ joins }, i): Span => ({
      id: idOf(`open-${i + 1}`),
      name:
        step.rounds.length > 1 ? `step ${step.step}, go ${i + 1}, glue open` : `step ${step.step}, glue open`,
      atEnd: `${joins.join(", ")}: the glue no longer takes. Nothing is moved any more; scrape off what is not shut.`,
      minutes: step.openMinutes,
    }),
  );
  const waits: readonly Span[] = [
    {
      id: idOf("held"),
      name: `step ${step.step}, ${step.heldBy} stay`,
      atEnd: `The ${step.heldBy} may come off, once a bead of the glue beside the joint is hard.`,
      minutes: step.clampHours * 60,
    },
    {
      id: idOf("load"),
      name: `step ${step.step}, before load`,
      atEnd: "A later step may load it.",
      minutes: step.waitHours * 60,
    },
  ];
  return [...goes, ...waits.filter(({ minutes }) => minutes > 0)];
}
