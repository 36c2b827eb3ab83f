const KEY = "traywright-slot";

/** The slot of the work that is in hand in this browser tab, over reloads; undefined in a new tab. */
export function slotOfTab(): string | undefined {
  try {
    return sessionStorage.getItem(KEY) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Remembers for this tab what is in hand; where the browser forbids it, a reload begins at the start page. */
export function rememberSlot(slot: string | undefined): void {
  try {
    if (slot === undefined) sessionStorage.removeItem(KEY);
    else sessionStorage.setItem(KEY, slot);
  } catch {
    // Nothing is lost: the work itself is kept elsewhere.
  }
}
