import type { PlanPoint } from "../../core/foundation/index.ts";

/** Where a polygon in plan crosses a station: y of every crossing, in no order. */
export const crossingsOfLoop = (loop: readonly PlanPoint[], xMm: number): readonly number[] =>
  loop.flatMap((from, index) => {
    const to = loop[index + 1] ?? loop[0];
    if (!to || from.x > xMm === to.x > xMm) return [];
    return [from.y + ((xMm - from.x) / (to.x - from.x)) * (to.y - from.y)];
  });
