const LOCK = "traywright-work-in-hand";

/**
 * Holds the work for this tab as long as it is open. If another tab holds it, says so at once, and says again
 * when that tab has let go. Browsers without locks hold nothing and edit in every tab.
 */
export function holdWork(on: {
  readonly onHeldElsewhere: () => void;
  readonly onHeldLater: () => Promise<void>;
}): void {
  if (!("locks" in navigator)) return;
  const untilClosed = () => new Promise<never>(() => {});
  void navigator.locks.request(LOCK, { ifAvailable: true }, (lock) => {
    if (lock) return untilClosed();
    on.onHeldElsewhere();
    void navigator.locks.request(LOCK, async () => {
      await on.onHeldLater();
      return untilClosed();
    });
    return undefined;
  });
}
