import { create } from "zustand";
import type { Command, Project } from "../../core/project/index.ts";
import { applyCommand, emptyProject, type History, historyOf, pushHistory, redoHistory, undoHistory } from "./project-core.ts";

/** The document with its history, and the only ways to change it. */
export interface DocumentStore {
  readonly history: History;
  /** The document as it stands: `history.present`. */
  readonly project: Project;
  /** The history as it was when the running gesture began; absent between gestures. */
  readonly beforeGesture: History | undefined;
  /** Another tab holds the work: every edit is ignored here. */
  readonly isReadOnly: boolean;
  /** Counts the documents that were put in place of another: views of the old one start afresh. */
  readonly generation: number;
  /** One edit, one entry in the history. */
  dispatch(command: Command): void;
  /** An edit inside a gesture (a drag): all edits until `endGesture` are one entry. */
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
  const show = (history: History) => ({ history, project: history.present });
  const edit = (change: (state: DocumentStore) => Partial<DocumentStore>) => {
    if (!get().isReadOnly) set(change);
  };
  return {
    ...show(historyOf(emptyProject())),
    beforeGesture: undefined,
    isReadOnly: false,
    generation: 0,
    dispatch: (command) =>
      edit(({ history }) => {
        const project = applyCommand(history.present, command);
        if (project === history.present) return {};
        return { ...show(pushHistory(history, project)), beforeGesture: undefined };
      }),
    dispatchInGesture: (command) =>
      edit(({ history, beforeGesture }) => {
        const base = beforeGesture ?? history;
        const project = applyCommand(history.present, command);
        if (project === history.present) return {};
        return { ...show(pushHistory(base, project)), beforeGesture: base };
      }),
    endGesture: () => set({ beforeGesture: undefined }),
    cancelGesture: () =>
      set(({ history, beforeGesture }) => ({ ...show(beforeGesture ?? history), beforeGesture: undefined })),
    undo: () => edit(({ history }) => ({ ...show(undoHistory(history)), beforeGesture: undefined })),
    redo: () => edit(({ history }) => ({ ...show(redoHistory(history)), beforeGesture: undefined })),
    replace: (project) =>
      set(({ generation }) => ({
        ...show(historyOf(project)),
        beforeGesture: undefined,
        generation: generation + 1,
      })),
    setReadOnly: (isReadOnly) => set({ isReadOnly }),
  };
});
