import { Timer } from "lucide-react";
import type { MouseEvent } from "react";
import { begun, type Span, wordLeft } from "./clock.ts";
import { useClocks } from "./clocks-store.ts";
import { wakeSound } from "./ring.ts";

/** Begins the clock of one span, or begins it anew. */
export function ClockStart({ span }: { readonly span: Span }) {
  const begin = useClocks((state) => state.begin);
  const isRunning = useClocks((state) => state.clocks.some(({ id }) => id === span.id));
  const onClick = (event: MouseEvent) => {
    // Where it stands a tap goes on to the next card.
    event.stopPropagation();
    wakeSound();
    begin(span);
  };
  return (
    <button type="button" className="clock-start" data-testid={`start-${span.id}`} onClick={onClick}>
      <Timer aria-hidden />
      {`${isRunning ? "Begin anew" : "Begin"}: ${span.name}, ${wordLeft(begun(span, 0), 0)}`}
    </button>
  );
}
