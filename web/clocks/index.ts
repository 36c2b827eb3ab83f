export { ClockRows } from "./ClockRows.tsx";
export { ClockStart } from "./ClockStart.tsx";
export { type Clock, type Span, wordLeft } from "./clock.ts";
export { clocksOfSession } from "./clocks-of-session.ts";
export { clocksOfStep } from "./clocks-of-step.ts";
export { useClocks } from "./clocks-store.ts";
