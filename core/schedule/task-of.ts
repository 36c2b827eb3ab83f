import type { Task } from "./types.ts";

/** Work is planned in steps of so many minutes, and no work is shorter. */
const STEP_MINUTES = 5;

interface RawTask extends Omit<Task, "cureMinutes"> {
  readonly cureHours?: number;
}

/** A task in whole steps of five minutes, and what sets in whole minutes, both rounded up. */
export const taskOf = ({ cureHours = 0, workMinutes, ...rest }: RawTask): Task => ({
  ...rest,
  workMinutes: Math.max(STEP_MINUTES, Math.ceil(workMinutes / STEP_MINUTES - 1e-9) * STEP_MINUTES),
  cureMinutes: toMinutes(cureHours),
});

/** Hours as whole minutes, rounded up. */
export const toMinutes = (hours: number): number => Math.ceil(hours * 60 - 1e-9);
