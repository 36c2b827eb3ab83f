/** What is told to who asks for a work. */
export interface HoldListener {
  readonly onMine: () => void;
  readonly onElsewhere: () => void;
  /** The other tab has let go; called before this tab holds the work as its own. */
  readonly onLetGo: () => Promise<void>;
}

const PREFIX = "traywright-work/";

/**
 * Holds one work for this tab until what comes back is called, which resolves once it is free. If another tab holds it, says so at once, and says
 * again when that tab has let go. Browsers without locks hold nothing and edit in every tab.
 */
export function holdSlot(slot: string, on: HoldListener): () => Promise<void> {
  if (!hasLocks()) {
    on.onMine();
    return async () => {};
  }
  const leaving = new AbortController();
  const untilLeft = () =>
    new Promise<void>((letGo) => {
      if (leaving.signal.aborted) letGo();
      else leaving.signal.addEventListener("abort", () => letGo());
    });
  const waitForIt = () =>
    navigator.locks
      .request(PREFIX + slot, { signal: leaving.signal }, async () => {
        await on.onLetGo();
        return untilLeft();
      })
      .catch(() => undefined);
  const held = navigator.locks.request(PREFIX + slot, { ifAvailable: true }, (lock) => {
    if (leaving.signal.aborted) return undefined;
    if (lock) {
      on.onMine();
      return untilLeft();
    }
    on.onElsewhere();
    void waitForIt();
    return undefined;
  });
  return async () => {
    leaving.abort();
    await held;
  };
}

/** The slots that some tab holds now, this one's too. */
export async function heldSlots(): Promise<ReadonlySet<string>> {
  if (!hasLocks()) return new Set();
  const { held = [] } = await navigator.locks.query();
  return new Set(held.flatMap(({ name }) => (name?.startsWith(PREFIX) ? [name.slice(PREFIX.length)] : [])));
}

/** Does something to a work that no tab holds. Returns whether that was so. */
export async function whileFree(slot: string, change: () => Promise<void>): Promise<boolean> {
  if (!hasLocks()) {
    await change();
    return true;
  }
  return navigator.locks.request(PREFIX + slot, { ifAvailable: true }, async (lock) => {
    if (!lock) return false;
    await change();
    return true;
  });
}

const hasLocks = (): boolean => typeof navigator !== "undefined" && "locks" in navigator;
