import { proxy } from "comlink";
import { create } from "zustand";
import { type FoundLayout, startCore } from "../worker/index.ts";
import { useDocument } from "./document-store.ts";

/** How long pieces are laid at most, ms; a run can be stopped before, and what it found be kept. */
const LAYING_MS = 20_000;

/** Laying pieces on stock: a search in a core of its own, whose best layout so far is shown until it is accepted. */
export interface LayingStore {
  /** The group that is being laid, or whose found layout waits to be accepted. */
  readonly groupId: string | undefined;
  readonly isRunning: boolean;
  readonly found: FoundLayout | undefined;
  readonly failure: string | undefined;
  start(groupId: string): void;
  /** Ends the search; what it found stays. */
  stop(): void;
  /** Takes what was found into the document. */
  accept(): void;
  /** Forgets what was found. */
  discard(): void;
}

const AT_REST = { groupId: undefined, isRunning: false, found: undefined, failure: undefined } as const;

export const useLaying = create<LayingStore>()((set, get) => {
  let running: ReturnType<typeof startCore> | undefined;
  let seed = 0;
  const end = () => {
    running?.stop();
    running = undefined;
  };
  return {
    ...AT_REST,

    start: (groupId) => {
      end();
      const core = startCore();
      running = core;
      seed += 1;
      set({ groupId, isRunning: true, found: undefined, failure: undefined });
      const { project } = useDocument.getState();
      const bare = { ...project, underlays: [] };
      const onFound = proxy((found: FoundLayout) => {
        if (running === core) set({ found });
      });
      core.core.layStock(bare, groupId, { seed, milliseconds: LAYING_MS }, onFound).then(
        () => {
          if (running === core) get().stop();
        },
        (error: unknown) => {
          if (running === core) set({ failure: String(error), isRunning: false });
        },
      );
    },

    stop: () => {
      end();
      set({ isRunning: false });
    },

    accept: () => {
      const { found } = get();
      end();
      set(AT_REST);
      if (found === undefined) return;
      const { project, dispatch } = useDocument.getState();
      const others = project.layouts.filter(({ groupId }) => groupId !== found.accepted.groupId);
      dispatch({ kind: "change-settings", changes: { layouts: [...others, found.accepted] } });
    },

    discard: () => {
      end();
      set(AT_REST);
    },
  };
});

// What was found for one document is nothing for another.
useDocument.subscribe((state, before) => {
  if (state.generation !== before.generation) useLaying.getState().discard();
});
