import { leftOf2, scale2, unit2, type Vec2 } from "../../../core/foundation/index.ts";
import { isInside } from "../nearest.ts";
import type { SceneLine } from "../scene.ts";

/** So far beside the line it is looked whether a place lies inside it, mm. */
const ASIDE_MM = 0.5;

/** The unit direction beside a line at a place of it: out of a closed one, up from an open one in side view, else left. */
export function outwardAt(line: SceneLine, at: Vec2, along: Vec2): Vec2 {
  const left = leftOf2(unit2(along));
  if (line.closed) {
    const beside: Vec2 = [at[0] + left[0] * ASIDE_MM, at[1] + left[1] * ASIDE_MM];
    return isInside(line, beside) ? scale2(left, -1) : left;
  }
  return left[1] < 0 ? scale2(left, -1) : left;
}
