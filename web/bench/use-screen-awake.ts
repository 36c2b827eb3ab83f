import { useEffect, useState } from "react";

/** Whether the screen stays lit: it does, it is being asked for, or the browser cannot or will not keep it so. */
export type Wakefulness = "asking" | "awake" | "cannot" | "refused";

/** Keeps the screen lit while the caller is shown; asks again whenever the page comes back into sight. */
export function useScreenAwake(): Wakefulness {
  const [state, setState] = useState<Wakefulness>("wakeLock" in navigator ? "asking" : "cannot");
  useEffect(() => {
    if (!("wakeLock" in navigator)) return;
    let lock: WakeLockSentinel | undefined;
    let isWanted = true;
    const ask = async () => {
      if (document.visibilityState !== "visible") return;
      try {
        const held = await navigator.wakeLock.request("screen");
        if (!isWanted) return void held.release();
        lock = held;
        setState("awake");
      } catch {
        setState("refused");
      }
    };
    void ask();
    document.addEventListener("visibilitychange", ask);
    return () => {
      isWanted = false;
      document.removeEventListener("visibilitychange", ask);
      void lock?.release();
    };
  }, []);
  return state;
}
