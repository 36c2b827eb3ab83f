import { create } from "zustand";
import {
  applyCommand,
  type Command,
  closeGesture,
  emptyProject,
  type History,
  historyOf,
  type Project,
  pushHistory,
  redoHistory,
  undoHistory,
} from "../../core/project/index.ts";

/** The document with its history, and the only ways to change it. */
export interface DocumentStore {
  readonly history: History;
  /** The document as it stands: `history.now`. */
  readonly project: Project;
  /** Another tab holds the work: every edit is ignored here. */
  readonly isReadOnly: boolean;
  /** Counts the documents that took the place of another: views of the old one start afresh. */
  readonly generation: number;
  /** One edit, one step back. */
  dispatch(command: Command): void;
  /** An edit inside a gesture (a drag, or several commands at once): all until `endGesture` are one step back. */
  dispatchInGesture(command: Command): void;
  endGesture(): void;
  /** Ends the gesture and puts back what was before it. */
  cancelGesture(): void;
  undo(): void;
  redo(): void;
  /** Another document takes the place of this one, with a history of its own. */
  replace(project: Project): void;
  setReadOnly(isReadOnly: boolean): void;
}

export const useDocument = create<DocumentStore>()((set, get) => {
  const change = (next: (history: History) => History) => {
    if (get().isReadOnly) return;
    const history = next(get().history);
    if (history !== get().history) set({ history, project: history.now });
  };
  const start = historyOf(emptyProject({ id: "tray", title: "New tray", issuedOn: "2026-01-01" }));
  return {
    history: start,
    project: start.now,
    isReadOnly: false,
    generation: 0,
    dispatch: (command) =>
      change((history) => pushHistory(history, applyCommand(history.now, command), "single")),
    dispatchInGesture: (command) =>
      change((history) => pushHistory(history, applyCommand(history.now, command), "open")),
    endGesture: () => change(closeGesture),
    cancelGesture: () => change(withoutGesture),
    undo: () => change(undoHistory),
    redo: () => change(redoHistory),
    replace: (project) =>
      set(({ generation }) => ({
        history: historyOf(project),
        project,
        generation: generation + 1,
      })),
    setReadOnly: (isReadOnly) => set({ isReadOnly }),
  };
});

/** What was before the gesture that is going on, as if it had never begun. */
function withoutGesture(history: History): History {
  return history.open ? { ...undoHistory(history), future: [] } : history;
}
