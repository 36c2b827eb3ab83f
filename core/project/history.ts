import type { Project } from "./schema.ts";

/**
 * Documents before and after the present one; they share structure. `open` says that a gesture is going on:
 * its first change has been entered, and what follows replaces it, so that one gesture is one step back.
 */
export interface History {
  readonly past: readonly Project[];
  readonly now: Project;
  /** Nearest first. */
  readonly future: readonly Project[];
  readonly open: boolean;
}

/** A history that begins with a document. */
export const historyOf = (project: Project): History => ({
  past: [],
  now: project,
  future: [],
  open: false,
});

/**
 * The history after a change. "single" is a step of its own; "open" begins a gesture or goes on with it, until
 * `closeGesture`. A change that changes nothing leaves the history as it is.
 */
export function pushHistory(history: History, project: Project, gesture: "open" | "single"): History {
  const goesOn = gesture === "open" && history.open;
  if (project === history.now && !goesOn) return gesture === "single" ? closeGesture(history) : history;
  if (goesOn) return project === history.now ? history : { ...history, now: project };
  return { past: [...history.past, history.now], now: project, future: [], open: gesture === "open" };
}

/** Ends a gesture: the next change is a step of its own. */
export const closeGesture = (history: History): History =>
  history.open ? { ...history, open: false } : history;

/** One step back, as far as there is one; ends a gesture that is going on and takes it back whole. */
export function undoHistory(history: History): History {
  const before = history.past[history.past.length - 1];
  if (before === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    now: before,
    future: [history.now, ...history.future],
    open: false,
  };
}

/** One step forward again, as far as there is one. */
export function redoHistory(history: History): History {
  const after = history.future[0];
  if (after === undefined) return history;
  return {
    past: [...history.past, history.now],
    now: after,
    future: history.future.slice(1),
    open: false,
  };
}
