import { proxy } from "comlink";
import { create } from "zustand";
import { type FoundLayout, startCore } from "../worker/index.ts";
import { useDocument } from "./document-store.ts";

/** How long pieces are laid at most, ms; a run can be stopped before, and what it found be kept. */
const LAYING_MS = 20_000;

/** Laying pieces on stock: searches in cores of their own, whose best layout so far is shown until it is accepted. */
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

/** Searches that run side by side, each from a seed of its own: one for each core of the machine, but not more than four. */
const MOST_SEARCHES = 4;
const searchCount = (): number => Math.min(MOST_SEARCHES, Math.max(1, navigator.hardwareConcurrency || 1));

/** Whether one rank is less than another where they first differ. */
function isBefore(one: readonly number[], other: readonly number[]): boolean {
  const index = one.findIndex((figure, i) => figure !== other[i]);
  return (one[index] ?? 0) < (other[index] ?? 0);
}

export const useLaying = create<LayingStore>()((set, get) => {
  let running: readonly ReturnType<typeof startCore>[] = [];
  let seed = 0;
  const end = () => {
    for (const { stop } of running) stop();
    running = [];
  };
  return {
    ...AT_REST,

    start: (groupId) => {
      end();
      const cores = Array.from({ length: searchCount() }, startCore);
      running = cores;
      set({ groupId, isRunning: true, found: undefined, failure: undefined });
      const { project } = useDocument.getState();
      const bare = { ...project, underlays: [] };
      const onFound = (found: FoundLayout) => {
        const best = get().found;
        if (running !== cores) return;
        const isBetter = best === undefined || isBefore(found.rank, best.rank);
        set({
          found: { ...(isBetter ? found : best), progress: Math.max(found.progress, best?.progress ?? 0) },
        });
      };
      const searches = cores.map(({ core }) => {
        seed += 1;
        return core.layStock(bare, groupId, { seed, milliseconds: LAYING_MS }, proxy(onFound));
      });
      Promise.all(searches).then(
        () => {
          if (running === cores) get().stop();
        },
        (error: unknown) => {
          if (running === cores) set({ failure: String(error), isRunning: false });
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
