import { create } from "zustand";
import {
  applyCommand,
  type Command,
  cancelGesture,
  closeGesture,
  emptyProject,
  type History,
  historyOf,
  jumpHistory,
  type Lock,
  locksAgainst,
  nameOfCommand,
  type Project,
  pushHistory,
  pushInGesture,
  redoHistory,
  undoHistory,
  wordsOfCommand,
} from "../../core/project/index.ts";
import { readLater } from "./a-moment-later.ts";

/** The document with its history, and the only ways to change it. */
export interface DocumentStore {
  readonly history: History;
  /** The document as it stands: `history.now`. */
  readonly project: Project;
  /** Another tab holds the work: every edit is ignored here. */
  readonly isReadOnly: boolean;
  /** The locks that kept the last edit from being made, until they are put away or another edit is begun. */
  readonly refusals: readonly Lock[];
  /** Counts the documents that took the place of another: views of the old one start afresh. */
  readonly generation: number;
  /** One edit, one step back. */
  dispatch(command: Command): void;
  /** An edit inside a gesture (a drag, or several commands at once): all until `endGesture` are one step back. */
  dispatchInGesture(command: Command): void;
  /** Ends the gesture; its step is named after its commands, or as it is told here. */
  endGesture(name?: string): void;
  /** Ends the gesture and puts back what was before it. */
  cancelGesture(): void;
  undo(): void;
  redo(): void;
  /** Goes to a step of the history, taking back or making again all that lies between. */
  jump(index: number): void;
  /** The whole document becomes another in one ordinary step, which can be taken back. */
  become(project: Project, name: string): void;
  /** Another document takes the place of this one, with a history of its own. */
  replace(project: Project): void;
  setReadOnly(isReadOnly: boolean): void;
  putRefusalsAway(): void;
}

const live = create<DocumentStore>()((set, get) => {
  const change = (next: (history: History) => History) => {
    if (get().isReadOnly) return;
    const history = next(get().history);
    if (history !== get().history) set({ history, project: history.now });
  };
  const edit = (command: Command, push: (history: History, after: Project) => History) => {
    const { history, refusals: before, isReadOnly } = get();
    if (isReadOnly) return;
    const after = applyCommand(history.now, command);
    const refusals = command.kind === "set-standing" ? [] : locksAgainst(history.now, after);
    if (refusals.length > 0) return set({ refusals });
    if (history.gesture === undefined && before.length > 0) set({ refusals });
    change(() => push(history, after));
  };
  const start = historyOf(emptyProject({ id: "tray", title: "New tray", issuedOn: "2026-01-01" }));
  return {
    history: start,
    project: start.now,
    isReadOnly: false,
    refusals: [],
    generation: 0,
    dispatch: (command) =>
      edit(command, (history, after) => pushHistory(history, after, nameOfCommand(history.now, command))),
    dispatchInGesture: (command) =>
      edit(command, (history, after) => pushInGesture(history, after, wordsOfCommand(history.now, command))),
    endGesture: (name) => change((history) => closeGesture(history, name)),
    cancelGesture: () => change(cancelGesture),
    undo: () => change(undoHistory),
    redo: () => change(redoHistory),
    jump: (index) => change((history) => jumpHistory(history, index)),
    become: (project, name) => change((history) => pushHistory(history, project, name)),
    replace: (project) =>
      set(({ generation }) => ({
        history: historyOf(project),
        project,
        refusals: [],
        generation: generation + 1,
      })),
    setReadOnly: (isReadOnly) => set({ isReadOnly }),
    putRefusalsAway: () => set({ refusals: [] }),
  };
});

/** A drag, or several commands at once, is under way. */
export const isInGesture = (): boolean => live.getState().history.gesture !== undefined;

export const useDocument = readLater(live, { mayWait: isInGesture, isAnswer: () => false });
