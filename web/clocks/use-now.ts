import { useEffect, useState } from "react";

const EVERY_MS = 500;

/** The time, ms since 1970, as it goes on while something runs. */
export function useNow(isRunning: boolean): number {
  const [nowMs, setNowMs] = useState(() => Date.now());
  useEffect(() => {
    if (!isRunning) return;
    setNowMs(Date.now());
    const timer = setInterval(() => setNowMs(Date.now()), EVERY_MS);
    return () => clearInterval(timer);
  }, [isRunning]);
  return nowMs;
}
