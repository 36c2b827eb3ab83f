import type { GlueStep } from "../glue-up/index.ts";
import { taskOf, toMinutes } from "./task-of.ts";
import type { Task, TaskWait } from "./types.ts";

/** The glue-up as tasks, and what the skins have to know of it. */
export interface GlueTasks {
  readonly tasks: readonly Task[];
  /** All that is glued before the first skin, and how long it has to have set by then. */
  readonly waitsBeforeSkins: readonly TaskWait[];
  /** Steps that come when the tray has been turned over with one skin, and those that sit on the finished lower skin. */
  readonly afterTurn: readonly Task[];
  readonly onSkin: readonly Task[];
}

/**
 * The steps of a glue-up as tasks that are not interrupted. The bench waits for the cut foam, the jig also for its ribs. A
 * step that turns the tray over is left to the skins, which turn it too.
 */
export function glueTasks(steps: readonly GlueStep[], hands: number): GlueTasks {
  const turn = steps.find(({ kind }) => kind === "turn");
  const own = steps.filter(({ kind }) => kind !== "turn");
  const tasks = own.map((step) => glueTask(step, own, hands));
  const taskAt = (i: number) => tasks.slice(i, i + 1);
  const stepsWhere = (is: (step: GlueStep) => boolean) =>
    own.flatMap((step, i) => (is(step) ? taskAt(i) : []));
  const isOnSkin = ({ kind }: GlueStep) => kind === "fence on skin";
  const isAfterTurn = (step: GlueStep) => turn !== undefined && step.step > turn.step && !isOnSkin(step);
  const before = stepsWhere((step) => !isOnSkin(step) && !isAfterTurn(step));
  return {
    tasks: before,
    waitsBeforeSkins: waitsFor(before),
    afterTurn: stepsWhere(isAfterTurn),
    onSkin: stepsWhere(isOnSkin),
  };
}

/** Tasks done and set. */
export const waitsFor = (tasks: readonly Task[]): readonly TaskWait[] =>
  tasks.map(({ id, cureMinutes }) => ({ taskId: id, waitMinutes: cureMinutes }));

const idOf = (step: number): string => `glue-${step}`;

function glueTask(step: GlueStep, steps: readonly GlueStep[], hands: number): Task {
  const { kind, place } = step;
  const made = ["cutting", ...(place === "jig" ? ["jig"] : [])];
  return taskOf({
    id: idOf(step.step),
    kind: kind === "dry fit" ? "dry fit" : "glue",
    title: step.title,
    hands,
    workMinutes: step.workMinutes,
    cureHours: step.waitHours,
    after: [
      ...made.map((taskId) => ({ taskId, waitMinutes: 0 })),
      ...step.after
        .filter((wait) => steps.some((other) => other.step === wait.step))
        .map((wait) => ({ taskId: idOf(wait.step), waitMinutes: toMinutes(wait.waitHours) })),
    ],
    pauses: kind === "dry fit" ? "any time" : "never",
    step: step.step,
  });
}
