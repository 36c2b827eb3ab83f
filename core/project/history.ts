import { type CommandWords, nameOfGesture } from "./name-of-gesture.ts";
import type { Project } from "./schema.ts";

/** A document, and in a few plain words what was done to come to it. */
export interface HistoryStep {
  readonly name: string;
  readonly project: Project;
}

/**
 * Every step from the first document on, in order; documents share structure, so that there is no limit. The steps
 * behind `at` were taken back and can be made again. `gesture` tells the commands of a gesture that is going on: its
 * first change has been entered as a step, and what follows replaces it, so that one gesture is one step back.
 */
export interface History {
  readonly steps: readonly HistoryStep[];
  /** The index of the present step. */
  readonly at: number;
  /** The present document. */
  readonly now: Project;
  readonly gesture: readonly CommandWords[] | undefined;
}

/** A history that begins with a document. */
export const historyOf = (project: Project): History => ({
  steps: [{ name: "As opened", project }],
  at: 0,
  now: project,
  gesture: undefined,
});

/** The history after a change that is a step of its own. One that changes nothing only ends a gesture. */
export function pushHistory(history: History, project: Project, name: string): History {
  if (project === history.now) return closeGesture(history);
  return entered(history, { name, project }, undefined);
}

/**
 * The history after a change inside a gesture: the first one enters a step, those that follow replace it, until
 * `closeGesture`. The step is named after all of its commands together.
 */
export function pushInGesture(history: History, project: Project, words: CommandWords): History {
  if (project === history.now) return history;
  if (!history.gesture) return entered(history, { name: words.name, project }, [words]);
  const isTold = history.gesture.some(({ name }) => name === words.name);
  const gesture = isTold ? history.gesture : [...history.gesture, words];
  const before = { ...history, at: history.at - 1 };
  return entered(before, { name: nameOfGesture(gesture), project }, gesture);
}

function entered(history: History, step: HistoryStep, gesture: History["gesture"]): History {
  const { at } = history;
  return { steps: [...history.steps.slice(0, at + 1), step], at: at + 1, now: step.project, gesture };
}

/** Ends a gesture, and may give its step a name; the next change is a step of its own. */
export function closeGesture(history: History, name?: string): History {
  if (!history.gesture) return history;
  const closed = { ...history, gesture: undefined };
  if (name === undefined) return closed;
  return entered({ ...history, at: history.at - 1 }, { name, project: history.now }, undefined);
}

/** The history as if the gesture that is going on had never begun; what it made of later steps stays forgotten. */
export function cancelGesture(history: History): History {
  if (!history.gesture) return history;
  return jumpHistory({ ...history, steps: history.steps.slice(0, history.at) }, history.at - 1);
}

/** The history at another of its steps; at the nearest one where there is none of that index. Ends a gesture. */
export function jumpHistory(history: History, index: number): History {
  const at = Math.min(Math.max(0, Math.trunc(index)), history.steps.length - 1);
  const step = history.steps[at];
  if (step === undefined || (at === history.at && step.project === history.now)) return closeGesture(history);
  return { steps: history.steps, at, now: step.project, gesture: undefined };
}

/** One step back, as far as there is one; ends a gesture that is going on and takes it back whole. */
export const undoHistory = (history: History): History =>
  canUndo(history) ? jumpHistory(history, history.at - 1) : history;

/** One step forward again, as far as there is one. */
export const redoHistory = (history: History): History =>
  canRedo(history) ? jumpHistory(history, history.at + 1) : history;

/** What one step back would take back; undefined at the first document. */
export const nameOfUndo = (history: History): string | undefined =>
  canUndo(history) ? history.steps[history.at]?.name : undefined;

/** What one step forward would make again; undefined when nothing has been taken back. */
export const nameOfRedo = (history: History): string | undefined => history.steps[history.at + 1]?.name;

const canUndo = ({ at }: History): boolean => at > 0;
const canRedo = ({ at, steps }: History): boolean => at < steps.length - 1;
