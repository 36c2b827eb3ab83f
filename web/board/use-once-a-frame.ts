import { useCallback, useRef } from "react";

/** A pointer that has moved: where to, and what is held with it. */
export interface PointerMove {
  readonly pointerId: number;
  readonly pointerType: string;
  readonly clientX: number;
  readonly clientY: number;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
  readonly board: HTMLElement;
}

/**
 * Pointers report oftener than the screen shows: of each pointer only the newest move is acted on, once a frame.
 * `settle` acts at once on what waits, so that a press or a release finds everything where the hand left it.
 */
export function useOnceAFrame(act: (move: PointerMove) => void): {
  readonly later: (move: PointerMove) => void;
  readonly settle: () => void;
} {
  const waiting = useRef(new Map<number, PointerMove>());
  const frame = useRef<number>(undefined);
  const actNow = useRef(act);
  actNow.current = act;

  const settle = useCallback(() => {
    if (frame.current !== undefined) cancelAnimationFrame(frame.current);
    frame.current = undefined;
    const moves = [...waiting.current.values()];
    waiting.current.clear();
    for (const move of moves) actNow.current(move);
  }, []);
  const later = useCallback(
    (move: PointerMove) => {
      waiting.current.set(move.pointerId, move);
      frame.current ??= requestAnimationFrame(settle);
    },
    [settle],
  );
  return { later, settle };
}
