import type { KeyboardEvent } from "react";

const STEPS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 };

/** How far an arrow key pushes a grip: by one, with Shift by ten; 0 for any other key. */
export const stepOfKey = ({ key, shiftKey }: KeyboardEvent): number =>
  (STEPS[key] ?? 0) * (shiftKey ? 10 : 1);
