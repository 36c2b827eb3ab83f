import { BellRing, Timer, X } from "lucide-react";
import { useEffect } from "react";
import { rings, wordLeft } from "./clock.ts";
import { useClocks } from "./clocks-store.ts";
import { ring } from "./ring.ts";
import { useNow } from "./use-now.ts";
import "./clocks.css";

/** A ring is told again after this until somebody hears it, ms. */
const AGAIN_MS = 5000;

/** The clocks that run, the next to ring first; one that is over rings until it is heard or put away. */
export function ClockRows() {
  const { clocks, hear, putAway } = useClocks();
  const nowMs = useNow(clocks.length > 0);
  const isRinging = clocks.some((clock) => rings(clock, nowMs));
  useEffect(() => {
    if (!isRinging) return;
    ring();
    const timer = setInterval(ring, AGAIN_MS);
    return () => clearInterval(timer);
  }, [isRinging]);
  if (clocks.length === 0) return null;
  return (
    <ul className="clocks" aria-label="Clocks that run" data-testid="clocks">
      {clocks.map((clock) => {
        const isOver = nowMs >= clock.endsAtMs;
        return (
          <li key={clock.id} data-over={isOver} data-testid={`clock-${clock.id}`}>
            {isOver ? <BellRing aria-hidden /> : <Timer aria-hidden />}
            <span>
              {clock.name}
              {isOver ? <strong role="alert">{clock.atEnd}</strong> : null}
            </span>
            <b>{wordLeft(clock, nowMs)}</b>
            {rings(clock, nowMs) ? (
              <button type="button" data-testid="clock-hear" onClick={hear}>
                Heard
              </button>
            ) : null}
            <button
              type="button"
              className="plain"
              aria-label={`Put away: ${clock.name}`}
              onClick={() => putAway(clock.id)}
            >
              <X aria-hidden />
            </button>
          </li>
        );
      })}
    </ul>
  );
}
